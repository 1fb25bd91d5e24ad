// @ts-check

// Fields, choices, figures and curves that the session describes: cards of a run, the record and the journal share them.

import { arrange, button, draw, make, setText, show } from '../element.js';
import { Field } from '../field.js';
import { runWords as text } from './words-run.js';

/** @typedef {import('../session.js').Session} Session */
/** @typedef {import('../seam/stillroom.js').CardField} CardField */
/** @typedef {import('../seam/stillroom.js').ChoiceAct} ChoiceAct */
/** @typedef {import('../seam/stillroom.js').CurveView} CurveView */
/** @typedef {import('../seam/stillroom.js').FigureView} FigureView */
/** @typedef {import('../seam/stillroom.js').BatchAct} BatchAct */

/**
 * Fields by their names. What is typed stays until it is sent or the session says something else.
 * @param {Session} session
 * @param {{ onEnter?: () => void }} [options] what the enter key does in a field that goes along with the large area
 */
export function createCardFields(session, { onEnter } = {}) {
  const root = make('div', { class: 'card-fields' });
  /** @type {Map<string, { field: Field, view: CardField, shown: string, typed: string, root: HTMLElement }>} */
  const fields = new Map();

  /** @param {CardField} view */
  function create(view) {
    const field = new Field({
      field: view.field,
      label: view.label,
      unit: view.unit || undefined,
      keyboard: view.keyboard === 'long' || view.keyboard === 'day' ? 'text' : view.keyboard,
      long: view.keyboard === 'long',
      onText(typed) {
        made.typed = typed;
        // What is typed is the field's own until it is sent.
        field.show(typed);
      },
    });
    const act = view.button ? button(view.button, () => send(made), { class: 'field-act' }) : undefined;
    const made = { field, view, shown: '', typed: '', root: make('div', { class: 'card-field' }, field.root, act) };
    field.input.addEventListener('change', () => {
      if (!made.view.withNext && !made.view.button) send(made);
    });
    field.input.addEventListener('keydown', (event) => {
      if (!(event instanceof KeyboardEvent) || event.key !== 'Enter' || view.keyboard === 'long') return;
      event.preventDefault();
      if (made.view.withNext) onEnter?.();
      else send(made);
    });
    return made;
  }

  /** @param {{ field: Field, view: CardField, typed: string }} made @returns {boolean} whether it was understood */
  function send(made) {
    const { act, on } = made.view;
    const { answer } = session.send({ do: 'act-on-batch', act, on, text: made.typed });
    if (answer?.error) return false;
    if (made.view.button) clear(made);
    return true;
  }

  /** @param {{ field: Field, typed: string, shown?: string }} made */
  function clear(made) {
    made.typed = made.shown ?? '';
    made.field.input.value = made.typed;
    made.field.show(made.typed);
  }

  return {
    root,
    /** @param {CardField[]} views */
    show(views) {
      const names = new Set(views.map((view) => view.field));
      for (const [name, { field }] of fields) {
        if (!names.has(name)) {
          field.forget();
          fields.delete(name);
        }
      }
      const shown = views.map((view) => {
        let made = fields.get(view.field);
        const fresh = !made;
        if (!made) {
          made = create(view);
          fields.set(view.field, made);
        }
        made.view = view;
        setText(made.field.label, view.label);
        if (view.placeholder) made.field.input.setAttribute('placeholder', view.placeholder);
        if (fresh || made.shown !== view.text) {
          made.shown = view.text;
          made.typed = view.text;
          made.field.show(view.text);
        }
        return made.root;
      });
      arrange(root, shown);
    },
    /**
     * Sends what was typed into fields with a button of their own, before something leaves them: a reading that stands in
     * its field was meant. Starting a timer is no reading.
     * @returns {boolean} whether all of it was understood
     */
    keep() {
      let good = true;
      for (const made of [...fields.values()]) {
        const { view, typed, shown } = made;
        if (view.withNext || view.act === 'timer' || typed === shown || typed.trim() === '') continue;
        if (!send(made)) good = false;
      }
      return good;
    },
    /** Whether something was typed that goes along with the large area and did not go yet. */
    waits() {
      return [...fields.values()].some(({ view, typed, shown }) => view.withNext && typed !== shown && typed.trim() !== '');
    },
    /** What goes along with the large area, a line for each field. */
    typed() {
      return [...fields.values()].filter(({ view }) => view.withNext).map(({ typed }) => typed).join('\n');
    },
    /** After what was typed has been taken in. */
    taken() {
      for (const made of fields.values()) if (made.view.withNext) clear(made);
    },
  };
}

/**
 * @param {Session} session
 * @param {ChoiceAct} view
 */
export function choiceButton(session, view) {
  return make(
    'button',
    {
      type: 'button',
      class: 'choice',
      disabled: view.refused,
      'data-act': view.act,
      onclick: () => session.send({ do: 'act-on-batch', act: view.act, on: view.on, text: view.text }),
    },
    make('span', {}, view.label),
    view.about ? make('small', {}, view.about) : undefined,
  );
}

/** @param {FigureView} view */
export function figure(view) {
  return make(
    'details',
    { class: 'figure' },
    make('summary', {}, make('span', {}, view.label), make('b', { class: 'number' }, view.value), make('small', {}, view.range)),
    make('p', {}, view.how),
    make('small', {}, view.source),
  );
}

/** @param {{ tone: string, text: string }} view */
export function remark(view) {
  return make('p', { class: `finding ${view.tone}` }, view.text);
}

/** A curve that dies away, with what was read. */
export function createCurve() {
  const root = make('div', { class: 'curve', hidden: true });
  return {
    root,
    /** @param {CurveView | undefined} view */
    show(view) {
      show(root, view !== undefined);
      if (!view) return;
      const band = view.band ?? [0, 0];
      const inside = draw(
        'svg',
        { viewBox: '0 0 100 100', preserveAspectRatio: 'none', width: '100%', height: '100%' },
        draw('polygon', { class: 'band', points: `${band[0]},0 ${band[1]},0 ${band[1]},100 ${band[0]},100` }),
        draw('line', { class: 'level', x1: 0, x2: 100, y1: view.level, y2: view.level }),
        draw('polyline', { class: 'line', points: view.line.map(([x, y]) => `${x},${y}`).join(' ') }),
      );
      /** @param {string} x @param {string} y @param {string} anchor @param {string} words */
      const label = (x, y, anchor, words) => {
        const element = draw('text', { x, y, 'text-anchor': anchor });
        element.textContent = words;
        return element;
      };
      root.replaceChildren(
        draw(
          'svg',
          { class: 'curve-picture', role: 'img', 'aria-label': view.description },
          inside,
          ...view.points.map(([x, y]) => draw('circle', { class: 'read', cx: `${x}%`, cy: `${y}%`, r: 5 })),
          label('100%', `${view.level}%`, 'end', view.levelLabel),
          ...view.up.map((tick) => label('0%', `${tick.at}%`, 'start', tick.label)),
        ),
        make('div', { class: 'curve-across' }, ...view.across.map((tick) => make('span', {}, tick.label))),
      );
    },
  };
}

/** @param {string} name @param {string} content @param {string} kind */
export function saveFile(name, content, kind) {
  const address = URL.createObjectURL(new Blob([content], { type: kind }));
  make('a', { href: address, download: name }).click();
  URL.revokeObjectURL(address);
}

export { text };
