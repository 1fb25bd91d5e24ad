// @ts-check

// The head of a formula, and its method and notes.

import { discloses, make, setText } from '../../dom/element.js';
import { chooser, segments } from '../../dom/choice.js';
import { Field } from '../../dom/field.js';
import { icon } from '../../dom/icon.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').FormulaView} FormulaView */

/**
 * @param {Session} session
 * @param {() => boolean} goesOn leads from the name of an empty formula to its first material
 */
export function createHead(session, goesOn) {
  let formula = '';
  const name = new Field({
    field: 'formula.name',
    label: text.name,
    keyboard: 'text',
    class: 'name-field',
    onText: (typed) => session.send({ do: 'rename-formula', formula, name: typed }),
  });
  name.input.addEventListener('keydown', (/** @type {any} */ event) => {
    if (event.key === 'Enter' && !event.repeat && goesOn()) event.preventDefault();
  });
  const purpose = chooser({
    label: text.purpose,
    choices: { 'leave-on': text.leaveOn, 'rinse-off': text.rinseOff },
    onChoice: (value) => session.send({ do: 'set-purpose', purpose: value }),
  });
  const ph = new Field({
    field: 'formula.ph',
    label: text.ph,
    class: 'short',
    onText: (typed) => session.send({ do: 'set-target-ph', text: typed }),
  });
  const writtenIn = segments({
    label: text.writtenIn,
    choices: { percent: text.inPercent, grams: text.inGrams },
    onChoice: (basis) => session.send({ do: 'write-in', basis }),
  });
  // What is seldom changed stands in one quiet line that opens.
  const about = make('button', { type: 'button', class: 'about-open' });
  const fields = make('div', { class: 'row' }, purpose.root, ph.root, writtenIn.root);
  discloses(about, fields, () => {});
  return {
    root: make(
      'div',
      { class: 'formula-head' },
      name.root,
      make(
        'a',
        { class: 'icon-act', href: '#share', 'aria-label': text.share },
        icon('M12 15V3.5M8 7l4-3.5L16 7M8 11H5v9.5h14V11h-3'),
      ),
      make('div', { class: 'quiet-row' }, about, fields),
    ),
    /** @param {FormulaView} view */
    show(view) {
      formula = view.id ?? '';
      name.show(view.name);
      purpose.show(view.purpose);
      ph.show(view.targetPh);
      writtenIn.show(view.writtenIn);
      const use = view.purpose === 'leave-on' ? text.leaveOn : text.rinseOff;
      const numbers = view.writtenIn === 'percent' ? text.inPercent : text.inGrams;
      setText(about, [use, view.targetPh && `${text.ph}\u00a0${view.targetPh}`, numbers].filter(Boolean).join(' · '));
    },
  };
}

/** @param {Session} session */
export function createMethod(session) {
  const steps = new Field({
    field: 'formula.steps',
    label: text.steps,
    keyboard: 'text',
    long: true,
    onText: (typed) => session.send({ do: 'set-steps', text: typed }),
  });
  const notes = new Field({
    field: 'formula.notes',
    label: text.notes,
    keyboard: 'text',
    long: true,
    onText: (typed) => session.send({ do: 'set-notes', text: typed }),
  });
  return {
    root: make('details', { class: 'method' }, make('summary', {}, text.methodTitle), steps.root, notes.root),
    /** @param {FormulaView} view */
    show(view) {
      steps.show(view.steps);
      notes.show(view.notes);
    },
  };
}
