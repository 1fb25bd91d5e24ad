// @ts-check

// What words of the trade mean: fetched when somebody opens one.

import { make } from '../../dom/element.js';
import { words } from './words.js';

/** @typedef {keyof typeof words.names} Term */

/** @param {readonly Term[]} terms */
export function meanings(terms) {
  return make(
    'dl',
    { class: 'meanings' },
    ...terms.flatMap((term) => [make('dt', {}, words.names[term]), make('dd', {}, words.meanings[term])]),
  );
}
