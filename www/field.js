// @ts-check

// A field a person types in, with its message beside it. What is typed is never taken away while it is being typed, and
// a text that was not understood stays, with the reason, until it is mended.

import { freshId, make, show } from './element.js';

/** @type {Map<string, Field>} */
const fields = new Map();

/**
 * Tells the field a command came from what became of its text.
 * @param {import('./session.js').Update} update
 */
export function answerField({ answer }) {
  if (answer?.field) fields.get(answer.field)?.answer(answer.error);
}

/**
 * @typedef {object} FieldOptions
 * @property {string} field the session's name for it
 * @property {string} label
 * @property {(text: string) => void} onText called as one types
 * @property {string} [unit]
 * @property {boolean} [labelHidden]
 * @property {'decimal' | 'numeric' | 'text'} [keyboard]
 * @property {boolean} [long] several lines
 * @property {string} [class]
 */

export class Field {
  #value = '';
  #field;

  /** @param {FieldOptions} options */
  constructor({ field, label, onText, unit, labelHidden = false, keyboard = 'decimal', long = false, class: kind = '' }) {
    this.#field = field;
    const id = freshId();
    const messageId = freshId();
    /** @type {HTMLInputElement | HTMLTextAreaElement} */
    this.input = long
      ? make('textarea', { id, rows: 4, 'aria-describedby': messageId })
      : make('input', {
          id,
          type: 'text',
          inputmode: keyboard,
          autocomplete: 'off',
          spellcheck: 'false',
          enterkeyhint: 'next',
          'aria-describedby': messageId,
        });
    this.input.dataset.field = field;
    this.label = make('label', { for: id, class: labelHidden ? 'unseen' : '' }, label);
    this.message = make('p', { class: 'message', id: messageId, hidden: true });
    const box = make('span', { class: 'box' }, this.input);
    if (unit !== undefined) {
      this.unit = make('span', { class: 'unit' }, unit);
      box.append(this.unit);
    }
    this.root = make('div', { class: `field ${kind}` }, this.label, box, this.message);
    this.input.addEventListener('input', () => onText(this.input.value));
    this.input.addEventListener('blur', () => this.#settle());
    this.input.addEventListener('focus', () => {
      if (this.input instanceof HTMLInputElement && keyboard !== 'text') this.input.select();
    });
    fields.set(field, this);
  }

  /**
   * Shows a value, now or once the person has left the field.
   * @param {string} value
   */
  show(value) {
    const changed = value !== this.#value;
    this.#value = value;
    if (document.activeElement === this.input) return;
    if (changed) this.answer(undefined);
    if (!this.#wrong && this.input.value !== value) this.input.value = value;
  }

  get #wrong() {
    return this.input.getAttribute('aria-invalid') === 'true';
  }

  /**
   * Says why the text was not understood, or that it was.
   * @param {string | undefined} error
   */
  answer(error) {
    if (!error && !this.#wrong) return;
    this.input.setAttribute('aria-invalid', error ? 'true' : 'false');
    this.message.textContent = error ?? '';
    show(this.message, Boolean(error));
  }

  forget() {
    if (fields.get(this.#field) === this) fields.delete(this.#field);
  }

  #settle() {
    if (!this.#wrong) this.input.value = this.#value;
  }
}

/**
 * A choice among a few.
 * @param {{ label: string, choices: Record<string, string>, onChoice: (value: any) => void, field?: string, labelHidden?: boolean }} options
 */
export function chooser({ label, choices, onChoice, field, labelHidden = false }) {
  const id = freshId();
  const select = make(
    'select',
    { id, 'data-field': field, onchange: () => onChoice(select.value) },
    ...Object.entries(choices).map(([value, text]) => make('option', { value }, text)),
  );
  const root = make('div', { class: 'field' }, make('label', { for: id, class: labelHidden ? 'unseen' : '' }, label), select);
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
