// @ts-check

// A choice among a few: shut behind a field, or all in sight.

import { freshId, make } from './element.js';

/**
 * A choice among a few.
 * @param {{ label: string, choices: Record<string, string>, onChoice: (value: any) => void, field?: string, labelHidden?: boolean, class?: string }} options
 */
export function chooser({ label, choices, onChoice, field, labelHidden = false, class: kind = 'field' }) {
  const id = freshId();
  const select = make(
    'select',
    { id, 'data-field': field, onchange: () => onChoice(select.value) },
    ...Object.entries(choices).map(([value, text]) => make('option', { value }, text)),
  );
  const root = make(
    'div',
    { class: kind },
    make('label', { for: id, class: labelHidden ? 'unseen' : '' }, label),
    select,
  );
  return {
    root,
    select,
    /** @param {string} value */
    show(value) {
      if (select.value !== value) select.value = value;
    },
  };
}

/**
 * A choice among a few, all in sight.
 * @param {{ label: string, choices: Record<string, string>, onChoice: (value: any) => void }} options
 */
export function segments({ label, choices, onChoice }) {
  const name = freshId();
  /** @type {Map<string, HTMLInputElement>} */
  const inputs = new Map();
  const root = make('fieldset', { class: 'segments' }, make('legend', {}, label));
  const row = make('div', { class: 'segment-row' });
  for (const [value, text] of Object.entries(choices)) {
    const input = make('input', { type: 'radio', name, value, onchange: () => onChoice(value) });
    inputs.set(value, input);
    row.append(make('label', {}, input, make('span', {}, text)));
  }
  root.append(row);
  return {
    root,
    /** @param {string} value */
    show(value) {
      const input = inputs.get(value);
      if (input && !input.checked) input.checked = true;
    },
  };
}
