// @ts-check

// Reads from a printed file (PDF) how large its letters are: every page with its size and, of every piece of text, the size
// of its letters on the paper, in millimetres; and where an area is filled in black, as the bars of a code are. ISO 32000-1:
// 7.3 objects, 8.3 coordinates, 8.5 paths, 8.6.8 colours, 9.4 text.

import { inflateSync } from 'node:zlib';

/** Millimetres of a point. */
const POINT = 25.4 / 72;

/** @typedef {[number, number, number, number, number, number]} Matrix */

/** @typedef {{ size: number, x: number, y: number }} Letters */
/** @typedef {{ x: number, y: number, width: number, height: number }} Bar from the lower left corner of the paper */
/** @typedef {{ runs: Letters[], dark: Bar[] }} Drawn */

/** @param {Matrix} one @param {Matrix} other @returns {Matrix} */
const times = ([a, b, c, d, e, f], [g, h, i, j, k, l]) => [
  a * g + b * i,
  a * h + b * j,
  c * g + d * i,
  c * h + d * j,
  e * g + f * i + k,
  e * h + f * j + l,
];

/**
 * @param {Buffer} pdf
 * @returns {({ width: number, height: number } & Drawn)[]}
 */
export function readLetters(pdf) {
  const text = pdf.toString('latin1');
  /** Objects by number. @type {Map<number, string>} */
  const objects = new Map();
  for (const [, number, body] of text.matchAll(/(?:^|\s)(\d+) 0 obj\s([\s\S]*?)endobj/g)) {
    objects.set(Number(number), body ?? '');
  }
  const streamOf = (/** @type {number} */ number) => {
    const body = objects.get(number) ?? '';
    const begin = /stream\r?\n/.exec(body);
    if (!begin) return '';
    const raw = Buffer.from(body.slice(begin.index + begin[0].length, body.lastIndexOf('endstream')), 'latin1');
    return (body.includes('/FlateDecode') ? inflateSync(raw) : raw).toString('latin1');
  };
  const pages = [...objects.values()].filter((body) => /\/Type\s*\/Page\b/.test(body));
  return pages.map((body) => {
    const box = /\/MediaBox\s*\[([^\]]*)\]/.exec(body)?.[1]?.trim().split(/\s+/).map(Number) ?? [];
    const [left = 0, bottom = 0, right = 0, top = 0] = box;
    const contents = [...(/\/Contents\s*(\[[^\]]*\]|\d+ 0 R)/.exec(body)?.[1] ?? '').matchAll(/(\d+) 0 R/g)];
    const resources = /\/XObject\s*<<([^>]*)>>/.exec(resourcesOf(body, objects))?.[1] ?? '';
    const forms = new Map([...resources.matchAll(/\/(\w+)\s+(\d+) 0 R/g)].map(([, name, at]) => [name, Number(at)]));
    const content = contents.map(([, number]) => streamOf(Number(number))).join('\n');
    return {
      width: (right - left) * POINT,
      height: (top - bottom) * POINT,
      ...drawnBy(content, [1, 0, 0, 1, 0, 0], (name) => streamOf(forms.get(name) ?? -1)),
    };
  });
}

/** @param {string} page @param {Map<number, string>} objects */
function resourcesOf(page, objects) {
  const elsewhere = /\/Resources\s+(\d+) 0 R/.exec(page);
  return elsewhere ? (objects.get(Number(elsewhere[1])) ?? '') : page;
}

/**
 * Every piece of text of a content stream, and the bounds of every part of what it fills in black.
 * @param {string} content
 * @param {Matrix} start
 * @param {(name: string) => string} form
 * @returns {Drawn}
 */
function drawnBy(content, start, form) {
  /** @type {Letters[]} */
  const runs = [];
  /** @type {Bar[]} */
  const dark = [];
  /** @type {[Matrix, boolean][]} */
  const kept = [];
  /** Corners of each part of the path. @type {[number, number][][]} */
  let path = [];
  let isBlack = true;
  let now = start;
  /** @type {Matrix} */
  let line = [1, 0, 0, 1, 0, 0];
  let size = 0;
  /** @type {string[]} */
  let operands = [];
  const numbers = (/** @type {number} */ count) => operands.slice(-count).map(Number);
  for (const [token] of content.matchAll(/\((?:\\[\s\S]|[^\\()])*\)|<[0-9A-Fa-f\s]*>|\[|\]|[^\s[\]()<>]+/g)) {
    switch (token) {
      case 'q':
        kept.push([now, isBlack]);
        break;
      case 'Q':
        [now, isBlack] = kept.pop() ?? [start, true];
        break;
      case 'rg':
        isBlack = numbers(3).every((part) => part === 0);
        break;
      case 'g':
        isBlack = numbers(1)[0] === 0;
        break;
      case 'm':
        path.push([corner(now, numbers(2))]);
        break;
      case 'l':
        path.at(-1)?.push(corner(now, numbers(2)));
        break;
      case 're': {
        const [x = 0, y = 0, width = 0, height = 0] = numbers(4);
        path.push([corner(now, [x, y]), corner(now, [x + width, y + height])]);
        break;
      }
      case 'f':
      case 'f*':
        if (isBlack) dark.push(...path.map((corners) => boundsOf(corners)));
        path = [];
        break;
      case 'n':
      case 's':
      case 'S':
        path = [];
        break;
      case 'cm':
        now = times(/** @type {Matrix} */ (numbers(6)), now);
        break;
      case 'BT':
        line = [1, 0, 0, 1, 0, 0];
        break;
      case 'Tm':
        line = /** @type {Matrix} */ (numbers(6));
        break;
      case 'Td': {
        const [x = 0, y = 0] = numbers(2);
        line = times([1, 0, 0, 1, x, y], line);
        break;
      }
      case 'Tf':
        size = numbers(1)[0] ?? 0;
        break;
      case 'Do':
        {
          const inside = drawnBy(form((operands.at(-1) ?? '').slice(1)), now, () => '');
          runs.push(...inside.runs);
          dark.push(...inside.dark);
        }
        break;
      case 'Tj':
      case 'TJ': {
        const [, , c, d, x, y] = times(line, now);
        // Upright letters: how high they are follows from the second row.
        runs.push({ size: size * Math.hypot(c, d) * POINT, x: x * POINT, y: y * POINT });
        break;
      }
      default:
        operands.push(token);
        continue;
    }
    operands = [];
  }
  return { runs, dark };
}

/** @param {Matrix} now @param {number[]} at @returns {[number, number]} */
function corner([a, b, c, d, e, f], [x = 0, y = 0]) {
  return [(a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT];
}

/** @param {[number, number][]} corners @returns {Bar} */
function boundsOf(corners) {
  const [across, up] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const [x, y] = [Math.min(...across), Math.min(...up)];
  return { x, y, width: Math.max(...across) - x, height: Math.max(...up) - y };
}
