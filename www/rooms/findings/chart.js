// @ts-check

// The picture of a finding: a curve or a scale, with what was found marked on it.

import { draw } from '../../dom/element.js';

/** @typedef {import('../../seam/stillroom.js').ChartView} ChartView */

/** Size of a picture, and its margins. */
const WIDE = 360;
const HIGH = 220;
const LEFT = 48;
const RIGHT = 14;
const TOP = 22;
const BOTTOM = 40;

/** @param {ChartView} chart */
export function drawChart(chart) {
  const flat = chart.up === '';
  const high = flat ? 120 : HIGH;
  const left = flat ? RIGHT : LEFT;
  /** @param {number} share */
  const x = (share) => left + share * (WIDE - left - RIGHT);
  /** @param {number} share */
  const y = (share) => high - BOTTOM - share * (high - TOP - BOTTOM);
  const picture = draw('svg', {
    class: 'picture',
    viewBox: `0 0 ${WIDE} ${high}`,
    role: 'img',
    'aria-label': chart.description,
  });
  /** @param {number} at @param {number} up @param {string} content @param {Record<string, string>} [more] */
  const write = (at, up, content, more = {}) => {
    const text = draw('text', { x: at, y: up, ...more });
    text.textContent = content;
    picture.append(text);
  };
  if (chart.band) {
    const [from, to] = chart.band;
    picture.append(
      draw('rect', { class: 'band', x: x(from), y: TOP, width: x(to) - x(from), height: high - TOP - BOTTOM }),
    );
  }
  for (const tick of chart.upTicks) {
    picture.append(draw('line', { class: 'grid', x1: x(0), x2: x(1), y1: y(tick.at), y2: y(tick.at) }));
    write(left - 5, y(tick.at) + 4, tick.text, { 'text-anchor': 'end' });
  }
  for (const tick of chart.acrossTicks) {
    picture.append(draw('line', { class: 'grid', x1: x(tick.at), x2: x(tick.at), y1: TOP, y2: y(0) }));
    write(x(tick.at), y(0) + 15, tick.text, { 'text-anchor': 'middle' });
  }
  picture.append(draw('polyline', { class: 'edge', points: `${x(0)},${TOP} ${x(0)},${y(0)} ${x(1)},${y(0)}` }));
  write(x(0), 12, chart.up);
  write(x(1), high - 6, chart.across, { 'text-anchor': 'end' });
  if (chart.curve.length) {
    picture.append(
      draw('polyline', { class: 'curve', points: chart.curve.map(([a, b]) => `${x(a)},${y(b)}`).join(' ') }),
    );
  }
  let row = 0;
  for (const mark of chart.marks) {
    const turn = { 'text-anchor': mark.x > 0.6 ? 'end' : 'start' };
    const at = x(mark.x) + (mark.x > 0.6 ? -7 : 7);
    if (mark.y === undefined) {
      picture.append(draw('line', { class: 'across', x1: x(mark.x), x2: x(mark.x), y1: TOP, y2: y(0) }));
      write(at, y(0) - 6 - 14 * row, mark.text, { class: 'told', ...turn });
      row += 1;
    } else {
      picture.append(draw('circle', { class: 'point', cx: x(mark.x), cy: y(mark.y), r: 6 }));
      write(at, Math.max(y(mark.y) - 8, TOP + 10), mark.text, { class: 'told', ...turn });
    }
  }
  return picture;
}
