// @ts-check

// Something worked out that can be put into the formula: what it hangs on, what it comes to, how it is handled.

import { createDescribedFields } from '../../dom/described.js';
import { button, make, say, show } from '../../dom/element.js';
import { texts } from '../../dom/list.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').PhOffer} PhOffer */
/** @typedef {import('../../seam/stillroom.js').PhOfferView} PhOfferView */

/**
 * @param {Session} session
 * @param {PhOffer} offer
 * @param {string} title
 */
export function createPhOffer(session, offer, title) {
  const fields = createDescribedFields((field, text) => session.send({ do: 'set-ph-field', field, text }));
  const lines = make('ul', { class: 'offer-lines' });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const cautions = make('div', { class: 'handling', role: 'note', hidden: true });
  let first = '';
  const act = button('', () => session.send({ do: 'take-ph-offer', offer, text: first }), { class: 'main-act' });
  const root = make(
    'section',
    { class: 'ph-offer', 'data-offer': offer },
    make('h3', {}, title),
    fields.root,
    make('div', { class: 'offer', 'aria-live': 'polite' }, lines, problem),
    cautions,
    act,
  );
  return {
    root,
    /** @param {PhOfferView | undefined} view */
    show(view) {
      show(root, view !== undefined);
      if (!view) return;
      first = view.lines[0] ?? '';
      fields.show(view.fields);
      texts(lines, 'li', view.lines);
      say(problem, view.problem);
      show(cautions, view.cautions.length > 0);
      texts(cautions, 'p', view.cautions, { class: 'finding stop' });
      cautions.setAttribute('aria-label', words.cautions);
      say(act, view.label);
    },
  };
}
