// @ts-check

// Earlier versions of the open formula, to compare and to take up again.

import { chooser } from '../../dom/choice.js';
import { button, make, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';
import { go } from '../../router.js';
import { drawComparison } from './comparison.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

const text = words.versions;

/** @param {Session} session */
export function createVersions(session) {
  const list = make('ul', { class: 'versions' });
  const none = make('p', { class: 'quiet' }, text.none);
  const compared = make('div', { 'aria-live': 'polite' });
  let open = '';
  const others = chooser({
    label: text.with,
    choices: {},
    onChoice: (other) => {
      const view = other && session.ask((seam) => seam.compareVersion(open, other));
      compared.replaceChildren(...(view ? [drawComparison(view, words.compare.other, words.compare.this)] : []));
    },
  });
  const experiment = button(text.experiment, () => {
    session.send({ do: 'duplicate-formula', formula: open });
    go('formula');
  });
  return {
    root: make(
      'section',
      { class: 'no-print' },
      make('h3', {}, text.title),
      none,
      list,
      others.root,
      compared,
      make('p', { class: 'acts' }, experiment),
    ),
    /** @param {string} formula */
    show(formula) {
      const all = session.ask((seam) => seam.versionsOf(formula)) ?? [];
      const views = all.filter(({ isOther }) => !isOther);
      const theirs = all.filter(({ isOther }) => isOther);
      show(none, views.length === 0);
      compared.replaceChildren();
      open = formula;
      others.select.replaceChildren(
        make('option', { value: '' }, text.choose),
        ...theirs.map((other) => make('option', { value: other.version }, other.text)),
      );
      show(others.root, theirs.length > 0);
      keyed(
        list,
        views,
        ({ version }) => createVersion(session, formula, version, compared),
        ({ version }) => `${formula} ${version}`,
      );
    },
  };
}

/**
 * @param {Session} session
 * @param {string} formula
 * @param {string} version
 * @param {HTMLElement} compared where a comparison is shown
 */
function createVersion(session, formula, version, compared) {
  const about = make('span');
  const compare = () => {
    const view = session.ask((seam) => seam.compareVersion(formula, version));
    if (view) compared.replaceChildren(drawComparison(view, words.compare.before, words.compare.after));
  };
  const restore = () => {
    session.send({ do: 'restore-version', formula, version });
    go('formula');
  };
  const acts = make('span', { class: 'acts' }, button(text.compare, compare), button(text.restore, restore));
  return {
    root: make('li', {}, about, acts),
    /** @param {{ text: string }} view */
    show: (view) => setText(about, view.text),
  };
}
