// @ts-check

// What a batch of the open formula costs, what has to be bought for it, and the containers it fills.

import { button, make, say, setText, show } from '../../dom/element.js';
import { createDescribedFields } from '../../dom/described.js';
import { createFigures, remarks } from '../../dom/figures.js';
import { keyed } from '../../dom/list.js';
import { createBuying } from './buying.js';
import { createKinds } from './kinds.js';
import { createLines } from './lines.js';
import { createPrices } from './prices.js';
import { explained } from '../terms/explained.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').CostsView} CostsView */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const send = (/** @type {string} */ field, /** @type {string} */ typed) =>
    void session.send({ do: 'set-cost-field', field, text: typed });
  const fieldsOf = () => createDescribedFields(send, 'cost-fields');
  const groups = { batch: fieldsOf(), container: fieldsOf(), work: fieldsOf(), buy: fieldsOf() };
  const problem = make('p', { class: 'finding caution', hidden: true });
  const name = make('p', { class: 'print-title' });
  const amount = make('b', { class: 'number' });
  const of = make('small');
  const plate = make('p', { class: 'plate cost-plate' }, amount, ' ', of);
  const about = make('p', { class: 'quiet' });
  const sums = createFigures();
  const said = make('div');
  const lines = createLines();
  const filling = createFigures();
  const misfits = make('div', { role: 'status' });
  const kinds = createKinds(session, send);
  const sizes = createSizes();
  const buying = createBuying(session, groups.buy.root);
  const part = (/** @type {string} */ title, /** @type {Element[]} */ ...parts) =>
    make('section', { class: 'cost-part' }, make('h3', {}, title), ...parts);
  /** What is filled in is of no use on paper. @param {Element} element */
  const onScreen = (element) => {
    element.classList.add('cost-on-screen');
    return element;
  };
  const print = button(text.print, () => globalThis.print());
  const body = make(
    'div',
    { class: 'cost-desk', hidden: true },
    make(
      'div',
      {},
      make('section', { class: 'cost-part' }, plate, about),
      onScreen(part(text.batch, groups.batch.root)),
      part(text.lines, lines.root, said),
      part(text.sums, sums.root),
    ),
    make(
      'div',
      {},
      part(text.containers, groups.container.root, kinds.root, misfits, kinds.said, filling.root, sizes.root),
      onScreen(part(text.work, make('p', { class: 'quiet' }, text.workHelp), groups.work.root)),
    ),
    make('div', { class: 'cost-wide' }, part(text.buy, buying.root), createPrices(session)),
  );
  place.setAttribute('aria-labelledby', 'costs-title');
  place.append(
    make('h2', { id: 'costs-title' }, text.title),
    name,
    onScreen(make('p', { class: 'quiet' }, text.intro)),
    make('p', { class: 'acts' }, make('a', { href: '#formula' }, text.toFormula), ' ', print),
    problem,
    body,
    onScreen(explained('wastage', 'loss', 'headspace', 'margin', 'lot')),
  );

  session.listen(({ costs }) => {
    if (costs) showCosts(costs);
  });

  /** @param {CostsView} view */
  function showCosts(view) {
    say(problem, view.problem);
    show(body, view.problem === '');
    show(print, view.problem === '');
    if (view.problem !== '') return;
    for (const [name, group] of Object.entries(groups)) group.show(view.fields.filter((each) => each.group === name));
    setText(name, view.name);
    setText(amount, view.headline, true);
    setText(of, view.headlineAbout);
    show(plate, view.headline !== '');
    setText(about, view.about);
    sums.show(view.figures);
    lines.show(view.lines);
    remarks(said, view.said);
    filling.show(view.filling);
    remarks(misfits, view.misfits);
    kinds.show(view);
    sizes.show(view.sizes);
    buying.show(view);
  }

  // They are worked out only while somebody looks at them.
  return {
    enter: () => void session.send({ do: 'look-at-costs', looking: true }),
    leave: () => void session.send({ do: 'look-at-costs', looking: false }),
  };
}

/** How many of each usual size could be filled. */
function createSizes() {
  const rows = make('ul', { class: 'cost-sizes' });
  const root = make('details', { class: 'scales' }, make('summary', {}, text.sizes), rows);
  return {
    root,
    /** @param {CostsView['sizes']} views */
    show(views) {
      show(root, views.length > 0);
      keyed(rows, views, () => {
        const size = make('span');
        const range = make('small');
        const count = make('span', { class: 'number' });
        return {
          root: make('li', {}, size, count, range),
          show(each) {
            setText(size, each.size);
            setText(count, each.count);
            setText(range, each.range);
          },
        };
      });
    },
  };
}
