// @ts-check

// What is needed of each material and what of it has to be bought. Each opens to its price, which is the one of the stores.

import { button, make, setText, show } from '../../dom/element.js';
import { Field } from '../../dom/field.js';
import { keyed, texts } from '../../dom/list.js';
import { saveFile } from '../../dom/save.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').CostsView} CostsView */
/** @typedef {import('../../seam/stillroom.js').CostBuyView} CostBuyView */
/** @typedef {'price' | 'currency' | 'pack' | 'shipping' | 'stock'} Noted */

/** What is noted of a material here. @type {Noted[]} */
const noted = ['price', 'currency', 'pack', 'shipping', 'stock'];

/**
 * @param {Session} session
 * @param {HTMLElement} fields how often the batch is counted
 */
export function createBuying(session, fields) {
  const about = make('p', { class: 'cost-sum', role: 'status' });
  const rows = make('div', { class: 'cost-buy' });
  const pieces = make('ul', { class: 'cost-lines', 'aria-label': text.buyContainers });
  const copied = make('span', { class: 'quiet', role: 'status' });
  const list = make('pre', { class: 'cost-list', tabindex: '0', 'aria-label': text.buy });
  let table = '';
  const copy = button(text.copy, async () => {
    try {
      await navigator.clipboard.writeText(list.textContent ?? '');
      setText(copied, text.copied);
    } catch {
      getSelection()?.selectAllChildren(list);
      setText(copied, text.notCopied);
    }
  });
  const save = button(text.saveList, () => saveFile(text.listName, [table], 'text/csv;charset=utf-8'));
  const acts = make('p', { class: 'acts' }, copy, ' ', save, ' ', copied);
  return {
    root: make('div', {}, fields, about, rows, pieces, list, acts),
    /** @param {CostsView} view */
    show(view) {
      setText(about, view.buyAbout);
      keyed(
        rows,
        view.buy,
        (first) => createRow(session, first.material),
        ({ material }) => material,
      );
      keyed(pieces, view.buyContainers, createPieces);
      show(pieces, view.buyContainers.length > 0);
      if (list.textContent !== view.buyText) setText(copied, '');
      setText(list, view.buyText);
      table = view.buyTable;
      show(list, view.buyText !== '');
      show(acts, view.buyText !== '');
    },
  };
}

/** Containers to buy of a kind. */
function createPieces() {
  const name = make('span', { class: 'cost-name' });
  const about = make('small');
  const cost = make('b', { class: 'number' });
  return {
    root: make('li', {}, name, cost, about),
    /** @param {import('../../seam/stillroom.js').CostPiecesView} view */
    show(view) {
      setText(name, view.name);
      setText(about, view.about);
      setText(cost, view.cost, true);
    },
  };
}

/** @param {Session} session @param {string} material */
function createRow(session, material) {
  const name = make('span', { class: 'cost-name' });
  const about = make('small');
  const packs = make('small');
  const cost = make('b', { class: 'number' });
  const remarks = make('div');
  const fields = noted.map(
    (field) =>
      new Field({
        field: `holding.${field}`,
        label: text.noted[field],
        keyboard: field === 'currency' ? 'text' : 'decimal',
        onText: (typed) => void session.send({ do: 'set-holding', material, field, text: typed }),
      }),
  );
  const root = make(
    'details',
    { 'data-material': material },
    make('summary', {}, make('span', { class: 'cost-what' }, name, cost, about, packs)),
    make('div', { class: 'grid' }, ...fields.map((each) => each.root)),
    remarks,
  );
  return {
    root,
    /** @param {CostBuyView} view */
    show(view) {
      root.classList.toggle('lacking', view.lacking);
      setText(name, view.name);
      setText(about, view.about);
      setText(packs, view.packs);
      setText(cost, view.cost, true);
      noted.forEach((field, at) => fields[at]?.show(view.holding[field]));
      texts(remarks, 'p', view.holding.remarks, { class: 'quiet' });
    },
    forget() {
      for (const each of fields) each.forget();
    },
  };
}
