// @ts-check

// The columns of a pasted table: what each was taken for, to be set right, and what of it is left out.

import { chooser } from '../../dom/choice.js';
import { make, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';
import { words } from './words.js';

/** @typedef {import('../../seam/stillroom.js').RecipeColumnView} ColumnView */

/** @param {(place: number, holds: string) => void} onChoice */
export function createColumns(onChoice) {
  const list = make('ul', { class: 'recipe-columns' });
  const leftOut = make('ul', { class: 'recipe-left-out' });
  const root = make(
    'div',
    { hidden: true },
    leftOut,
    make('details', { class: 'recipe-table' }, make('summary', {}, words.columns), list),
  );
  return {
    root,
    /** @param {readonly ColumnView[]} columns @param {readonly string[]} sentences */
    show(columns, sentences) {
      show(root, columns.length > 0);
      keyed(leftOut, sentences, createSentence);
      keyed(
        list,
        columns,
        (column) => createColumn(column, onChoice),
        ({ place, name }) => `${place} ${name}`,
      );
    },
  };
}

/** @param {ColumnView} column @param {(place: number, holds: string) => void} onChoice */
function createColumn({ place, name }, onChoice) {
  const choice = chooser({ label: name, choices: words.holds, onChoice: (holds) => onChoice(place, holds) });
  const first = make('small', { dir: 'auto' });
  return {
    root: make('li', {}, choice.root, first),
    /** @param {ColumnView} column */
    show({ holds, sample }) {
      choice.show(holds);
      setText(first, sample ? words.first({ name: sample }) : '');
    },
  };
}

function createSentence() {
  const root = make('li', { class: 'quiet' });
  return {
    root,
    /** @param {string} sentence */
    show: (sentence) => setText(root, sentence),
  };
}
