// @ts-check

// What to expect of an extract.

import { make, show } from '../../dom/element.js';
import { createFigures } from '../../dom/figures.js';
import { words as text } from './words.js';

/** @typedef {import('../../seam/stillroom.js').ExtractView} ExtractView */

export function createExpected() {
  const parts = createFigures();
  const figures = createFigures();
  const root = make(
    'section',
    { class: 'sheet', 'aria-label': text.expected },
    make('h3', {}, text.expected),
    parts.root,
    figures.root,
    make('p', { class: 'quiet' }, text.figuresHelp),
  );
  return {
    root,
    /** @param {ExtractView} view */
    show(view) {
      parts.show(view.parts);
      figures.show(view.figures);
      show(root, view.parts.length > 0);
    },
  };
}
