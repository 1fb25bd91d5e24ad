// @ts-check

// Labelling an extract, and putting it to use.

import { freshId, make, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';
import { createOffer } from './offer.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('./form.js').Form} Form */
/** @typedef {import('../../seam/stillroom.js').ExtractView} ExtractView */

/**
 * @param {Session} session
 * @param {Form} form
 */
export function createUse(session, form) {
  const dateId = freshId();
  const date = make('input', {
    id: dateId,
    type: 'date',
    class: 'date',
    onchange: () => form.send('made-on', date.value),
  });
  const dateField = make('div', { class: 'field' }, make('label', { for: dateId }, text.madeOn), date);
  form.add('made-on', {
    root: dateField,
    show: (value) => {
      if (date.value !== value) date.value = value;
    },
  });
  const shelve = createOffer(session, 'shelve', { class: 'main-act' });
  const use = createOffer(session, 'use');
  const percent = form.field('use-percent', text.usePercent);
  const rows = make('tbody', {});
  const about = make('p', { class: 'quiet' });
  const table = make(
    'table',
    { class: 'compared' },
    make(
      'thead',
      {},
      make('tr', {}, make('th', {}, text.constituent), make('th', {}, text.with), make('th', {}, text.without)),
    ),
    rows,
  );
  const inner = make(
    'div',
    {},
    make('h3', {}, text.use),
    make('div', { class: 'grid' }, dateField, form.field('lot', text.lot, { keyboard: 'text' }).root),
    make('div', { class: 'row' }, percent.root, use.root),
    make('div', { class: 'grid' }, form.field('note', text.note, { keyboard: 'text', class: 'wide' }).root),
    shelve.root,
    about,
    table,
  );
  return {
    root: make('section', { class: 'sheet', 'aria-label': text.use }, inner),
    inner,
    /** @param {ExtractView} view */
    show(view) {
      shelve.show(view);
      use.show(view);
      setText(about, view.compared);
      show(table, view.comparison.length > 0);
      keyed(rows, view.comparison, createCompared);
    },
  };
}

/** A constituent with the extract and without it. */
function createCompared() {
  const inci = make('th');
  const without = make('td', { class: 'number' });
  const having = make('td', { class: 'number' });
  return {
    root: make('tr', {}, inci, having, without),
    /** @param {ExtractView['comparison'][number]} row */
    show(row) {
      setText(inci, row.inci);
      setText(having, row.with);
      setText(without, row.without);
    },
  };
}
