// @ts-check

// The language of the page, and what it fetches in it: the fixed texts of each room, and the tables of the session.

import { build } from '../address.js';

/** @typedef {import('../words.js').CommonWords} CommonWords */

/** The languages there are, each by its own name. */
export const LANGUAGES = Object.freeze({ en: 'English', de: 'Deutsch', fr: 'Français' });

/** @typedef {keyof typeof LANGUAGES} Language */

/** Under which key this device keeps the language that was chosen; none follows the browser. */
const KEY = 'stillroom-language';

/** @param {string | null | undefined} tag @returns {Language | undefined} */
const known = (tag) => {
  const [name] = (tag ?? '').toLowerCase().split('-');
  return name !== undefined && name in LANGUAGES ? /** @type {Language} */ (name) : undefined;
};

/** The language that was chosen on this device, if one was. */
export const chosen = () => {
  try {
    return known(localStorage.getItem(KEY));
  } catch {
    // A browser that allows no storage.
    return undefined;
  }
};

/** @type {Language} */
export const language = chosen() ?? navigator.languages.map(known).find((tag) => tag !== undefined) ?? 'en';

/**
 * Changes to another language, or follows the browser again: the page opens anew in it.
 * @param {Language | ''} tag
 */
export function speak(tag) {
  if (tag === '') localStorage.removeItem(KEY);
  else localStorage.setItem(KEY, tag);
  location.reload();
}

/**
 * The fixed texts of a room.
 * @param {string} room
 * @param {Language} [tag]
 */
const fetchWords = (room, tag = language) =>
  /** @type {Promise<{ words: unknown }>} */ (import(new URL(`words/${tag}/${room}.js`, build).href));

/** What the first view says is asked for at once, not one after the other. */
const first = new Map(['common', 'shelf'].map((room) => [room, fetchWords(room)]));
for (const coming of first.values()) coming.catch(() => {});

/**
 * The fixed texts of a room in the language of the page.
 * @param {string} room
 */
export async function wordsOf(room) {
  return (await (first.get(room) ?? fetchWords(room))).words;
}

/** Says in the language of the page what stands in the page itself, in the first language. */
export async function translatePage() {
  document.documentElement.lang = language;
  if (language === 'en') return;
  const words = /** @type {Record<string, string>} */ (await fetchWords('html').then(({ words }) => words));
  for (const place of document.querySelectorAll('[data-say]'))
    place.textContent = words[place.getAttribute('data-say') ?? ''] ?? place.textContent;
  for (const place of document.querySelectorAll('[data-say-label]'))
    place.setAttribute('aria-label', words[place.getAttribute('data-say-label') ?? ''] ?? '');
}

/**
 * A table of texts for the session.
 * @param {'main' | 'share' | 'whole' | 'swap' | 'names' | 'words'} piece
 * @param {Language} [tag]
 */
export async function tableOf(piece, tag = language) {
  const answer = await fetch(new URL(`texts/${tag}-${piece}.txt`, build));
  if (!answer.ok) throw new Error(`texts/${tag}-${piece}.txt answered ${answer.status}`);
  return answer.text();
}
