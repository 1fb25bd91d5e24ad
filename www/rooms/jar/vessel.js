// @ts-check

// A small jar as a drawing, whose layers are the composition. Heights come ready from the session.

import { draw, freshId } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';

/** @typedef {import('../../seam/stillroom.js').LayerView} LayerView */

/** Outline of the glass, in the units of the drawing. */
const GLASS = 'M5 20a5 5 0 0 1 5-5h28a5 5 0 0 1 5 5v33a8 8 0 0 1-8 8H13a8 8 0 0 1-8-8z';

/**
 * Shows layers in a drawing that is a unit square.
 * @param {Element} inside
 * @param {LayerView[]} layers
 * @param {(layer: string) => void} [onLayer]
 */
export function showLayers(inside, layers, onLayer) {
  keyed(
    inside,
    layers,
    ({ layer }) => {
      const rect = draw('rect', { x: 0, width: 1, class: 'layer', 'data-layer': layer });
      if (onLayer) rect.addEventListener('click', () => onLayer(layer));
      return {
        root: rect,
        show({ top, height }) {
          // As properties, not attributes: a style sheet may then let a layer glide to its new place.
          rect.style.setProperty('y', `${top}px`);
          rect.style.setProperty('height', `${height}px`);
        },
      };
    },
    ({ layer }) => layer,
  );
}

/** Draws a small jar. */
export function vessel() {
  const clip = freshId();
  const inside = draw('svg', { x: 5, y: 18, width: 38, height: 43, viewBox: '0 0 1 1', preserveAspectRatio: 'none' });
  return {
    root: draw(
      'svg',
      { viewBox: '0 0 48 62', class: 'minijar', 'aria-hidden': 'true' },
      draw('clipPath', { id: clip }, draw('path', { d: GLASS })),
      draw('path', { d: GLASS, class: 'inside' }),
      draw('g', { 'clip-path': `url(#${clip})` }, inside),
      draw('path', { d: GLASS, class: 'rim' }),
      draw('rect', { class: 'rim cap', x: 8, y: 4, width: 32, height: 9, rx: 2.5 }),
    ),
    /** @param {LayerView[]} layers */
    show: (layers) => showLayers(inside, layers),
  };
}
