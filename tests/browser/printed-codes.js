// @ts-check

// Reads the QR codes of a printed page as a phone would, with a library of other people, from what is black on the paper; and
// says how wide their modules are and how much is left empty around them.

import jsQR from 'jsqr';

/** @typedef {import('./printed-letters.js').Bar} Bar */

/** Pixels of a millimetre: a camera that sees a module in about four. */
const PIXELS = 10;
/** Room kept around what is cut out, in millimetres, as wide as the widest empty edge that is looked for. */
const AROUND = 4;

/**
 * Every code in black bars: what it says, how wide a module is, and how far from it the nearest black is.
 * @param {Bar[]} dark
 * @returns {{ text: string | undefined, module: number, side: number }[]}
 */
export function readCodes(dark) {
  return codesOf(dark).map((bars) => {
    const left = Math.min(...bars.map(({ x }) => x));
    const low = Math.min(...bars.map(({ y }) => y));
    const high = Math.max(...bars.map(({ y, height }) => y + height));
    const side = high - low;
    const pixels = Math.ceil((side + 2 * AROUND) * PIXELS);
    const image = new Uint8ClampedArray(pixels * pixels * 4).fill(255);
    for (const { x, y, width, height } of bars) {
      const across = [x - left, x + width - left].map((at) => Math.round((at + AROUND) * PIXELS));
      const down = [high - y - height, high - y].map((at) => Math.round((at + AROUND) * PIXELS));
      for (let row = down[0] ?? 0; row < (down[1] ?? 0); row++) {
        for (let column = across[0] ?? 0; column < (across[1] ?? 0); column++) {
          image.fill(0, (row * pixels + column) * 4, (row * pixels + column) * 4 + 3);
        }
      }
    }
    return { text: jsQR(image, pixels, pixels)?.data, module: Math.min(...bars.map(({ height }) => height)), side };
  });
}

/**
 * Bars that lie by one another: those of one code.
 * @param {Bar[]} dark
 */
function codesOf(dark) {
  /** @type {Bar[][]} */
  const codes = [];
  for (const bar of dark) {
    const near = codes.find((bars) =>
      bars.some(({ x, y }) => Math.abs(x - bar.x) < AROUND * 3 && Math.abs(y - bar.y) < AROUND * 3),
    );
    if (near) near.push(bar);
    else codes.push([bar]);
  }
  return codes;
}
