// @ts-check

// Further kinds of containers that a batch goes into: what each is, and how many of it.

import { button, make, setText, show } from '../../dom/element.js';
import { createDescribedFields } from '../../dom/described.js';
import { remarks } from '../../dom/figures.js';
import { keyed } from '../../dom/list.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').CostsView} CostsView */
/** @typedef {import('../../seam/stillroom.js').CostKindView} CostKindView */
/** @typedef {import('../../dom/described.js').Send} Send */

/** @param {Session} session @param {Send} send */
export function createKinds(session, send) {
  const rows = make('div', { class: 'cost-kinds' });
  const add = button(text.addKind, () => void session.send({ do: 'add-container-kind' }));
  const plan = button('', () => void session.send({ do: 'plan-container-kinds' }));
  const said = make('div', { role: 'status' });
  return {
    root: make(
      'section',
      { class: 'cost-on-screen', 'aria-label': text.kinds },
      make('h4', {}, text.kinds),
      make('p', { class: 'quiet' }, text.kindsHelp),
      rows,
      make('p', { class: 'acts' }, add, ' ', plan),
    ),
    said,
    /** @param {CostsView} view */
    show(view) {
      keyed(
        rows,
        view.kinds,
        (first) => createKind(session, send, first.key),
        ({ key }) => key,
      );
      show(add, view.moreKinds);
      setText(plan, view.planKinds);
      show(plan, view.planKinds !== '');
      remarks(said, view.kindsSaid);
    },
  };
}

/** @param {Session} session @param {Send} send @param {string} key */
function createKind(session, send, key) {
  const fields = createDescribedFields(send, 'cost-fields');
  const name = make('legend');
  const remove = button(text.removeKind, () => void session.send({ do: 'remove-container-kind', kind: key }));
  return {
    root: make('fieldset', { 'data-kind': key }, name, fields.root, make('p', { class: 'acts' }, remove)),
    /** @param {CostKindView} view */
    show(view) {
      setText(name, view.name);
      fields.show(view.fields);
    },
  };
}
