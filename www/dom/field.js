// @ts-check

// A field a person types in, with its message beside it. What is typed is never taken away while it is being typed, and
// a text that was not understood stays, with the reason, until it is mended.

import { freshId, make, setText, show } from './element.js';
import { words } from './words.js';

/** Fields by the session's name: two rooms may hold the same one. @type {Map<string, Set<Field>>} */
const fields = new Map();

/**
 * Tells the field a command came from what became of its text.
 * @param {import('../session.js').Update} update
 */
export function answerField({ answer }) {
  const named = [...(fields.get(answer?.field ?? '') ?? [])];
  const typed = named.find((field) => field.input === document.activeElement) ?? named.at(-1);
  // Why it was not understood is said where it was typed; once it is mended, that goes everywhere.
  for (const field of answer?.error ? [typed] : named) field?.answer(answer?.error);
}

/** The unit of temperature that the maker has chosen. */
let degrees = '°C';

/**
 * Puts the maker's unit of temperature beside every field that holds one.
 * @param {import('../session.js').Update} update
 */
export function dressTemperatures({ settings }) {
  if (!settings) return;
  degrees = settings.temperatureUnit;
  for (const each of fields.values()) for (const field of each) field.dressTemperature();
}

/**
 * @typedef {object} FieldOptions
 * @property {string} field the session's name for it
 * @property {string} label
 * @property {(text: string) => void} onText called as one types
 * @property {string} [unit] a temperature in °C gets the unit that the maker has chosen
 * @property {boolean} [labelHidden]
 * @property {'decimal' | 'numeric' | 'text'} [keyboard]
 * @property {boolean} [long] several lines
 * @property {string} [class]
 */

export class Field {
  #value = '';
  /** Why what stands in it was not understood. */
  #error = '';
  #field;
  #isTemperature = false;

  /** @param {FieldOptions} options */
  constructor({
    field,
    label,
    onText,
    unit,
    labelHidden = false,
    keyboard = 'decimal',
    long = false,
    class: kind = '',
  }) {
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
      this.#isTemperature = unit === '°C';
      this.dressTemperature();
      box.append(this.unit);
    }
    this.root = make('div', { class: `field ${kind}` }, this.label, box, this.message);
    this.input.addEventListener('input', () => onText(this.input.value));
    this.input.addEventListener('blur', () => this.#settle());
    this.input.addEventListener('focus', () => {
      if (this.input instanceof HTMLInputElement && keyboard !== 'text') this.input.select();
    });
    fields.set(field, (fields.get(field) ?? new Set()).add(this));
  }

  /**
   * Shows a value, now or once the person has left the field.
   * @param {string} value
   */
  show(value) {
    const changed = value !== this.#value;
    this.#value = value;
    if (document.activeElement === this.input) {
      this.#say();
      return;
    }
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
    this.#error = error ?? '';
    this.#say();
    show(this.message, Boolean(error));
  }

  /** Why, and what counts meanwhile. */
  #say() {
    const value = [this.#value, this.unit?.textContent].join('\u00a0').trim();
    const counts = this.#error && this.#value ? ` ${words.stillCounts({ value })}` : '';
    setText(this.message, this.#error + counts);
  }

  dressTemperature() {
    if (this.unit && this.#isTemperature) setText(this.unit, degrees);
  }

  forget() {
    fields.get(this.#field)?.delete(this);
  }

  #settle() {
    if (!this.#wrong) this.input.value = this.#value;
  }
}
