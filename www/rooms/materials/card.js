// @ts-check

// The card of a material: what is known of it and from where, and what the maker may change.

import { button, make, setText, show } from '../../dom/element.js';
import { chooser } from '../../dom/choice.js';
import { Field } from '../../dom/field.js';
import { keyed, texts } from '../../dom/list.js';
import { words as trade } from '../../dom/words.js';
import { words as common } from '../../dom/words.js';
import { createHolding } from './holding.js';
import { askForMaterial } from './picker.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').MaterialField} MaterialField */
/** @typedef {import('../../seam/stillroom.js').MaterialView} MaterialView */
/** @typedef {import('../../seam/stillroom.js').PartView} PartView */
/** @typedef {import('../../dom/field.js').FieldOptions} FieldOptions */

/** @param {Session} session */
export function createCard(session) {
  let material = '';
  /**
   * @param {MaterialField} field
   * @param {string} label
   * @param {Partial<FieldOptions>} [more]
   */
  const textField = (field, label, more = {}) =>
    new Field({
      field: `material.${field}`,
      label,
      keyboard: 'text',
      onText: (typed) => session.send({ do: 'set-material-text', field, text: typed }),
      ...more,
    });
  const title = make('h3', { class: 'card-title' });
  const about = make('p', { class: 'quiet' });
  const name = textField('name', text.name, { class: 'wide' });
  const inci = textField('inci', text.inci, { class: 'wide' });
  const density = textField('density', text.density, { keyboard: 'decimal', unit: 'g/mL' });
  const note = textField('note', text.note, { long: true, class: 'wide' });
  const kind = chooser({
    label: text.class,
    choices: text.classes,
    onChoice: (chosen) => session.send({ do: 'set-material-class', class: chosen }),
  });
  const phase = chooser({
    label: text.phase,
    choices: trade.phaseKinds,
    onChoice: (chosen) => session.send({ do: 'set-material-phase', kind: chosen }),
  });
  const problems = make('div', {});
  const partsList = make('ul', { class: 'parts' });
  const partsTotal = make('p', { class: 'total' });
  /** @param {string} taken */
  const takePart = (taken) => {
    const { answer } = session.send({ do: 'add-part', material: taken });
    /** @type {HTMLElement | null} */ (document.querySelector(`[data-field="part:${answer?.made}"]`))?.focus();
  };
  const addPart = button(text.addPart, () =>
    askForMaterial(session, { heading: text.addPart, onTaken: takePart, onlyIf: (id) => id !== material }),
  );
  const parts = make('div', {}, make('h4', {}, text.parts), partsList, partsTotal, addPart);
  const constituents = make('ul', { class: 'brought' });
  const brings = make('div', {}, make('h4', {}, text.brings), constituents);
  const values = make('dl', { class: 'values' });
  const valuesPart = make(
    'div',
    {},
    make('h4', {}, text.values),
    make('p', { class: 'quiet' }, text.valuesHelp),
    values,
  );
  const noValues = make('p', { class: 'quiet' }, text.noValues);
  const holding = createHolding(session, () => material);
  const usedIn = make('ul', { class: 'used-in' });
  const notUsed = make('p', { class: 'quiet' }, text.notUsed);
  const copy = button(text.copy, () => session.send({ do: 'copy-material', material }));
  const remove = button(text.remove, () => session.send({ do: 'delete-material', material }), { class: 'take-out' });
  const fields = make('div', { class: 'grid' }, name.root, inci.root, kind.root, phase.root, density.root, note.root);
  const root = make(
    'article',
    { class: 'sheet material-card', hidden: true },
    make(
      'div',
      { class: 'card-head' },
      title,
      button(common.close, () => session.send({ do: 'close-material' }), { class: 'plain' }),
    ),
    about,
    problems,
    fields,
    holding.root,
    parts,
    brings,
    valuesPart,
    noValues,
    make('h4', {}, text.usedIn),
    usedIn,
    notUsed,
    make('div', { class: 'acts' }, copy, remove),
  );
  return {
    root,
    focusName() {
      name.input.focus();
      name.input.select();
    },
    /** @param {MaterialView} view */
    show(view) {
      show(root, view.id !== undefined);
      if (view.id === undefined) return;
      material = view.id;
      setText(title, view.name);
      setText(about, [view.inci, view.classLabel, view.phaseLabel].filter(Boolean).join(' · '));
      show(fields, view.own);
      name.show(view.name);
      inci.show(view.inci);
      show(inci.root, !view.composite);
      kind.show(view.class ?? 'other');
      phase.show(view.phaseKind ?? 'heated-water');
      density.show(view.density);
      note.show(view.note);
      texts(problems, 'p', view.problems, { class: 'finding caution' });
      show(parts, view.composite && view.own);
      keyed(partsList, view.parts, (_, at) => createPart(session, at));
      setText(partsTotal, text.partsTotal({ percent: view.partsTotal }));
      show(brings, view.constituents.length > 0);
      keyed(constituents, view.constituents, createBrought);
      show(valuesPart, view.values.length > 0);
      show(noValues, view.values.length === 0 && !view.own);
      showValues(values, view.values);
      show(holding.root, !view.id.startsWith('f'));
      holding.show(view.holding);
      texts(usedIn, 'li', view.usedIn);
      show(notUsed, view.usedIn.length === 0);
      show(remove, view.own);
      show(copy, !view.id.startsWith('f'));
    },
  };
}

/** A constituent that the material brings. */
function createBrought() {
  const inci = make('span');
  const percent = make('span', { class: 'number' });
  return {
    root: make('li', {}, inci, percent),
    /** @param {MaterialView['constituents'][number]} view */
    show(view) {
      setText(inci, view.inci);
      setText(percent, `${view.percent}\u00a0%`);
    },
  };
}

/**
 * Shows what is known, each value under its name.
 * @param {Element} list
 * @param {MaterialView['values']} views
 */
function showValues(list, views) {
  list.replaceChildren(
    ...views.flatMap((value) => [
      make('dt', {}, value.label),
      make('dd', {}, make('span', {}, value.value), make('small', {}, `${value.basis} · ${value.source}`)),
    ]),
  );
}

/**
 * @param {Session} session
 * @param {number} part
 */
function createPart(session, part) {
  const name = make('span', { class: 'line-name' });
  const remark = make('small', { class: 'remark' });
  const amount = new Field({
    field: `part:${part}`,
    label: '',
    labelHidden: true,
    class: 'amount',
    unit: '%',
    onText: (typed) => session.send({ do: 'set-part-amount', part, text: typed }),
  });
  const remove = button('×', () => session.send({ do: 'remove-part', part }), { class: 'plain' });
  return {
    root: make('li', { class: 'part' }, make('span', {}, name, remark), amount.root, remove),
    forget: () => amount.forget(),
    /** @param {PartView} view */
    show(view) {
      setText(name, view.name);
      setText(remark, view.quantumSatis ? trade.qs : '');
      setText(amount.label, text.partOf({ name: view.name }));
      amount.show(view.amount);
      remove.setAttribute('aria-label', text.removePart({ name: view.name }));
    },
  };
}
