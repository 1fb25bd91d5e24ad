// @ts-check

// A picture with several curves: what runs along and up, ranges to be in, lines across, what was measured.

import { draw, make } from '../../dom/element.js';

/** @typedef {import('../../seam/stillroom.js').PlotView} PlotView */

/** Size of a picture, and its margins. */
const WIDE = 400;
const HIGH = 250;
const LEFT = 44;
const RIGHT = 14;
const TOP = 24;
const BOTTOM = 40;
/** Height of a label. */
const ROW = 14;

/** @param {PlotView} plot */
export function drawPlot(plot) {
  /** @param {number} share */
  const x = (share) => LEFT + share * (WIDE - LEFT - RIGHT);
  /** @param {number} share */
  const y = (share) => HIGH - BOTTOM - share * (HIGH - TOP - BOTTOM);
  const picture = draw('svg', {
    class: 'plot',
    viewBox: `0 0 ${WIDE} ${HIGH}`,
    role: 'img',
    'aria-label': plot.description,
  });
  /** @param {number} across @param {number} up @param {string} content @param {Record<string, string>} [more] */
  const write = (across, up, content, more = {}) => {
    const text = draw('text', { x: across, y: up, ...more });
    text.textContent = content;
    picture.append(text);
  };
  for (const band of plot.bands) {
    const from = Math.max(band.from, 0);
    const to = Math.min(band.to, 1);
    const place = band.level
      ? { x: x(0), width: x(1) - x(0), y: y(to), height: y(from) - y(to) }
      : { x: x(from), width: x(to) - x(from), y: y(1), height: y(0) - y(1) };
    picture.append(draw('rect', { class: 'band', ...place }));
  }
  for (const tick of plot.upTicks) {
    picture.append(draw('line', { class: 'grid', x1: x(0), x2: x(1), y1: y(tick.at), y2: y(tick.at) }));
    write(LEFT - 5, y(tick.at) + 4, tick.text, { 'text-anchor': 'end' });
  }
  for (const tick of plot.acrossTicks) {
    picture.append(draw('line', { class: 'grid', x1: x(tick.at), x2: x(tick.at), y1: y(1), y2: y(0) }));
    write(x(tick.at), y(0) + 15, tick.text, { 'text-anchor': 'middle' });
  }
  picture.append(draw('polyline', { class: 'edge', points: `${x(0)},${y(1)} ${x(0)},${y(0)} ${x(1)},${y(0)}` }));
  write(4, 12, plot.up);
  write(x(1), HIGH - 6, plot.across, { 'text-anchor': 'end' });
  plot.curves.forEach((curve, at) => {
    picture.append(
      draw('polyline', {
        class: 'curve',
        'data-curve': at,
        points: curve.points.map(([across, up]) => `${x(across)},${y(up)}`).join(' '),
      }),
    );
  });
  let row = 0;
  for (const line of plot.lines) {
    const ends = line.level
      ? { x1: x(0), x2: x(1), y1: y(line.at), y2: y(line.at) }
      : { x1: x(line.at), x2: x(line.at), y1: y(1), y2: y(0) };
    picture.append(draw('line', { class: 'across', ...ends }));
    if (line.level) write(x(1) - 4, y(line.at) - 4, line.label, { class: 'told', 'text-anchor': 'end' });
    else {
      const after = line.at < 0.6;
      write(x(line.at) + (after ? 6 : -6), y(1) + ROW * (1 + row), line.label, {
        class: 'told',
        'text-anchor': after ? 'start' : 'end',
      });
      row += 1;
    }
  }
  for (const [across, up] of plot.points) {
    picture.append(draw('circle', { class: 'point', cx: x(across), cy: y(up), r: 6 }));
  }
  const named = plot.curves.filter((curve) => curve.label !== '');
  return make(
    'figure',
    { class: 'plotted', 'data-plot': plot.plot },
    make('figcaption', {}, plot.title),
    picture,
    make(
      'ul',
      { class: 'legend' },
      ...named.map((curve, at) => make('li', { 'data-curve': at }, curve.label)),
      ...plot.bands.map((band) => make('li', { class: 'of-band' }, band.label)),
    ),
  );
}
