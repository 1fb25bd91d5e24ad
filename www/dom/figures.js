// @ts-check

// Figures, each with its arithmetic and source behind it, and remarks in their tone.

import { make, setText } from './element.js';
import { keyed } from './list.js';

/** @typedef {import('../seam/stillroom.js').FigureView} FigureView */

/** A list of figures. One that was opened stays open for as long as there is one of its name. @param {string} [kind] */
export function createFigures(kind = '') {
  const root = make('div', { class: `figures ${kind}`.trim() });
  return {
    root,
    /** @param {FigureView[]} views */
    show: (views) => keyed(root, views, createFigure, (view) => view.label),
  };
}

function createFigure() {
  const label = make('span');
  const value = make('b', { class: 'number' });
  const range = make('small');
  const how = make('p');
  const source = make('small');
  return {
    root: make('details', { class: 'figure' }, make('summary', {}, label, value, range), how, source),
    /** @param {FigureView} view */
    show(view) {
      setText(label, view.label);
      setText(value, view.value, true);
      setText(range, view.range);
      setText(how, view.how);
      setText(source, view.source);
    },
  };
}

/**
 * Shows remarks, each in its tone.
 * @param {Element} list
 * @param {readonly { tone: string, text: string }[]} views
 */
export function remarks(list, views) {
  keyed(list, views, () => {
    const root = make('p');
    return {
      root,
      show({ tone, text }) {
        root.className = `finding ${tone}`;
        setText(root, text);
      },
    };
  });
}
