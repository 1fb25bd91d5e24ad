// @ts-check

// A formula that was shared by link, to read: never kept before the reader says so.

import { button, make } from '../../dom/element.js';
import { createSheet } from '../../embed/sheet.js';
import { go } from '../../router.js';
import { drawComparison } from './comparison.js';
import { wordsOf } from '../../dom/language.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

const text = words.reading;
const sheetWords = /** @type {import('../../words.js').EmbedWords} */ (await wordsOf('embed'));

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const inside = make('div', { class: 'reading-room' });
  place.setAttribute('aria-labelledby', 'reading-title');
  place.append(inside);
  return {
    /** Reads the formula of the address. */
    enter: () => inside.replaceChildren(...read(session, location.hash)),
  };
}

/**
 * What there is to see and to do about a shared formula.
 * @param {Session} session
 * @param {string} link
 * @returns {HTMLElement[]}
 */
function read(session, link) {
  const sheet = createSheet({
    words: sheetWords,
    read: ({ batch }) => session.ask((seam) => seam.readLink(link, batch)),
    lacking: {
      fetch: () => session.swap(),
      read: ({ batch }, lacks) => session.ask((seam) => seam.readLinkWithout(link, batch, lacks)),
    },
    print: () => print(),
  });
  const view = sheet.show();
  if (!view) return [];
  const title = make('h2', { id: 'reading-title' }, view.error === undefined ? text.title : text.bad);
  if (view.error !== undefined) {
    return [
      title,
      make('div', { class: 'standing stop', role: 'alert' }, make('p', {}, view.error)),
      button(text.toShelf, () => go('shelf'), { class: 'main-act' }),
    ];
  }
  const mine = view.update.formula?.id ?? '';
  const acts = make('div', { class: 'acts no-print' });
  if (view.standing !== 'same') acts.append(button(text.keep, () => keepCopy(session, link), { class: 'main-act' }));
  if (view.standing !== 'new') acts.append(button(text.open, () => openMine(session, mine)));
  acts.append(button(text.close, () => go('shelf')));
  const standing = view.standing === 'new' ? text.intro : text[view.standing];
  /** @type {HTMLElement[]} */
  const parts = [title, make('div', { class: 'standing no-print' }, make('p', {}, standing)), acts];
  if (view.comparison) {
    const { ours, theirs } = words.compare;
    const changes = drawComparison(view.comparison, ours, theirs);
    parts.push(make('details', { class: 'no-print' }, make('summary', {}, text.compare), changes));
  }
  return [...parts, sheet.root];
}

/** @param {Session} session @param {string} link */
function keepCopy(session, link) {
  if (session.send({ do: 'keep-copy', link }).answer?.made) go('formula');
}

/** @param {Session} session @param {string} formula */
function openMine(session, formula) {
  session.send({ do: 'open-formula', formula });
  go('formula');
}
