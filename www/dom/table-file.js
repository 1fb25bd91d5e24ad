// @ts-check

// A table as a file, in and out: what reading it would change is told before any of it is taken in.

import { button, make } from './element.js';
import { saveFile } from './save.js';

/**
 * What a table holds, or what is wrong with it.
 * @typedef {object} ReadTable
 * @property {string} summary
 * @property {readonly string[]} sentences
 * @property {boolean} sound whether nothing is wrong with it
 * @property {boolean} ready whether it can be taken in
 */

/**
 * @param {{ title: string, help: string, read: string, write: string, takeIn: string, name: string }} words
 * @param {object} acts
 * @param {(bytes: Uint8Array) => ReadTable | undefined} acts.read
 * @param {() => void} acts.takeIn
 * @param {() => string} acts.write
 * @param {string} [kind]
 */
export function createTableFile(words, { read, takeIn, write }, kind = '') {
  const report = make('div', { class: 'report', role: 'status' });
  const input = make('input', { type: 'file', accept: '.csv,.tsv,text/csv', hidden: true, onchange: () => readFile() });

  async function readFile() {
    const file = input.files?.[0];
    input.value = '';
    if (!file) return;
    const view = read(new Uint8Array(await file.arrayBuffer()));
    if (!view) return;
    report.replaceChildren(
      make('p', { class: view.sound ? 'finding note' : 'finding caution' }, view.summary),
      make('ul', { class: 'table-problems' }, ...view.sentences.map((sentence) => make('li', {}, sentence))),
    );
    if (!view.ready) return;
    const take = () => {
      takeIn();
      report.replaceChildren();
    };
    report.append(button(words.takeIn, take, { class: 'main-act' }));
  }

  return make(
    'details',
    { class: `scales ${kind}`.trim() },
    make('summary', {}, words.title),
    make('p', { class: 'quiet' }, words.help),
    make(
      'div',
      { class: 'acts' },
      button(words.read, () => input.click()),
      button(words.write, () => saveFile(words.name, [write()], 'text/csv;charset=utf-8')),
    ),
    input,
    report,
  );
}
