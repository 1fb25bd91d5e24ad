// @ts-check

// Symbols drawn on a grid of 24 with one line; what stands after a bar is drawn with a heavier one. A symbol never speaks for
// itself: a word stands beside it, or names what it is in.

import { draw } from './element.js';

/** What the first view shows; what a room needs beyond that it brings along. */
const drawn = {
  shelf:
    'M3 20h18M5 20v-7.5A1.5 1.5 0 0 1 6.5 11h3a1.5 1.5 0 0 1 1.5 1.5V20M6 8.5h4V11H6zM14 20V9.5l1.2-2V4h2.6v3.5l1.2 2V20M14 14h5',
  formula: 'M4 6h9M4 12h9M4 18h9|M17 6h3M17 12h3M17 18h3',
  bench: 'M4 20h16l-1.3-8.5H5.3zM3.5 8h17M7 8V5.5M17 8V5.5M12 8v3.5M9.5 16.5h5',
  stores: 'M4 4h16v16H4zM4 12h16M12 4v16M7 8h2M15 8h2M7 16h2M15 16h2',
  journal: 'M6 3.5h12.5v17H6A1.5 1.5 0 0 1 4.5 19V5A1.5 1.5 0 0 1 6 3.5zM8 3.5v17M11 8h4.5M11 12h4.5M11 16h2.5',
  undo: 'M8.5 5l-4 4 4 4M4.5 9h9a5.5 5.5 0 0 1 0 11H9',
  redo: 'M15.5 5l4 4-4 4M19.5 9h-9a5.5 5.5 0 0 0 0 11H15',
  more: '|M5 12h.01M12 12h.01M19 12h.01',
  plus: 'M12 4.5v15M4.5 12h15',
  next: 'M9.5 5l7 7-7 7',
  close: 'M5.5 5.5l13 13M18.5 5.5l-13 13',
};

/** @typedef {keyof typeof drawn} Symbol */

/** Draws a symbol: one of the first view by its name, another by its line. @param {Symbol | `M${string}`} name */
export function icon(name) {
  const line = name in drawn ? drawn[/** @type {Symbol} */ (name)] : name;
  const [thin = '', heavy] = line.split('|');
  return draw(
    'svg',
    { class: 'icon', viewBox: '0 0 24 24', 'aria-hidden': 'true' },
    draw('path', { d: thin }),
    ...(heavy ? [draw('path', { d: heavy, 'stroke-width': 3.5 })] : []),
  );
}

const TAG = 'M4.5 1.5h7l3 4V20a1 1 0 0 1-1 1h-11a1 1 0 0 1-1-1V5.5z';
const DIPPED = { stop: ['M1.5 7.5h13', 'M5.5 12l5 5M10.5 12l-5 5'], caution: ['M1.5 14.5h13', 'M8 5.5V9M8 12h.01'] };

/**
 * A small tag: how deep it was dipped says how grave a finding is. The word stands beside it.
 * @param {string} grade
 */
export function pin(grade) {
  const [surface, mark] = DIPPED[/** @type {keyof typeof DIPPED} */ (grade)] ?? ['', 'M4.5 10.5h7M4.5 14h7'];
  return draw(
    'svg',
    { class: 'pin', viewBox: '0 0 16 22', 'aria-hidden': 'true', 'data-grade': grade },
    draw('path', { class: 'paper', d: TAG }),
    ...(surface ? [draw('path', { class: 'dip', d: `${surface}V20a1 1 0 0 1-1 1h-11a1 1 0 0 1-1-1z` })] : []),
    draw('path', { d: TAG + surface }),
    draw('path', { class: grade === 'stop' ? 'cut' : 'mark', d: mark ?? '' }),
  );
}
