// @ts-check

// The jar as large as it gets: glass with graduations, layers, and leaders that lead each layer to its name and amount.

import { draw, make, setText } from '../../dom/element.js';
import { pin } from '../../dom/icon.js';
import { keyed } from '../../dom/list.js';
import { words as common } from '../../dom/words.js';
import { showLayers } from './vessel.js';

/** @typedef {import('../../seam/stillroom.js').LayerView} LayerView */

/** How much of the glass stays empty over what is in it, as a share of that. */
const EMPTY = 0.075;

/** @param {(layer: string) => void} onLayer */
export function createGlass(onLayer) {
  const inside = draw('svg', { viewBox: `0 ${-EMPTY} 1 ${1 + EMPTY}`, preserveAspectRatio: 'none' });
  const leaders = draw('svg', { viewBox: '0 0 1 1', preserveAspectRatio: 'none' });
  const graduations = draw(
    'svg',
    { viewBox: '0 0 10 10', preserveAspectRatio: 'none', class: 'graduations' },
    draw('path', { d: 'M10 1H9M10 2H9M10 3H9M10 4H9M10 5H8M10 6H9M10 7H9M10 8H9M10 9H9' }),
  );
  const glass = make('div', { class: 'glass', role: 'img' }, inside, graduations);
  const legend = make('ol', { class: 'legend' });
  let chosen = '';
  return {
    root: make(
      'div',
      { class: 'vessel' },
      make('div', { class: 'lid' }),
      glass,
      make('div', { class: 'leaders', 'aria-hidden': 'true' }, leaders),
      legend,
    ),
    /**
     * @param {LayerView[]} layers
     * @param {string} description
     * @param {string} now the layer that was chosen
     * @param {Map<string, string>} worst how serious the worst is that was found of a layer
     */
    show(layers, description, now, worst) {
      chosen = now;
      glass.setAttribute('aria-label', description);
      showLayers(inside, layers, onLayer);
      const shown = layers.map((view, at) => ({
        view,
        isChosen: view.layer === chosen,
        worst: worst.get(view.layer) ?? '',
        from: (view.top + view.height / 2 + EMPTY) / (1 + EMPTY),
        to: (at + 0.5) / layers.length,
      }));
      keyed(
        leaders,
        shown,
        () => {
          const root = draw('path');
          return {
            root,
            show({ from, to, isChosen }) {
              root.setAttribute('d', `M0 ${from}H.18L.82 ${to}H1`);
              root.toggleAttribute('data-on', isChosen);
            },
          };
        },
        ({ view }) => view.layer,
      );
      keyed(
        legend,
        shown,
        ({ view }) => createName(view.layer, onLayer),
        ({ view }) => view.layer,
      );
    },
  };
}

/**
 * @param {string} layer
 * @param {(layer: string) => void} onLayer
 */
function createName(layer, onLayer) {
  const label = make('span', { class: 'legend-name' });
  const graded = make('span');
  const percent = make('b', { class: 'number' });
  const entry = make(
    'button',
    { type: 'button', 'aria-pressed': 'false', onclick: () => onLayer(layer) },
    make('span', { class: 'bead', 'data-layer': layer }),
    label,
    graded,
    percent,
    make('small', {}, '\u00a0%'),
  );
  let grade = '';
  return {
    root: make('li', {}, entry),
    /** @param {{ view: LayerView, isChosen: boolean, worst: string }} shown */
    show({ view, isChosen, worst }) {
      setText(label, view.label);
      setText(percent, view.percent, true);
      entry.setAttribute('aria-pressed', String(isChosen));
      if (grade === worst) return;
      grade = worst;
      const word = common.grades[/** @type {keyof typeof common.grades} */ (worst)];
      graded.replaceChildren(...(worst ? [pin(worst), make('span', { class: 'unseen' }, ` ${word} `)] : []));
    },
  };
}
