// @ts-check

// Measures functions in Node and prints one JSON line each, which `cargo xtask bench` collects.

import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** Below this many milliseconds the clock and one interrupt say more than the function: several calls make a sample. */
const SHORTEST_SAMPLE = 0.1;

/** The built site. */
export const builtSite = fileURLToPath(new URL('../../dist', import.meta.url));

/** Where the built seam lies. */
async function seamFolder() {
  if (process.env.STILLROOM_BUILT) {
    return join(process.env.STILLROOM_BUILT, 'seam');
  }
  const version = (await readdir(builtSite)).find((name) => name.startsWith('v-'));
  if (!version) {
    throw new Error('there is no built site: run `cargo xtask build` first');
  }
  return join(builtSite, version, 'seam');
}

// Node fetches no files, which is where the pieces of the seam lie here.
globalThis.fetch = async (/** @type {string | URL | Request} */ address) =>
  new Response(await readFile(fileURLToPath(String(address))), { headers: { 'content-type': 'application/wasm' } });

/**
 * Loads the built seam without a page.
 * @param {('desk' | 'share' | 'whole' | 'swap')[]} [pieces] fetched beside what the main job needs
 * @param {string} [copy] names a copy of its own, with a memory of its own
 * @returns {Promise<typeof import('../../www/seam.js')>}
 */
export async function loadSeam(pieces = ['desk', 'share', 'whole'], copy = '') {
  const folder = await seamFolder();
  const address = pathToFileURL(join(folder, 'stillroom.js')).href;
  const seam = await import(copy ? `${address}?copy=${copy}` : address);
  seam.initSync({ module: await readFile(join(folder, 'stillroom_bg.wasm')) });
  for (const piece of pieces) {
    if (!(await new Promise((came) => seam.fetchPiece(piece, came)))) throw new Error(`${piece} did not come`);
  }
  return seam;
}

/**
 * Measures a function and prints its median, mean and 99th percentile in milliseconds.
 *
 * A function that takes less than a tenth of a millisecond is called several times a sample, so that its percentile is
 * one of short averages.
 * @param {string} name
 * @param {() => unknown} call what is measured; it must finish its work before it returns
 * @param {{ warmup?: number, iterations?: number }} [options] calls before measuring, and samples taken
 */
export function measure(name, call, { warmup = 200, iterations = 500 } = {}) {
  if (call() instanceof Promise) {
    throw new TypeError(`${name} returns before its work is done`);
  }
  const start = performance.now();
  for (let count = 0; count < warmup; count += 1) {
    call();
  }
  const once = warmup > 0 ? (performance.now() - start) / warmup : SHORTEST_SAMPLE;
  const calls = Math.max(1, Math.ceil(SHORTEST_SAMPLE / Math.max(once, 1e-6)));

  const samples = new Float64Array(iterations);
  for (let sample = 0; sample < iterations; sample += 1) {
    const begin = performance.now();
    for (let count = 0; count < calls; count += 1) {
      call();
    }
    samples[sample] = (performance.now() - begin) / calls;
  }
  return printTimes(name, samples);
}

/**
 * Prints the median, mean and 99th percentile of measured times.
 * @param {string} name
 * @param {Float64Array} samples in milliseconds; they are sorted
 */
export function printTimes(name, samples) {
  samples.sort();
  const result = {
    name,
    median_ms: quantile(samples, 0.5),
    mean_ms: samples.reduce((sum, time) => sum + time, 0) / samples.length,
    p99_ms: quantile(samples, 0.99),
  };
  console.log(JSON.stringify(result));
  return result;
}

/**
 * The nearest-rank quantile of sorted samples.
 * @param {Float64Array} sorted
 * @param {number} share
 */
function quantile(sorted, share) {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)];
}
