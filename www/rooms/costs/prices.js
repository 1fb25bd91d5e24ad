// @ts-check

// Prices of the stores as a table, out and in.

import { button, make } from '../../dom/element.js';
import { saveFile } from '../../dom/save.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

/** @param {Session} session */
export function createPrices(session) {
  const report = make('div', { class: 'report', role: 'status' });
  const input = make('input', { type: 'file', accept: '.csv,.tsv,text/csv', hidden: true, onchange: () => readFile() });

  async function readFile() {
    const file = input.files?.[0];
    input.value = '';
    if (!file) return;
    const content = new Uint8Array(await file.arrayBuffer());
    const view = session.ask((seam) => seam.readPrices(content));
    if (!view) return;
    const list = (/** @type {string[]} */ sentences) =>
      make('ul', { class: 'table-problems' }, ...sentences.map((sentence) => make('li', {}, sentence)));
    report.replaceChildren(
      make('p', { class: view.problems.length > 0 ? 'finding caution' : 'finding note' }, view.summary),
      list(view.problems.length > 0 ? view.problems : view.changes),
    );
    if (view.ready === 0) return;
    const takeIn = () => {
      session.send({ do: 'take-prices' });
      report.replaceChildren();
    };
    report.append(button(text.takeIn, takeIn, { class: 'main-act' }));
  }

  const save = () =>
    saveFile(text.pricesName, [session.ask((seam) => seam.writePrices()) ?? ''], 'text/csv;charset=utf-8');
  return make(
    'details',
    { class: 'scales' },
    make('summary', {}, text.prices),
    make('p', { class: 'quiet' }, text.pricesHelp),
    make(
      'div',
      { class: 'acts' },
      button(text.readPrices, () => input.click()),
      button(text.savePrices, save),
    ),
    input,
    report,
  );
}
