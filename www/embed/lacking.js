// @ts-check

// What a reader of a shared formula has not got: the key beside each line, and what is taken instead.

import { chooser } from '../dom/choice.js';
import { button, make } from '../dom/element.js';

/** @typedef {import('../seam/stillroom.js').ReaderView} ReaderView */
/** @typedef {import('../words.js').EmbedWords} EmbedWords */

/**
 * What the reader lacks: what the author says, what can be taken instead, and what changes.
 * @param {EmbedWords} words
 * @param {ReaderView} view
 * @param {'h2'} heading
 * @param {(line: number, way: string) => void} change
 * @param {(line: number) => void} has
 */
export function drawWithout(words, { without, new: found }, heading, change, has) {
  const items = (/** @type {string[]} */ texts) => texts.map((text) => make('li', { dir: 'auto' }, text));
  const boxes = without.map((each) => {
    const chosen = each.ways.find((way) => way.chosen);
    const choices = Object.fromEntries(each.ways.map(({ key, name }) => [key, name]));
    const ways = chooser({
      label: words.instead,
      choices,
      class: 'sheet-field',
      onChoice: (way) => change(each.line, way),
    });
    ways.show(chosen?.key ?? '');
    return make(
      'section',
      { class: 'sheet-without', 'data-line': each.line },
      make(heading, { dir: 'auto' }, words.without({ name: each.name })),
      each.note ? make('p', { dir: 'auto' }, make('b', {}, words.author), ' ', each.note) : undefined,
      each.ways.length > 0 ? ways.root : undefined,
      chosen ? make('p', { dir: 'auto' }, chosen.takes) : undefined,
      chosen && chosen.differences.length > 0 ? make('ul', {}, ...items(chosen.differences)) : undefined,
      each.problem ? make('p', { class: 'message' }, each.problem) : undefined,
      button(words.has, () => has(each.line), { 'aria-label': words.hasOf({ name: each.name }) }),
    );
  });
  const finds = make(
    'div',
    { class: 'sheet-found' },
    make('p', {}, words.foundThen),
    make('ul', {}, ...items(found.map(({ text }) => text))),
  );
  return found.length > 0 ? [...boxes, finds] : boxes;
}

/**
 * What a reader presses who has not got a line.
 * @param {EmbedWords} words
 * @param {{ id: number, name: string }} line
 * @param {((line: number) => void) | undefined} lack
 */
export function lackKey(words, { id, name }, lack) {
  const named = { class: 'sheet-lack', 'data-lack': id, 'aria-label': words.lackOf({ name }) };
  return lack && button(words.lack, () => lack(id), named);
}
