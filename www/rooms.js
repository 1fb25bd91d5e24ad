// @ts-check

// The rooms: where each is fetched from, and when. The page opens with the one that is asked for; another is fetched,
// furnished and told what there is to show when somebody enters it.

import { button, make, setText } from './dom/element.js';
import { dress } from './dom/dress.js';
import { words } from './dom/words.js';
import { idle } from './moments.js';
import * as shelf from './rooms/shelf/room.js';
import { inSight, isOnDesk, wide } from './router.js';

/** @typedef {import('./session.js').Session} Session */
/** @typedef {import('./router.js').Place} Place */

/**
 * A room that is furnished.
 * @typedef {object} Room
 * @property {() => void} [enter] somebody came in
 * @property {() => void} [leave] somebody left
 * @property {(file: Blob) => Promise<void>} [readFile]
 */

/**
 * @typedef {object} Plan
 * @property {() => Promise<{ furnish: (place: HTMLElement, session: Session) => Room | void }>} fetch
 * @property {string[]} looks style sheets beyond those the page opens with
 * @property {boolean} [desk] whether it needs the part of the seam that shows and changes a formula
 * @property {boolean} [whole] whether it needs all of the seam that lies beyond the main job
 * @property {boolean} [swap] whether it needs what looks for amounts as well
 */

/** What rooms share; each room's own comes after it. */
const SHARED = ['style/fields.css', 'style/rooms.css'];
const PICKER = 'rooms/materials/picker.css';
const FIGURES = 'style/figures.css';

/** @type {Record<Place, Plan>} */
const plans = {
  shelf: { fetch: async () => shelf, looks: [] },
  formula: {
    fetch: () => import('./rooms/formula/room.js'),
    looks: [...SHARED, PICKER, 'rooms/formula/room.css'],
    desk: true,
  },
  jar: { fetch: () => import('./rooms/jar/room.js'), looks: [...SHARED, 'rooms/jar/room.css'], desk: true },
  bench: {
    fetch: () => import('./rooms/bench/room.js'),
    looks: [...SHARED, PICKER, 'rooms/bench/room.css'],
    desk: true,
  },
  findings: {
    fetch: () => import('./rooms/findings/room.js'),
    looks: [...SHARED, 'rooms/findings/room.css'],
    whole: true,
  },
  ph: {
    fetch: () => import('./rooms/ph/room.js'),
    looks: [...SHARED, FIGURES, 'rooms/ph/room.css'],
    whole: true,
  },
  swap: {
    fetch: () => import('./rooms/swap/room.js'),
    looks: [...SHARED, FIGURES, 'rooms/swap/room.css'],
    swap: true,
  },
  label: {
    fetch: () => import('./rooms/label/room.js'),
    looks: [...SHARED, FIGURES, 'rooms/label/room.css'],
    whole: true,
  },
  costs: {
    fetch: () => import('./rooms/costs/room.js'),
    looks: [...SHARED, FIGURES, 'rooms/costs/room.css'],
    whole: true,
  },
  batches: {
    fetch: () => import('./rooms/batches/room.js'),
    looks: [...SHARED, FIGURES, ...['room', 'run', 'record', 'journal'].map((part) => `rooms/batches/${part}.css`)],
    whole: true,
  },
  materials: {
    fetch: () => import('./rooms/materials/room.js'),
    looks: [...SHARED, PICKER, 'rooms/materials/room.css'],
    whole: true,
  },
  extracts: {
    fetch: () => import('./rooms/extracts/room.js'),
    looks: [...SHARED, PICKER, FIGURES, 'rooms/extracts/room.css'],
    whole: true,
  },
  paste: {
    fetch: () => import('./rooms/paste/room.js'),
    looks: [...SHARED, PICKER, 'rooms/paste/room.css'],
    whole: true,
  },
  examples: { fetch: () => import('./rooms/examples/room.js'), looks: ['rooms/examples/room.css'], whole: true },
  about: { fetch: () => import('./rooms/about/room.js'), looks: [...SHARED, 'rooms/about/room.css'], whole: true },
  share: { fetch: () => import('./rooms/share/room.js'), looks: [...SHARED, 'rooms/share/room.css'], whole: true },
  post: { fetch: () => import('./rooms/post/room.js'), looks: [...SHARED, 'rooms/post/room.css'], whole: true },
  reading: {
    fetch: () => import('./rooms/share/reading.js'),
    looks: [...SHARED, 'rooms/share/room.css', 'rooms/share/reading.css'],
    whole: true,
  },
};

/** The rooms of the desk, in the order in which they are furnished where all are in sight. */
const desk = /** @type {const} */ (['formula', 'jar', 'findings']);

/**
 * @param {Session} session
 * @param {HTMLElement} main
 */
export function createRooms(session, main) {
  const table = make('div', { class: 'desk' });
  const names = /** @type {Place[]} */ (Object.keys(plans));
  const places = new Map(
    names.map((name) => {
      return [name, make('section', { class: 'room', 'data-room': name, 'aria-label': words.rooms[name] })];
    }),
  );
  const placeOf = (/** @type {Place} */ name) => /** @type {HTMLElement} */ (places.get(name));
  for (const [name, place] of places) (isOnDesk(name) ? table : main).append(place);
  main.append(table);

  /** Rooms that are furnished, or being furnished. @type {Map<Place, Promise<Room>>} */
  const furnished = new Map();
  /** Those that are there. @type {Map<Place, Room>} */
  const rooms = new Map();

  /** @param {Place} name @param {HTMLElement} opening */
  async function furnish(name, opening) {
    const plan = plans[name];
    const place = placeOf(name);
    const [{ furnish: fill }] = await Promise.all([
      plan.fetch(),
      plan.desk && session.desk(),
      plan.whole && session.whole(),
      plan.swap && session.swap(),
      dress(place, plan.looks),
    ]);
    opening.remove();
    const room = fill(place, session) ?? {};
    rooms.set(name, room);
    session.introduce();
    return room;
  }

  /**
   * The room, furnished; without one of its files it says so in its place.
   * @param {Place} name
   * @returns {Promise<Room | undefined>}
   */
  async function open(name) {
    const place = placeOf(name);
    let coming = furnished.get(name);
    if (!coming) {
      const opening = place.querySelector('.opening') ?? make('p', { class: 'opening' });
      setText(opening, words.opening);
      place.append(opening);
      coming = furnish(name, /** @type {HTMLElement} */ (opening));
      furnished.set(name, coming);
    }
    try {
      return await coming;
    } catch (problem) {
      console.warn(problem);
      furnished.delete(name);
      place.querySelector('.opening')?.replaceChildren(
        words.notFetched,
        ' ',
        button(words.again, () => void again(name)),
      );
      return undefined;
    }
  }

  // A browser may not ask twice for a module that failed to arrive: where there is a network, the page loads once more.
  /** @param {Place} name */
  async function again(name) {
    const { ok } = await fetch(document.baseURI, { cache: 'no-store' }).catch(() => ({ ok: false }));
    if (ok) location.reload();
    else await enter(name);
  }

  wide.addEventListener('change', () => void furnishDesk());

  /**
   * Where all of the desk is in sight, the rest of it follows the room that was asked for, one after the other.
   * @param {Place} [asked]
   */
  async function furnishDesk(asked) {
    for (const name of desk) {
      if (name === asked || !inSight(name)) continue;
      if (!rooms.has(name)) await idle();
      await open(name);
    }
  }

  /** @param {Place} name @param {Place} [former] */
  async function enter(name, former) {
    if (former && former !== name) rooms.get(former)?.leave?.();
    const room = await open(name);
    // Somebody may have left again before it came.
    if (inSight(name)) room?.enter?.();
    if (isOnDesk(name)) void furnishDesk(name);
  }

  return {
    enter,
    open,
    /** Fetches the scripts of rooms, so that who enters them waits for nothing. @param {readonly Place[]} wanted */
    async fetchAhead(wanted) {
      for (const name of wanted) {
        await idle();
        // Who enters the room is told if it did not come.
        await plans[name].fetch().catch(console.warn);
      }
    },
  };
}
