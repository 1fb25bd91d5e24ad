// @ts-check

// Where the cost goes: a line each with its amount, its share and a bar. The shares come from the session.

import { draw, make, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';

/** @typedef {import('../../seam/stillroom.js').CostLineView} CostLineView */

export function createLines() {
  const root = make('ul', { class: 'cost-lines' });
  return {
    root,
    /** @param {CostLineView[]} views */
    show: (views) => keyed(root, views, createLine),
  };
}

function createLine() {
  const name = make('span', { class: 'cost-name' });
  const about = make('small');
  const cost = make('b', { class: 'number' });
  const share = make('small', { class: 'number' });
  const part = draw('rect', { height: 1, width: 0 });
  const bar = draw(
    'svg',
    { class: 'cost-bar', viewBox: '0 0 1 1', preserveAspectRatio: 'none', 'aria-hidden': 'true' },
    part,
  );
  const root = make('li', {}, name, cost, about, share);
  root.append(bar);
  return {
    root,
    /** @param {CostLineView} view */
    show(view) {
      root.dataset.layer = view.layer;
      root.classList.toggle('unknown', view.unknown);
      setText(name, view.name);
      setText(about, view.about);
      setText(cost, view.cost, true);
      setText(share, view.share);
      part.setAttribute('width', String(view.fraction));
      show(bar, view.share !== '');
    },
  };
}
