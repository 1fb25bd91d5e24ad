// @ts-check

// Before and after: lines, layers, findings, cost, what to expect on skin.

import { button, draw, make, say, setText, show } from '../../dom/element.js';
import { remarks } from '../../dom/figures.js';
import { keyed, texts } from '../../dom/list.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').SwapVersionView} SwapVersionView */
/** @typedef {import('../../seam/stillroom.js').SwapPairView} SwapPairView */
/** @typedef {import('../../seam/stillroom.js').BarView} BarView */

/** Length and height of a bar, in units of its drawing. */
const LENGTH = 1000;
const HEIGHT = 60;

/** @param {Session} session */
export function createCompared(session) {
  let summary = '';
  const said = make('p', { class: 'swap-summary', role: 'status' });
  const before = createBar();
  const after = createBar();
  const lines = createPairs(text.material, true);
  const layers = createPairs(text.layer, false);
  const gone = createRemarks(text.goneFindings);
  const found = createRemarks(text.newFindings);
  const noFindings = make('p', { class: 'quiet' }, text.noFindings);
  const cost = make('p');
  const expect = make('ul', { class: 'remarks' });
  const expected = make(
    'section',
    {},
    make('h4', {}, text.expect),
    expect,
    make('p', { class: 'quiet' }, text.practice),
  );
  const missed = make('ul', { class: 'remarks' });
  const misses = make('section', {}, make('h4', {}, text.missed), missed);
  const take = button('', () => session.send({ do: 'take-swap', text: summary }), { class: 'main-act' });
  const root = make(
    'section',
    { class: 'swap-compared' },
    make('h3', {}, text.compare),
    said,
    make('div', { class: 'swap-bar' }, make('small', {}, text.before), before.root),
    make('div', { class: 'swap-bar' }, make('small', {}, text.after), after.root),
    lines.root,
    layers.root,
    make('h4', {}, text.findings),
    gone.root,
    found.root,
    noFindings,
    misses,
    expected,
    cost,
    take,
  );
  return {
    root,
    /** @param {SwapVersionView | undefined} view */
    show(view) {
      show(root, view !== undefined);
      if (!view) return;
      summary = view.summary;
      setText(said, view.summary);
      before.show(view.before);
      after.show(view.after);
      lines.show(view.lines);
      layers.show(view.layers);
      gone.show(view.gone);
      found.show(view.new);
      show(noFindings, view.gone.length + view.new.length === 0);
      say(cost, view.cost);
      texts(expect, 'li', view.expect);
      show(expected, view.expect.length > 0);
      texts(missed, 'li', view.missed);
      show(misses, view.missed.length > 0);
      say(take, view.label);
    },
  };
}

/** @param {string} title */
function createRemarks(title) {
  const list = make('div');
  const root = make('div', {}, make('p', { class: 'quiet' }, title), list);
  return {
    root,
    /** @param {SwapVersionView['new']} views */
    show(views) {
      show(root, views.length > 0);
      remarks(list, views);
    },
  };
}

function createBar() {
  const root = draw('svg', {
    class: 'swap-layers',
    viewBox: `0 0 ${LENGTH} ${HEIGHT}`,
    preserveAspectRatio: 'none',
    role: 'img',
  });
  return {
    root,
    /** @param {BarView} view */
    show(view) {
      root.setAttribute('aria-label', view.description);
      root.replaceChildren(
        ...view.bands.map(({ layer, from, length }) =>
          draw('rect', {
            'data-layer': layer,
            x: from * LENGTH,
            y: 0,
            width: length * LENGTH,
            height: HEIGHT,
          }),
        ),
      );
    },
  };
}

/** @param {string} title @param {boolean} weighed */
function createPairs(title, weighed) {
  const body = make('tbody');
  const heads = [text.before, text.after, ...(weighed ? [text.weigh] : [])];
  return {
    root: make(
      'table',
      { class: 'swap-pairs' },
      make(
        'thead',
        {},
        make(
          'tr',
          {},
          make('th', { scope: 'col' }, title),
          ...heads.map((head) => make('th', { scope: 'col', class: 'number' }, head)),
        ),
      ),
      body,
    ),
    /** @param {SwapPairView[]} views */
    show: (views) => keyed(body, views, () => createPair(weighed)),
  };
}

/** @param {boolean} weighed */
function createPair(weighed) {
  const name = make('span');
  const before = make('td', { class: 'number' });
  const after = make('td', { class: 'number' });
  const mass = make('td', { class: 'number' });
  const bead = make('span', { class: 'swap-bead', 'aria-hidden': 'true' });
  const root = make('tr', {}, make('th', { scope: 'row' }, bead, name), before, after, weighed ? mass : undefined);
  return {
    root,
    /** @param {SwapPairView} view */
    show(view) {
      root.dataset.fate = view.fate;
      show(bead, view.layer !== undefined);
      if (view.layer) bead.dataset.layer = view.layer;
      setText(name, view.name);
      setText(before, view.before || '–');
      setText(after, view.after || '–');
      setText(mass, view.mass || '–');
    },
  };
}
