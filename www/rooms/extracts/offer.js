// @ts-check

// What the session offers to do with an extract.

import { button, make, say, show } from '../../dom/element.js';
import { texts } from '../../dom/list.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').ExtractOffer} ExtractOffer */
/** @typedef {import('../../seam/stillroom.js').ExtractView} ExtractView */

/**
 * @param {Session} session
 * @param {ExtractOffer} offer
 * @param {Record<string, string>} [properties]
 */
export function createOffer(session, offer, properties = {}) {
  const lines = make('ul', { class: 'offer-lines' });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const act = button('', () => session.send({ do: 'take-extract-offer', offer }), properties);
  const root = make('div', { class: 'offer', 'aria-live': 'polite' }, lines, problem, act);
  return {
    root,
    /** @param {ExtractView} view */
    show({ offers }) {
      const view = offers.find((each) => each.offer === offer);
      show(root, view !== undefined);
      if (!view) return;
      texts(lines, 'li', view.lines);
      say(problem, view.problem);
      say(act, view.label);
    },
  };
}
