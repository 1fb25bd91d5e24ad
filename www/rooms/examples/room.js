// @ts-check

// The invented examples, each with what it teaches.

import { make } from '../../dom/element.js';
import { icon } from '../../dom/icon.js';
import { go } from '../../router.js';
import { words } from './words.js';

/** @typedef {import('../../seam/stillroom.js').Example} Example */

/**
 * @param {HTMLElement} place
 * @param {import('../../session.js').Session} session
 */
export function furnish(place, session) {
  /** @param {Example} example */
  const see = (example) => {
    session.send({ do: 'see-example', example });
    go('formula');
  };
  place.setAttribute('aria-labelledby', 'examples-title');
  place.append(
    make('h2', { id: 'examples-title' }, words.title),
    make('p', { class: 'quiet' }, words.about),
    make(
      'ul',
      { class: 'example-list' },
      .../** @type {Example[]} */ (Object.keys(words.names)).map((example) =>
        make(
          'li',
          {},
          make(
            'button',
            { type: 'button', onclick: () => see(example) },
            make('span', {}, make('b', {}, words.names[example]), words.lessons[example]),
            icon('next'),
          ),
        ),
      ),
    ),
  );
}
