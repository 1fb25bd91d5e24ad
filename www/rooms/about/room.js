// @ts-check

// About the numbers: methods, equations, where they end, and what they rest on.

import { make } from '../../dom/element.js';
import { words } from './words.js';

/** @typedef {keyof typeof words.heads} Topic */

/**
 * @param {HTMLElement} place
 * @param {import('../../session.js').Session} session
 */
export function furnish(place, session) {
  const sources = session.sources();
  place.setAttribute('aria-labelledby', 'about-title');
  place.append(
    make('h2', { id: 'about-title' }, words.title),
    make(
      'div',
      { class: 'about-numbers' },
      make('p', {}, words.intro),
      ...topics.map(createTopic),
      fold(words.trust, make('p', {}, words.trustAbout)),
      fold(
        words.sources({ count: sources.length }),
        make(
          'ol',
          { class: 'sources' },
          ...sources.map(({ citation, about }) => make('li', {}, citation, make('small', {}, about))),
        ),
      ),
      make('p', { class: 'quiet' }, words.caution),
    ),
  );
}

const topics = /** @type {Topic[]} */ (Object.keys(words.heads));

/** @param {Topic} topic */
function createTopic(topic) {
  const equation = /** @type {Partial<Record<Topic, string>>} */ (words.equations)[topic];
  // What is worked out in steps has a line for each.
  const lines = equation?.split(';').map((line) => make('p', { class: 'equation', translate: 'no' }, line.trim()));
  return fold(
    words.heads[topic],
    make('p', {}, words.methods[topic]),
    ...(lines ?? []),
    make('h4', {}, words.limit),
    make('p', {}, words.limits[topic]),
    make('h4', {}, words.rests),
    make('p', { class: 'quiet' }, words.sourcesOf[topic]),
  );
}

/** @param {string} title @param {...Node} inside */
function fold(title, ...inside) {
  return make('details', {}, make('summary', {}, make('h3', {}, title)), ...inside);
}
