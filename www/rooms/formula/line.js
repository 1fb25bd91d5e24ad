// @ts-check

// A line of a formula.

import { button, discloses, make, say, setText, show } from '../../dom/element.js';
import { Field } from '../../dom/field.js';
import { pin } from '../../dom/icon.js';
import { words as trade } from '../../dom/words.js';
import { go } from '../../router.js';
import { askForMaterial } from '../materials/picker.js';
import { askToSwap } from '../swap/ask.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').FormulaView} FormulaView */
/** @typedef {import('../../seam/stillroom.js').LineView} LineView */

/**
 * @param {Session} session
 * @param {number} line
 * @param {() => boolean} goesOn leads from its amount to the next material, if that is what follows
 */
export function createLine(session, line, goesOn) {
  const name = make('span', { class: 'line-name' });
  const brings = make('small', { class: 'brings' });
  const remark = make('small', { class: 'remark' });
  const problem = make('p', { class: 'message', hidden: true });
  const amount = new Field({
    field: `amount:${line}`,
    label: '',
    labelHidden: true,
    class: 'amount',
    onText: (typed) => session.send({ do: 'set-amount', line, text: typed }),
  });
  amount.input.addEventListener('keydown', (/** @type {any} */ event) => {
    if (event.key !== 'Enter') return;
    // The field that the key leads to must not hear it as well.
    event.preventDefault();
    if (!event.repeat && !goesOn()) focusNext(amount.input);
  });
  const mass = make('span', { class: 'mass number' });
  const graded = make('span', { class: 'graded' });
  /** What was shown last. @type {{ view: LineView, formula: FormulaView | undefined } | undefined} */
  let shown;
  /** @type {ReturnType<typeof createTools> | undefined} */
  let tools;
  const toolsPlace = make('div', { class: 'tools' });
  const opener = make('button', { type: 'button', class: 'line-title' }, name, graded, brings, remark);
  discloses(opener, toolsPlace, () => {
    if (!shown) return;
    tools = createTools(session, line);
    tools.show(shown.view, shown.formula);
    toolsPlace.append(...tools.parts);
  });
  const handle = make('button', {
    type: 'button',
    class: 'handle',
    title: text.dragHelp,
    onkeydown: (/** @type {KeyboardEvent} */ event) => {
      if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
      event.preventDefault();
      session.send({ do: 'step-line', line, down: event.key === 'ArrowDown' });
      handle.focus();
    },
  });
  const root = make('li', { class: 'line', 'data-line': line }, handle, opener, amount.root, mass, problem, toolsPlace);

  return {
    root,
    forget() {
      amount.forget();
      tools?.forget();
    },
    /**
     * @param {LineView} view
     * @param {FormulaView | undefined} formula
     */
    show(view, formula) {
      shown = { view, formula };
      setText(name, view.name);
      setText(brings, view.brings);
      setText(remark, [view.quantumSatis ? trade.qs : '', view.note].filter(Boolean).join(' · '));
      setText(amount.label, text.amountOf({ name: view.name }));
      opener.title = text.lineTools({ name: view.name });
      root.dataset.layer = view.layer;
      handle.setAttribute('aria-label', `${text.drag({ name: view.name })}. ${text.dragHelp}`);
      amount.show(view.amount);
      root.classList.toggle('takes-rest', view.quantumSatis);
      setText(mass, view.mass || '–', true);
      say(problem, view.problem);
      tools?.show(view, formula);
    },
    /** Marks the line with how serious the worst is that was found of it. @param {string | undefined} severity */
    mark(severity) {
      if ((root.dataset.worst ?? '') === (severity ?? '')) return;
      if (severity) root.dataset.worst = severity;
      else delete root.dataset.worst;
      const grade = trade.grades[/** @type {keyof typeof trade.grades} */ (severity)];
      graded.replaceChildren(...(severity ? [pin(severity), make('span', { class: 'unseen' }, ` ${grade} `)] : []));
    },
  };
}

/**
 * What can be done with a line beyond its amount.
 * @param {Session} session
 * @param {number} line
 */
function createTools(session, line) {
  let material = '';
  let name = '';
  const makeQs = button(text.makeQs, () => session.send({ do: 'set-quantum-satis', line }));
  const swap = () =>
    askForMaterial(session, {
      heading: name,
      onTaken: (taken) => session.send({ do: 'replace-material', line, material: taken }),
    });
  const look = () => {
    session.send({ do: 'open-material', material });
    go('materials');
  };
  const note = new Field({
    field: `line.note:${line}`,
    label: text.note,
    keyboard: 'text',
    onText: (typed) => session.send({ do: 'set-line-note', line, text: typed }),
  });
  const acts = make(
    'div',
    { class: 'acts' },
    makeQs,
    button(text.up, () => session.send({ do: 'step-line', line, down: false })),
    button(text.down, () => session.send({ do: 'step-line', line, down: true })),
    button(text.instead, () => void askToSwap(session, line)),
    button(text.swap, swap),
    button(text.look, look),
    button(text.removeLine, () => session.send({ do: 'remove-line', line }), { class: 'take-out' }),
  );
  return {
    parts: [acts, note.root],
    forget: () => note.forget(),
    /**
     * @param {LineView} view
     * @param {FormulaView | undefined} formula
     */
    show(view, formula) {
      ({ material, name } = view);
      show(makeQs, !view.quantumSatis && formula?.writtenIn !== 'grams');
      note.show(view.note);
    },
  };
}

/** @param {Element} input */
function focusNext(input) {
  const inputs = [...document.querySelectorAll('.amount input')];
  const next = inputs[inputs.indexOf(input) + 1];
  if (next instanceof HTMLInputElement) next.focus();
  else if (input instanceof HTMLElement) input.blur();
}
