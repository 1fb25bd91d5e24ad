// @ts-check

// A phase of a formula.

import { arrange, button, discloses, make, setText, show } from '../../dom/element.js';
import { chooser } from '../../dom/choice.js';
import { Field } from '../../dom/field.js';
import { icon } from '../../dom/icon.js';
import { letterOf } from '../../dom/letter.js';
import { words as trade } from '../../dom/words.js';
import { askForMaterial } from '../materials/picker.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').FormulaView} FormulaView */
/** @typedef {import('../../seam/stillroom.js').PhaseView} PhaseView */
/** @typedef {import('../../seam/stillroom.js').PhaseKind} PhaseKind */

/**
 * @param {Session} session
 * @param {number} phase
 * @param {() => FormulaView | undefined} formula
 * @param {() => { name: string, ask: () => void } | undefined} next the phase after it
 */
export function createPhase(session, phase, formula, next) {
  const title = make('span', { class: 'phase-name' });
  const about = make('small', { class: 'number' });
  /** What was shown last. @type {{ view: PhaseView, at: number, count: number } | undefined} */
  let shown;
  /** @type {ReturnType<typeof createTools> | undefined} */
  let tools;
  const toolsPlace = make('div', { class: 'tools' });
  const opener = make('button', { type: 'button', class: 'phase-title', title: text.phaseTools }, title);
  discloses(opener, toolsPlace, () => {
    if (!shown) return;
    tools = createTools(session, phase);
    tools.show(shown.view, shown.at, shown.count);
    toolsPlace.append(...tools.parts);
  });
  const list = make('ul', { class: 'lines', 'data-phase': phase });
  const empty = make('p', { class: 'quiet' }, text.emptyPhase);
  /** @param {string} material */
  const addLine = (material) => {
    const { answer } = session.send({ do: 'add-line', phase, material });
    if (answer?.made === undefined) return;
    const amount = /** @type {HTMLElement | null} */ (document.querySelector(`[data-field="amount:${answer.made}"]`));
    amount?.scrollIntoView({ block: 'center' });
    amount?.focus();
    filling = answer.made;
    amount?.addEventListener('blur', () => (filling = undefined), { once: true });
  };
  /** The line that was added last, until its amount is left. @type {string | undefined} */
  let filling;
  const onward = () => {
    const after = next();
    return after
      ? { label: text.onTo({ name: after.name }), go: after.ask }
      : { label: text.enough, go: () => add.focus() };
  };
  const ask = () =>
    askForMaterial(session, {
      heading: title.textContent ?? '',
      onTaken: addLine,
      onlyIf: (material) => material !== `f${formula()?.id}`,
      phase: /** @type {PhaseKind | undefined} */ (root.dataset.kind),
      onward: onward(),
    });
  const addTo = make('span');
  const add = make('button', { type: 'button', class: 'add', onclick: ask }, icon('plus'), addTo);
  const heading = make('h3', {}, opener, about);
  const root = make('section', { class: 'phase' }, heading, toolsPlace, list, empty, add);

  return {
    root,
    ask,
    forget: () => tools?.forget(),
    /**
     * From the amount of the line that was just added, Enter leads to the next material.
     * @param {number} line
     */
    goesOn(line) {
      if (filling !== String(line)) return false;
      ask();
      return true;
    },
    /**
     * @param {PhaseView} view
     * @param {number} at
     * @param {number} count
     * @param {HTMLElement[]} lines
     */
    show(view, at, count, lines) {
      shown = { view, at, count };
      root.dataset.kind = view.kind;
      setText(title, view.name);
      const heat = view.temperature
        ? `${view.temperatureWord} ${view.temperature}\u00a0${view.temperatureUnit} · `
        : '';
      setText(about, `${heat}${view.percent}\u00a0%`);
      tools?.show(view, at, count);
      arrange(list, lines);
      show(empty, lines.length === 0);
      list.setAttribute('aria-label', view.name);
      heading.dataset.letter = letterOf(at);
      setText(addTo, text.addLineTo({ name: view.name }));
    },
  };
}

/**
 * What can be done with a phase beyond its lines.
 * @param {Session} session
 * @param {number} phase
 */
function createTools(session, phase) {
  let position = 0;
  const name = new Field({
    field: `phase.name:${phase}`,
    label: text.phaseName,
    keyboard: 'text',
    onText: (typed) => session.send({ do: 'rename-phase', phase, name: typed }),
  });
  const kind = chooser({
    label: text.phaseKind,
    choices: trade.phaseKinds,
    onChoice: (value) => session.send({ do: 'set-phase-kind', phase, kind: value }),
  });
  const temperature = new Field({
    field: `phase.temperature:${phase}`,
    label: text.temperature,
    unit: '°C',
    class: 'short',
    onText: (typed) => session.send({ do: 'set-phase-temperature', phase, text: typed }),
  });
  const up = button(text.phaseUp, () => session.send({ do: 'move-phase', phase, position: position - 1 }));
  const down = button(text.phaseDown, () => session.send({ do: 'move-phase', phase, position: position + 1 }));
  const takeOut = button(text.removePhase, () => session.send({ do: 'remove-phase', phase }), { class: 'take-out' });
  return {
    parts: [
      name.root,
      make('div', { class: 'row' }, kind.root, temperature.root),
      make('div', { class: 'acts' }, up, down, takeOut),
    ],
    forget() {
      name.forget();
      temperature.forget();
    },
    /**
     * @param {PhaseView} view
     * @param {number} at
     * @param {number} count
     */
    show(view, at, count) {
      position = at;
      name.show(view.name);
      kind.show(view.kind);
      temperature.show(view.temperature);
      up.disabled = at === 0;
      down.disabled = at === count - 1;
    },
  };
}
