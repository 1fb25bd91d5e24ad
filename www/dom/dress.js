// @ts-check

// The style sheets of rooms that come later. Without its own a room works, only it is not pleasant to look at: it says so.

import { build } from '../address.js';
import { button, make } from './element.js';
import { words } from './words.js';

/** Style sheets that were asked for, by their address. @type {Map<string, Promise<boolean>>} */
const asked = new Map();

/**
 * Fetches the style sheets of a room; where one does not come, the room says so.
 * @param {HTMLElement} room
 * @param {readonly string[]} sheets their addresses, as seen from the folder of the build
 * @returns {Promise<void>} fulfilled once all came, or did not
 */
export async function dress(room, sheets) {
  const arrived = await Promise.all(sheets.map(fetched));
  if (arrived.every(Boolean)) return;
  room.prepend(
    make(
      'div',
      { class: 'alert note', role: 'status' },
      make('p', {}, words.noLook),
      button(words.alerts.reload, () => location.reload()),
    ),
  );
}

/** @param {string} sheet */
function fetched(sheet) {
  const href = new URL(sheet, build).href;
  let coming = asked.get(href);
  if (!coming) {
    coming = new Promise((settle) => {
      document.head.append(
        make('link', { rel: 'stylesheet', href, onload: () => settle(true), onerror: () => settle(false) }),
      );
    });
    asked.set(href, coming);
  }
  return coming;
}
