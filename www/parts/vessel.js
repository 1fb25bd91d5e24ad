// @ts-check

// The jar as a drawing: a vessel whose layers are the composition. Heights come ready from the session.

import { draw, freshId } from '../element.js';

/** @typedef {import('../seam/stillroom.js').LayerView} LayerView */

/** Outline of the glass, in the units of the drawing. */
const GLASS = 'M22 40 q-12 6 -12 24 v166 q0 18 18 18 h94 q18 0 18 -18 v-166 q0 -18 -12 -24z';

/**
 * Draws a jar.
 * @param {{ onLayer?: (layer: string) => void }} [options] a jar with `onLayer` can be tapped
 */
export function vessel({ onLayer } = {}) {
  const clip = freshId();
  // The inside is a unit square: the session's shares are its coordinates.
  const inside = draw('svg', { x: 10, y: 40, width: 130, height: 208, viewBox: '0 0 1 1', preserveAspectRatio: 'none' });
  const root = draw(
    'svg',
    { viewBox: '0 0 150 254', class: 'vessel', role: 'img' },
    draw('defs', {}, draw('clipPath', { id: clip }, draw('path', { d: GLASS }))),
    draw('path', { d: GLASS, class: 'glass-back' }),
    draw('g', { 'clip-path': `url(#${clip})` }, inside, draw('path', { d: 'M24 62 q-5 40 -4 150', class: 'glint' })),
    draw('path', { d: GLASS, class: 'glass' }),
    draw('path', { d: 'M20 14 h110 q4 0 4 4 v18 q0 4 -4 4 h-110 q-4 0 -4 -4 v-18 q0 -4 4 -4z', class: 'lid' }),
    draw('path', { d: 'M30 16v22M44 16v22M58 16v22M72 16v22M86 16v22M100 16v22M114 16v22', class: 'lid-ribs' }),
  );
  /** @type {Map<string, SVGRectElement>} */
  const drawn = new Map();
  let chosen = '';

  return {
    root,
    /**
     * @param {LayerView[]} layers
     * @param {string} description
     */
    show(layers, description) {
      root.setAttribute('aria-label', description);
      const names = new Set(layers.map((layer) => layer.layer));
      for (const [name, rect] of drawn) {
        if (!names.has(/** @type {any} */ (name))) {
          rect.remove();
          drawn.delete(name);
        }
      }
      for (const layer of layers) {
        let rect = drawn.get(layer.layer);
        if (!rect) {
          rect = draw('rect', { x: 0, width: 1, class: 'layer', 'data-layer': layer.layer });
          if (onLayer) rect.addEventListener('click', () => onLayer(layer.layer));
          drawn.set(layer.layer, rect);
          inside.append(rect);
        }
        // As properties, not attributes: a style sheet may then let a layer glide to its new place.
        rect.style.setProperty('y', `${layer.top}px`);
        rect.style.setProperty('height', `${layer.height}px`);
      }
    },
    /** @param {string} layer */
    choose(layer) {
      drawn.get(chosen)?.classList.remove('chosen');
      chosen = layer;
      drawn.get(chosen)?.classList.add('chosen');
    },
  };
}
