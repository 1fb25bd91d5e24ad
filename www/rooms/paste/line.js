// @ts-check

// A line of a recipe: what was written, what it means, how much; and the question where somebody has to say it.

import { button, freshId, make, say, setText, show } from '../../dom/element.js';
import { icon } from '../../dom/icon.js';
import { askForMaterial } from '../materials/picker.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').RecipeLineView} LineView */
/** @typedef {(line: number, material: string) => void} Choose */

/** @param {Session} session @param {LineView} view @param {Choose} choose */
function search(session, view, choose) {
  askForMaterial(session, {
    heading: words.chooseFor({ name: view.written }),
    onTaken: (material) => choose(view.key, material),
  });
}

function createWritten() {
  const bead = make('span', { class: 'recipe-bead', 'aria-hidden': 'true' });
  const raw = make('span', { class: 'recipe-raw', dir: 'auto' });
  const name = make('span', { class: 'recipe-material', dir: 'auto' });
  const percent = make('span', { class: 'recipe-percent number' });
  const remark = make('small', { class: 'recipe-remark', hidden: true });
  return {
    parts: [raw, bead, name, percent, remark],
    /** @param {LineView} view @param {string} called */
    show(view, called) {
      setText(raw, view.raw);
      setText(name, called);
      setText(percent, view.percent ? `${view.percent}\u00a0%` : '–');
      say(remark, view.remark);
      bead.dataset.layer = view.layer;
    },
  };
}

/**
 * A line that is plain; what it was taken for can be changed.
 * @param {Session} session
 * @param {Choose} choose
 */
export function createLine(session, choose) {
  const written = createWritten();
  /** @type {LineView | undefined} */
  let now;
  const change = make(
    'button',
    { type: 'button', class: 'icon-act recipe-change', onclick: () => now && search(session, now, choose) },
    icon('more'),
  );
  return {
    root: make('li', { class: 'recipe-line' }, ...written.parts, change),
    /** @param {LineView} view */
    show(view) {
      now = view;
      written.show(view, view.name || view.written);
      change.setAttribute('aria-label', words.change({ name: view.name || view.written }));
    },
  };
}

/**
 * A line of which somebody has to say what it means.
 * @param {Session} session
 * @param {Choose} choose
 */
export function createQuestion(session, choose) {
  const written = createWritten();
  const legend = make('legend', { class: 'unseen' });
  const options = make('div', { class: 'recipe-choices' });
  const group = freshId();
  /** @type {LineView | undefined} */
  let now;
  /** @param {string} value @param {string} label */
  const option = (value, label) =>
    button(label, () => now && choose(now.key, value), { class: 'recipe-choice', 'data-choice': value, name: group });
  return {
    root: make('li', { class: 'recipe-line' }, ...written.parts, make('fieldset', {}, legend, options)),
    /** @param {LineView} view */
    show(view) {
      const same = now && now.choices.length === view.choices.length && now.written === view.written;
      now = view;
      written.show(view, view.written);
      setText(legend, words.chooseFor({ name: view.written }));
      show(legend, true);
      if (same) return;
      options.replaceChildren(
        ...view.choices.map(({ id, name }) => option(id, name)),
        option('own', words.own),
        button(words.search, () => now && search(session, now, choose), { class: 'recipe-choice plain' }),
      );
    },
  };
}
