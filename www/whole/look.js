// @ts-check

// The style sheets of rooms that come later. Without its own a room works, only it is not pleasant to look at: it says so.

import { button, make } from '../element.js';
import { words } from '../words.js';
import { words as more } from './words-share.js';

/**
 * Fetches the style sheets of rooms.
 * @param {HTMLElement[]} rooms
 * @param {...string} names
 */
export function dress(rooms, ...names) {
  for (const name of names) {
    const href = new URL(`./${name}.css`, import.meta.url).href;
    const link = make('link', { rel: 'stylesheet', href, onerror: () => {
      for (const room of rooms) {
        room.prepend(make('div', { class: 'alert note', role: 'status' }, make('p', {}, more.noLook), button(words.alerts.reload, () => location.reload())));
      }
    } });
    document.head.append(link);
  }
}
