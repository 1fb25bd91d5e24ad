// @ts-check

// A choice that a card offers.

import { make, say, setText } from '../../dom/element.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').ChoiceAct} ChoiceAct */

/** @param {Session} session */
export function createChoice(session) {
  /** @type {ChoiceAct | undefined} */
  let choice;
  const label = make('span');
  const about = make('small', { hidden: true });
  const root = make(
    'button',
    {
      type: 'button',
      class: 'choice',
      onclick: () => choice?.command && session.send(choice.command),
    },
    label,
    about,
  );
  return {
    root,
    /** @param {ChoiceAct} view */
    show(view) {
      choice = view;
      root.disabled = view.refused;
      root.dataset.act = view.command?.do ?? '';
      setText(label, view.label);
      say(about, view.about);
    },
  };
}
