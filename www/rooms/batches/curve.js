// @ts-check

// A curve that dies away, with what was read.

import { draw, make, show } from '../../dom/element.js';

/** @typedef {import('../../seam/stillroom.js').CurveView} CurveView */

export function createCurve() {
  const root = make('div', { class: 'curve', hidden: true });
  return {
    root,
    /** @param {CurveView | undefined} view */
    show(view) {
      show(root, view !== undefined);
      if (!view) return;
      const band = view.band ?? [0, 0];
      const inside = draw(
        'svg',
        { viewBox: '0 0 100 100', preserveAspectRatio: 'none', width: '100%', height: '100%' },
        draw('polygon', { class: 'band', points: `${band[0]},0 ${band[1]},0 ${band[1]},100 ${band[0]},100` }),
        draw('line', { class: 'level', x1: 0, x2: 100, y1: view.level, y2: view.level }),
        draw('polyline', { class: 'line', points: view.line.map(([x, y]) => `${x},${y}`).join(' ') }),
      );
      /** @param {string} x @param {string} y @param {string} anchor @param {string} words */
      const label = (x, y, anchor, words) => {
        const element = draw('text', { x, y, 'text-anchor': anchor });
        element.textContent = words;
        return element;
      };
      root.replaceChildren(
        draw(
          'svg',
          { class: 'curve-picture', role: 'img', 'aria-label': view.description },
          inside,
          ...view.points.map(([x, y]) => draw('circle', { class: 'read', cx: `${x}%`, cy: `${y}%`, r: 5 })),
          label('100%', `${view.level}%`, 'end', view.levelLabel),
          ...view.up.map((tick) => label('0%', `${tick.at}%`, 'start', tick.label)),
        ),
        make('div', { class: 'curve-across' }, ...view.across.map((tick) => make('span', {}, tick.label))),
      );
    },
  };
}
