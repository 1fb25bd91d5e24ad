// @ts-check

// A list of materials to choose from.

import { make, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';

/** @typedef {import('../../seam/stillroom.js').MaterialHit} MaterialHit */

/** @param {{ onChoice: (material: string) => void, nothing: string }} options */
export function hitList({ onChoice, nothing }) {
  const list = make('ul', { class: 'hits' });
  const none = make('p', { class: 'quiet', hidden: true }, nothing);
  return {
    root: make('div', {}, list, none),
    list,
    /** @param {MaterialHit[]} hits */
    show(hits) {
      show(none, hits.length === 0);
      keyed(
        list,
        hits,
        ({ id }) => createHit(id, onChoice),
        ({ id }) => id,
      );
    },
  };
}

/**
 * @param {string} material
 * @param {(material: string) => void} onChoice
 */
function createHit(material, onChoice) {
  const name = make('span', { class: 'hit-name' });
  const about = make('small');
  const choose = make(
    'button',
    { type: 'button', class: 'hit', 'data-material': material, onclick: () => onChoice(material) },
    name,
    about,
  );
  return {
    root: make('li', {}, choose),
    /** @param {MaterialHit} hit */
    show(hit) {
      choose.dataset.origin = hit.origin;
      setText(name, hit.name);
      setText(about, hit.about);
    },
  };
}
