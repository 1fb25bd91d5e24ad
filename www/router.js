// @ts-check

// Where the page is. Each place has its address, so that the back button leads back and a reload stays; its title; and its
// heading, which has the focus on arrival. This module alone reads and writes the address.

import { make, show } from './dom/element.js';
import { icon } from './dom/icon.js';
import { words } from './dom/words.js';

/** @typedef {keyof typeof words.rooms} Place */

/** The places of the dock, each with its views: the first is where the dock leads. */
const docked = /** @type {const} */ ({
  shelf: ['shelf', 'share', 'post', 'reading', 'paste', 'examples', 'about'],
  formula: ['formula', 'jar', 'findings', 'ph', 'swap', 'label', 'costs'],
  bench: ['bench'],
  stores: ['materials', 'extracts'],
  journal: ['batches'],
});
/** @typedef {keyof typeof docked} Docked */
/** The views that one chooses among. @type {Docked[]} */
const chosen = ['formula', 'stores'];
/** Views that stand side by side on a wide screen. @type {Set<Place>} */
const desk = new Set(['formula', 'jar', 'findings']);
/** How the address of a shared formula begins. */
const SHARED = '#f=';

/** In letters: with large text the narrow layout stays. */
export const wide = matchMedia('(min-width: 60rem)');
// To ask the query itself has the browser work out every style first.
let isWide = wide.matches;
wide.addEventListener('change', () => {
  isWide = wide.matches;
});

/** @type {Place | undefined} */
let here;
/** @type {(place: Place, former: Place | undefined) => Promise<void>} */
let onArrival = async () => {};
/** Links to places and to their views. @type {HTMLAnchorElement[]} */
const links = [];
/** The bars of views. @type {Map<Docked, HTMLElement>} */
const bars = new Map();
/** What is done on the next arrival instead of going to the heading. @type {(() => void) | undefined} */
let onceThere;

/**
 * Where a place stands: one is there, it stands beside that on a wide screen, or it is out of sight.
 * @typedef {'here' | 'beside' | 'away'} Standing
 * @param {Place} place
 * @returns {Standing}
 */
export function standing(place) {
  if (here === place) return 'here';
  return isWide && isOnDesk(here) && isOnDesk(place) ? 'beside' : 'away';
}

/** Whether a place is in sight. @param {Place} place */
export function inSight(place) {
  return standing(place) !== 'away';
}

/** Whether a place stands beside others on a wide screen. @param {Place | undefined} place */
export function isOnDesk(place) {
  return place !== undefined && desk.has(place);
}

/**
 * Goes to a place, or arrives there anew.
 * @param {Place} place
 * @param {() => void} [then] what is done there instead of going to the heading
 */
export function go(place, then) {
  onceThere = then;
  if (location.hash === `#${place}`) void arrive();
  else location.hash = place;
}

/**
 * Goes where the address says, and from then on follows it.
 * @param {(place: Place, former: Place | undefined) => Promise<void>} hear hears of each arrival; fulfilled once the place
 *   is furnished
 */
export async function start(hear) {
  onArrival = hear;
  const dock = document.querySelector('nav.dock');
  const main = document.getElementById('main');
  for (const name of /** @type {Docked[]} */ (Object.keys(docked))) {
    const link = make(
      'a',
      { href: `#${docked[name][0]}`, 'data-dock': name },
      icon(name),
      make('span', {}, words.places[name]),
    );
    links.push(link);
    dock?.append(link);
    if (!chosen.includes(name)) continue;
    const bar = make('nav', { class: 'views', 'aria-label': words.places[name] });
    for (const view of docked[name]) {
      const to = make('a', {
        href: `#${view}`,
        'data-to': view,
        class: isOnDesk(view) && view !== name ? 'desk-view' : '',
      });
      to.append(make('span', {}, words.views[/** @type {keyof typeof words.views} */ (view)]));
      links.push(to);
      bar.append(to);
    }
    bars.set(name, bar);
    main?.prepend(bar);
  }
  const shared = sharedByAnotherApp();
  if (shared) history.replaceState(null, '', `./${shared}`);
  addEventListener('hashchange', () => void arrive());
  await arrive();
}

/** The place that the address names. @returns {Place} */
function named() {
  if (location.hash.startsWith(SHARED)) return 'reading';
  const named = location.hash.slice(1);
  if (named in docked) return docked[/** @type {Docked} */ (named)][0];
  return (
    Object.values(docked)
      .flat()
      .find((place) => place === named) ?? 'shelf'
  );
}

/** The link that another app shared with this one: it stands in the query then, as the manifest says. */
function sharedByAnotherApp() {
  const texts = [...new URLSearchParams(location.search).values()];
  return texts.map((text) => /#f=[\w-]+/.exec(text)?.[0]).find(Boolean);
}

async function arrive() {
  const former = here;
  here = named();
  const place = here;
  document.body.dataset.room = place;
  document.body.dataset.desk = String(isOnDesk(place));
  document.title = place === 'shelf' ? 'Stillroom' : words.title({ room: words.rooms[place] });
  for (const room of document.querySelectorAll('.room')) {
    room.classList.toggle('here', /** @type {HTMLElement} */ (room).dataset.room === place);
  }
  const [tab] = /** @type {[Docked, readonly Place[]][]} */ (Object.entries(docked)).find(([, views]) =>
    views.includes(place),
  ) ?? ['shelf'];
  for (const [name, bar] of bars) show(bar, name === tab);
  for (const link of links) {
    const { dock, to } = link.dataset;
    if (dock === tab || to === place || (isWide && to === 'formula' && isOnDesk(place)))
      link.setAttribute('aria-current', 'page');
    else link.removeAttribute('aria-current');
  }
  scrollTo(0, 0);
  await onArrival(place, former);
  // Who opens the page begins at its head; who comes from elsewhere in it begins at the heading of the place.
  const then = onceThere;
  onceThere = undefined;
  if (former === undefined || here !== place) return;
  if (then) then();
  else focusHeading(place);
}

/** Puts the focus on the heading of a place, unless it has gone somewhere within it already. @param {Place} place */
function focusHeading(place) {
  const room = document.querySelector(`.room[data-room="${place}"]`);
  // On a wide screen a room may stand within another.
  const isWithin = (/** @type {Element | null} */ element) => element?.closest('.room') === room;
  if (!room || isWithin(document.activeElement) || document.querySelector('dialog[open]')) return;
  const heading = [...room.querySelectorAll('h2')].find((each) => each.checkVisibility() && isWithin(each));
  heading?.setAttribute('tabindex', '-1');
  heading?.focus({ preventScroll: true });
}

/**
 * Holds the back button while something is under way: it asks instead of leaving.
 * @param {() => boolean} isUnderWay
 * @param {() => void} ask
 */
export function guardBack(isUnderWay, ask) {
  let isGuarded = false;
  function hold() {
    if (isGuarded || !isUnderWay()) return;
    isGuarded = true;
    // After a reload the page stands on the entry that was made for this already.
    if (!history.state?.guard) history.pushState({ guard: true }, '', location.href);
  }
  addEventListener('popstate', () => {
    if (!isGuarded) return;
    isGuarded = false;
    if (!isUnderWay()) return;
    hold();
    ask();
  });
  return {
    hold,
    letGo() {
      isGuarded = false;
    },
  };
}
