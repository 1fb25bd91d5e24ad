// @ts-check

// Fields that the session describes: cards of a run, the record and the journal share them. What is typed stays until it is
// sent or the session says something else.

import { button, make, setText } from '../../dom/element.js';
import { Field } from '../../dom/field.js';
import { keyed } from '../../dom/list.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').CardField} CardField */
/** @typedef {import('../../seam/stillroom.js').Command} Command */

/**
 * @param {Session} session
 * @param {{ onEnter?: () => void }} [options] what the enter key does in a field that goes along with the large area
 */
export function createCardFields(session, { onEnter } = {}) {
  const root = make('div', { class: 'card-fields' });
  /** @type {Map<string, ReturnType<typeof createCardField>>} */
  const fields = new Map();
  const all = () => [...fields.values()];
  const withNext = () => all().filter((field) => field.goesWithNext());

  return {
    root,
    /** @param {CardField[]} views */
    show: (views) =>
      keyed(
        root,
        views,
        (view) => {
          const field = createCardField(session, view, onEnter);
          fields.set(view.field, field);
          return {
            ...field,
            forget() {
              fields.delete(view.field);
              field.forget();
            },
          };
        },
        ({ field }) => field,
      ),
    /**
     * Sends what was typed into fields with a button of their own, before something leaves them: a reading that stands in
     * its field was meant. Starting a timer is no reading.
     * @returns {boolean} whether all of it was understood
     */
    keep: () => all().filter((field) => field.holdsReading() && !field.send()).length === 0,
    /** Whether something was typed that goes along with the large area and did not go yet. */
    waits: () => withNext().some((field) => field.isFilled()),
    /** What goes along with the large area, by the names it has there. @returns {Record<string, string>} */
    typed: () => Object.fromEntries(withNext().map((field) => field.typed())),
    /** After what was typed has been taken in. */
    taken() {
      for (const field of withNext()) field.clear();
    },
  };
}

/**
 * @param {Session} session
 * @param {CardField} first
 * @param {(() => void) | undefined} onEnter
 */
function createCardField(session, first, onEnter) {
  let view = first;
  let typed = '';
  /** What the session showed in it last. @type {string | undefined} */
  let shown;
  const field = new Field({
    field: view.field,
    label: view.label,
    unit: view.unit || undefined,
    keyboard: view.keyboard === 'long' || view.keyboard === 'day' ? 'text' : view.keyboard,
    long: view.keyboard === 'long',
    onText(now) {
      typed = now;
      // What is typed is the field's own until it is sent.
      field.show(typed);
    },
  });
  const act = view.button ? button(view.button, () => send(), { class: 'field-act' }) : undefined;
  field.input.addEventListener('change', () => {
    if (!view.withNext && !view.button) send();
  });
  field.input.addEventListener('keydown', (event) => {
    if (!(event instanceof KeyboardEvent) || event.key !== 'Enter' || view.keyboard === 'long') return;
    event.preventDefault();
    if (view.withNext) onEnter?.();
    else send();
  });

  /** @returns {boolean} whether it was understood */
  function send() {
    if (!view.command) return true;
    const { answer } = session.send(/** @type {Command} */ ({ ...view.command, [view.key]: typed }));
    if (answer?.error) return false;
    if (view.button) clear();
    return true;
  }

  function clear() {
    typed = shown ?? '';
    field.input.value = typed;
    field.show(typed);
  }

  const isFilled = () => typed !== shown && typed.trim() !== '';
  return {
    root: make('div', { class: 'card-field' }, field.root, act),
    send,
    clear,
    isFilled,
    forget: () => field.forget(),
    typed: () => [view.key, typed],
    goesWithNext: () => view.withNext,
    holdsReading: () => !view.withNext && view.command?.do !== 'start-timer' && isFilled(),
    /** @param {CardField} now */
    show(now) {
      view = now;
      setText(field.label, view.label);
      if (view.placeholder) field.input.setAttribute('placeholder', view.placeholder);
      if (shown === view.text) return;
      shown = view.text;
      typed = view.text;
      field.show(view.text);
    },
  };
}
