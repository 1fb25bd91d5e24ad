// @ts-check

// What is different between two versions of a formula.

import { make } from '../../dom/element.js';
import { words } from './words.js';

/** @typedef {import('../../seam/stillroom.js').ComparisonView} ComparisonView */

/**
 * Draws what is different between two versions.
 * @param {ComparisonView} view
 * @param {string} before
 * @param {string} after
 */
export function drawComparison(view, before, after) {
  const text = words.compare;
  const table = (/** @type {string} */ caption, /** @type {ComparisonView['lines']} */ changes) =>
    changes.length === 0
      ? undefined
      : make(
          'table',
          { class: 'changes' },
          make('caption', {}, caption),
          make(
            'thead',
            {},
            make(
              'tr',
              {},
              make('th', { scope: 'col' }),
              ...[before, after, text.difference].map((head) => make('th', { scope: 'col' }, text.column({ head }))),
            ),
          ),
          make(
            'tbody',
            {},
            ...changes.map((change) =>
              make(
                'tr',
                {},
                make('th', { scope: 'row', dir: 'auto' }, change.name),
                make('td', {}, change.before || '–'),
                make('td', {}, change.after || '–'),
                make('td', { class: 'difference' }, change.difference),
              ),
            ),
          ),
        );
  return make(
    'div',
    { class: 'comparison' },
    make('p', {}, view.summary),
    table(text.lines, view.lines),
    table(text.composition, view.composition),
    view.others.length > 0 ? make('p', {}, text.others) : undefined,
    view.others.length > 0
      ? make('ul', {}, ...view.others.map((other) => make('li', { dir: 'auto' }, other)))
      : undefined,
  );
}
