// @ts-check

// Tables of the maker’s own materials, read and written.

import { button, make } from '../../dom/element.js';
import { saveFile } from '../../dom/save.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

/** @param {Session} session */
export function createTables(session) {
  const report = make('div', { class: 'report', role: 'status' });
  const input = make('input', { type: 'file', accept: '.csv,.tsv,text/csv', hidden: true, onchange: () => readFile() });

  async function readFile() {
    const file = input.files?.[0];
    input.value = '';
    if (!file) return;
    const view = session.readTable(new Uint8Array(await file.arrayBuffer()));
    if (!view) return;
    report.replaceChildren(
      make('p', { class: view.ready ? 'finding note' : 'finding caution' }, view.summary),
      make('ul', { class: 'table-problems' }, ...view.problems.map((problem) => make('li', {}, problem))),
    );
    if (view.ready) {
      report.append(
        button(
          text.takeIn,
          () => {
            session.send({ do: 'import-table' });
            report.replaceChildren();
          },
          { class: 'main-act' },
        ),
      );
    }
  }

  const save = () => saveFile(text.tableName, [session.writeTable()], 'text/csv;charset=utf-8');

  return make(
    'details',
    { class: 'scales tables' },
    make('summary', {}, text.table),
    make('p', { class: 'quiet' }, text.tableHelp),
    make(
      'div',
      { class: 'acts' },
      button(text.readTable, () => input.click()),
      button(text.writeTable, save),
    ),
    input,
    report,
  );
}
