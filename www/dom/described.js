// @ts-check

// Fields that the session describes: typed ones and choices.

import { chooser } from './choice.js';
import { make, setText } from './element.js';
import { Field } from './field.js';
import { keyed } from './list.js';

/**
 * @typedef {import('../seam/stillroom.js').PhFieldView & { kind?: import('../seam/stillroom.js').LabelFieldView['kind'] }} FieldView
 * one that says of no kind is a choice where there are choices, and else a number
 */
/** @typedef {(field: string, text: string) => void} Send */

/**
 * Several of them.
 * @param {Send} send called with what was typed or chosen
 * @param {string} [kind] what they are laid out as
 */
export function createDescribedFields(send, kind = 'row') {
  const root = make('div', { class: kind });
  return {
    root,
    /** @param {FieldView[]} views */
    show: (views) =>
      keyed(
        root,
        views,
        (view) => (view.choices.length > 0 ? createChooser(send, view) : createTyped(send, view)),
        ({ field, choices, unit, kind: of }) => `${field} ${choices.length > 0} ${unit !== ''} ${of}`,
      ),
  };
}

/** @param {Send} send @param {FieldView} first */
function createTyped(send, first) {
  const isText = first.kind === 'line' || first.kind === 'lines';
  const field = new Field({
    field: first.field,
    label: first.label,
    unit: first.unit || undefined,
    class: isText ? 'wide' : 'short',
    keyboard: isText ? 'text' : 'decimal',
    long: first.kind === 'lines',
    onText: (text) => send(first.field, text),
  });
  return {
    root: field.root,
    forget: () => field.forget(),
    /** @param {FieldView} view */
    show(view) {
      setText(field.label, view.label);
      if (field.unit) setText(field.unit, view.unit);
      field.show(view.text);
    },
  };
}

/** @param {Send} send @param {FieldView} first */
function createChooser(send, first) {
  const { root, select, show } = chooser({
    label: first.label,
    choices: {},
    field: first.field,
    onChoice: (key) => send(first.field, key),
  });
  return {
    root,
    /** @param {FieldView} view */
    show(view) {
      keyed(
        select,
        view.choices,
        ({ key }) => {
          const option = make('option', { value: key });
          return { root: option, show: ({ label }) => setText(option, label) };
        },
        ({ key }) => key,
      );
      show(view.text);
    },
  };
}
