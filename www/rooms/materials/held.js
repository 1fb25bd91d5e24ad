// @ts-check

// What the maker has, with how much of it and by when: what should be used first stands first.

import { make, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';
import { words as text } from './words.js';

/** @typedef {import('../../seam/stillroom.js').HeldView} HeldView */

/** @param {(material: string) => void} open */
export function createHeld(open) {
  const list = make('ul', { class: 'held' });
  const none = make('p', { class: 'quiet' }, text.noHeld);
  return {
    root: make('div', {}, list, none),
    /** @param {HeldView[]} views */
    show(views) {
      show(none, views.length === 0);
      keyed(
        list,
        views,
        ({ id }) => createRow(id, open),
        ({ id }) => id,
      );
    },
  };
}

/**
 * @param {string} material
 * @param {(material: string) => void} open
 */
function createRow(material, open) {
  const bead = make('span', { class: 'bead' });
  const name = make('span');
  const about = make('small');
  const stock = make('b', { class: 'number' });
  const until = make('small');
  const root = make(
    'button',
    { type: 'button', class: 'held-row', onclick: () => open(material) },
    bead,
    make('span', {}, name, about),
    make('span', {}, stock, until),
  );
  return {
    root: make('li', {}, root),
    /** @param {HeldView} view */
    show(view) {
      bead.dataset.layer = view.layer;
      setText(name, view.name);
      setText(about, view.about);
      setText(stock, view.stock, true);
      setText(until, view.until);
      until.className = view.late ? 'is-late' : '';
    },
  };
}
