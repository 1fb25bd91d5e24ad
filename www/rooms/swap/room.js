// @ts-check

// Making the open formula with what one has: a line swapped, the formula rebuilt from the shelf, lines brought to a figure.

import { createDescribedFields } from '../../dom/described.js';
import { freshId, make, say, setText, show } from '../../dom/element.js';
import { segments } from '../../dom/choice.js';
import { Field } from '../../dom/field.js';
import { keyed, texts } from '../../dom/list.js';
import { createCompared } from './compared.js';
import { createWays } from './ways.js';
import { explained } from '../terms/explained.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').SwapView} SwapView */
/** @typedef {SwapView['lines'][number]} SwapLineView */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const wanted = segments({
    label: text.wanted,
    choices: text.uses,
    onChoice: (value) => session.send({ do: 'choose-swap-use', wanted: value }),
  });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const line = createLineChoice(session);
  const marks = createMarks(session);
  const fields = createDescribedFields((field, text) => session.send({ do: 'set-swap-field', field, text }));
  const said = make('ul', { class: 'remarks' });
  const refused = make('div', { class: 'finding caution', role: 'status', hidden: true });
  const ways = createWays(session);
  const compared = createCompared(session);
  const body = make(
    'div',
    { class: 'swap-desk' },
    make('div', {}, line.root, fields.root, marks.root, said, refused, ways.root),
    compared.root,
  );
  place.setAttribute('aria-labelledby', 'swap-title');
  place.append(
    make('h2', { id: 'swap-title' }, text.title),
    make('p', { class: 'quiet' }, text.intro),
    make('p', {}, make('a', { href: '#formula' }, text.toFormula)),
    wanted.root,
    problem,
    body,
    make('p', { class: 'quiet' }, text.cautions),
    explained('active-matter', 'blend', 'hlb', 'humectant', 'constituent'),
  );

  session.listen(({ swap }) => {
    if (swap) showSwap(swap);
  });

  /** @param {SwapView} view */
  function showSwap(view) {
    wanted.show(view.wanted);
    say(problem, view.problem);
    show(body, view.problem === '');
    if (view.problem !== '') return;
    const ofLine = view.wanted === 'line';
    line.show(view);
    marks.show(ofLine ? [] : view.lines, view.wanted === 'figure' ? text.mayVary : text.missing);
    fields.show(view.fields);
    texts(said, 'li', view.said);
    show(said, view.said.length > 0);
    show(refused, view.refused.length > 0);
    texts(refused, 'p', view.refused);
    ways.show(view.ways, ofLine && view.line !== undefined);
    compared.show(view.version);
  }

  // It is worked out only while somebody looks at it.
  return {
    enter: () => void session.send({ do: 'look-at-swap', looking: true }),
    leave: () => void session.send({ do: 'look-at-swap', looking: false }),
  };
}

/**
 * Which line is swapped, and what its author says to take instead.
 * @param {Session} session
 */
function createLineChoice(session) {
  const id = freshId();
  const select = make('select', {
    id,
    'data-field': 'swap.line',
    onchange: () => session.send({ do: 'swap-line', line: Number(select.value) }),
  });
  const none = make('option', { value: '' }, '–');
  const options = make('optgroup', { label: text.chooseLine });
  select.append(none, options);
  const notePlace = make('div');
  const root = make(
    'div',
    { class: 'swap-line' },
    make('div', { class: 'field' }, make('label', { for: id }, text.chooseLine), select),
    notePlace,
  );
  return {
    root,
    /** @param {SwapView} view */
    show(view) {
      show(root, view.wanted === 'line');
      keyed(
        options,
        view.lines,
        ({ line }) => {
          const option = make('option', { value: line });
          return { root: option, show: ({ name, percent }) => setText(option, `${name}, ${percent}`) };
        },
        ({ line }) => line,
      );
      const now = view.line === undefined ? '' : String(view.line);
      if (select.value !== now) select.value = now;
      keyed(
        notePlace,
        view.line === undefined ? [] : [view],
        () => createNote(session, /** @type {number} */ (view.line)),
        ({ line }) => line,
      );
    },
  };
}

/**
 * What the author says to take instead of a line.
 * @param {Session} session
 * @param {number} line
 */
function createNote(session, line) {
  const field = new Field({
    field: `line.substitution:${line}`,
    label: text.note,
    keyboard: 'text',
    onText: (typed) => session.send({ do: 'set-substitution', line, text: typed }),
  });
  return {
    root: make('div', {}, field.root, make('p', { class: 'quiet' }, text.noteHelp)),
    forget: () => field.forget(),
    /** @param {SwapView} view */
    show: (view) => field.show(view.note),
  };
}

/**
 * The lines, to be marked as missing or as free to vary.
 * @param {Session} session
 */
function createMarks(session) {
  const legend = make('legend');
  const list = make('div');
  const root = make('fieldset', { class: 'swap-marks' }, legend, list);
  return {
    root,
    /** @param {SwapLineView[]} views @param {string} title */
    show(views, title) {
      show(root, views.length > 0);
      setText(legend, title);
      keyed(
        list,
        views,
        ({ line }) => createMark(session, line),
        ({ line }) => line,
      );
    },
  };
}

/** @param {Session} session @param {number} line */
function createMark(session, line) {
  const box = make('input', {
    type: 'checkbox',
    'data-line': line,
    onchange: () => session.send({ do: 'mark-line', line, marked: box.checked }),
  });
  const name = make('span');
  const remark = make('small');
  return {
    root: make('label', { class: 'check' }, box, make('span', {}, name, ' ', remark)),
    /** @param {SwapLineView} view */
    show(view) {
      box.checked = view.marked;
      setText(name, `${view.name}, ${view.percent}`);
      setText(remark, view.remark);
    },
  };
}
