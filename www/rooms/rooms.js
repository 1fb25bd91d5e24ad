// @ts-check

// Which room is in sight. The address carries it, so that the phone's back button leads back.

import { make } from '../element.js';
import { words } from '../words.js';

const rooms = /** @type {const} */ (['shelf', 'formula', 'findings', 'jar', 'bench', 'batches', 'materials', 'extracts']);

/** @typedef {typeof rooms[number]} Room */

/** Rooms that stand side by side on a wide screen. @type {Set<string>} */
const desk = new Set(['formula', 'findings', 'jar', 'bench']);

export const wide = matchMedia('(min-width: 960px)');
// To ask the query itself has the browser work out every style first.
let isWide = wide.matches;
wide.addEventListener('change', () => {
  isWide = wide.matches;
});

/** Whether a room is in sight. @param {Room} room */
export function inSight(room) {
  const { dataset } = document.body;
  return dataset.room === room || (isWide && dataset.desk === 'true' && desk.has(room));
}

/**
 * @param {(room: string) => void} onEnter
 */
export function createRooms(onEnter) {
  /** @type {HTMLAnchorElement[]} */
  const links = [];
  for (const nav of document.querySelectorAll('nav.rooms, nav.dock')) {
    for (const room of rooms) {
      if (nav.className === 'dock' && rooms.indexOf(room) > 4) continue;
      // On a wide screen formula, findings, jar and bench are one room.
      if (nav.className === 'rooms' && room !== 'formula' && desk.has(room)) continue;
      const link = make('a', { href: `#${room}`, 'data-to': room }, words.rooms[room]);
      links.push(link);
      nav.append(link);
    }
  }

  // A shared formula has a room that comes later; until then, nobody is to take the shelf for it.
  const named = () => rooms.find((room) => room === location.hash.slice(1)) ?? (location.hash.startsWith('#f=') ? 'reading' : 'shelf');

  function enter() {
    const room = named();
    document.body.dataset.room = room;
    document.body.dataset.desk = String(desk.has(room));
    for (const link of links) {
      const to = link.dataset.to ?? '';
      const here = to === room || (link.parentElement?.className === 'rooms' && to === 'formula' && desk.has(room));
      if (here) link.setAttribute('aria-current', 'page');
      else link.removeAttribute('aria-current');
    }
    onEnter(room);
    scrollTo(0, 0);
  }
  addEventListener('hashchange', enter);

  return {
    enter,
    /** @param {string} room */
    go(room) {
      if (location.hash === `#${room}`) enter();
      else location.hash = room;
    },
  };
}
