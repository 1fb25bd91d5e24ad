// @ts-check

// What stays at the foot of a formula: how large the batch is, and begin.

import { button, discloses, make, setText } from '../../dom/element.js';
import { pin } from '../../dom/icon.js';
import { words as common } from '../../dom/words.js';
import { go } from '../../router.js';
import { beginWeighing } from '../batches/begin.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').BatchView} BatchView */

/** @param {Session} session */
export function createBar(session) {
  /** @type {BatchView | undefined} */
  let batch;
  const size = make('button', { type: 'button', class: 'size-open' });
  const way = (/** @type {BatchView['way']} */ chosen) => {
    if (batch?.way !== chosen) session.send({ do: 'set-batch-way', way: chosen });
  };
  const chips = Object.values(text.sizes).map((mass) =>
    button(mass, () => {
      way('mass');
      session.send({ do: 'set-batch-mass', text: mass });
    }),
  );
  const others = /** @type {const} */ (['containers', 'stock']).map((chosen) =>
    button(text.ways[chosen], () => {
      way(chosen);
      go('bench');
    }),
  );
  const sizes = make('div', { class: 'sizes', role: 'group', 'aria-label': text.size }, ...chips, ...others);
  discloses(size, sizes, () => {});
  const label = make('span', {}, common.begin);
  const act = make(
    'button',
    { type: 'button', class: 'main-act begin', onclick: () => void beginWeighing(session) },
    label,
  );
  return {
    root: make('div', { class: 'bar' }, size, sizes, act),
    /** @param {BatchView} view */
    show(view) {
      batch = view;
      setText(size, view.batch || text.size);
      for (const chip of chips)
        chip.setAttribute('aria-pressed', String(view.way === 'mass' && view.batch === chip.textContent));
      act.disabled = !view.hasSheet;
    },
    /** @param {string} worst how serious the worst finding is */
    mark(worst) {
      act.replaceChildren(label);
      if (worst !== 'stop' && worst !== 'caution') return;
      act.append(' ', pin(worst), make('span', { class: 'unseen' }, ` ${common.grades[worst]}`));
    },
  };
}
