// @ts-check

// A first visit on a slow phone, by the browser's own trace: slow 4G (1.6 Mbit/s, 150 ms) and a quarter of this machine's
// speed, over a server of its own that sends brotli. A second kind of visit asks to save data: nothing beyond the first view
// may follow it unasked.
//
// A task is measured twice: by the clock, as a hand feels it, and by what the thread itself spent, which other programs on
// this machine do not lengthen. STILLROOM_TASKS=yes names what the longest tasks did.

import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { builtSite, printTimes } from './harness.mjs';

const VISITS = 5;
const SLOWED_DOWN = 4;
const NETWORK = { offline: false, latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 };
/** Milliseconds after the shelf stands within which what follows by itself is done. */
const AFTERWARDS = 6000;
const KINDS = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  wasm: 'application/wasm',
  svg: 'image/svg+xml',
  webmanifest: 'application/manifest+json',
};
const CATEGORIES = [
  'loading',
  'blink.user_timing',
  'devtools.timeline',
  'disabled-by-default-devtools.timeline',
  'v8',
  'v8.wasm',
];
/** What the page marks in the trace. */
const SHELF = 'shelf-stands';

/**
 * @typedef {object} Event
 * @property {string} name
 * @property {string} ph
 * @property {number} pid
 * @property {number} tid
 * @property {number} ts microseconds
 * @property {number} [dur]
 * @property {number} [tdur]
 * @property {any} [args]
 */

/** @type {typeof import('../browser/node_modules/playwright/index.js')} */
const { chromium } = createRequire(new URL('../browser/package.json', import.meta.url))('playwright');

/** @type {Map<string, Buffer>} */
const packed = new Map();
/** What was asked for during a visit. @type {string[]} */
let asked = [];
const server = createServer(async (request, response) => {
  const path = new URL(request.url ?? '/', 'http://localhost').pathname.slice(1) || 'index.html';
  asked.push(path);
  const file = await readFile(join(builtSite, path)).catch(() => undefined);
  if (!file) return void response.writeHead(404).end();
  const body = packed.get(path) ?? brotliCompressSync(file);
  packed.set(path, body);
  const kind = KINDS[/** @type {keyof typeof KINDS} */ (path.split('.').pop())] ?? 'application/octet-stream';
  response.writeHead(200, { 'content-type': kind, 'content-encoding': 'br', 'cache-control': 'no-store' }).end(body);
});
await new Promise((listening) => server.listen(0, '127.0.0.1', () => listening(undefined)));
const address = `http://127.0.0.1:${/** @type {import('node:net').AddressInfo} */ (server.address()).port}/`;
const browser = await chromium.launch({
  executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
const whole = await browser.newBrowserCDPSession();
const times = {
  'first paint': /** @type {number[]} */ ([]),
  'largest paint': /** @type {number[]} */ ([]),
  'shelf stands': /** @type {number[]} */ ([]),
  'longest task': /** @type {number[]} */ ([]),
  'longest task, of its own thread': /** @type {number[]} */ ([]),
  'longest task before the shelf stands': /** @type {number[]} */ ([]),
  blocking: /** @type {number[]} */ ([]),
};
try {
  // Once unmeasured, so that what the server sends is packed already.
  await visit(false);
  for (let turn = 0; turn < VISITS; turn += 1) {
    const seen = await visit(false);
    for (const [name, time] of Object.entries(seen)) times[/** @type {keyof typeof times} */ (name)].push(time);
  }
  asked = [];
  await visit(true);
  const unasked = asked.filter((path) => /^sw\.js$|seam\/(split|common)|rooms\/(?!shelf|jar\/vessel)/.test(path));
  if (unasked.length > 0) throw new Error(`a visit that asks to save data fetched ${unasked.join(', ')} unasked`);
} finally {
  await browser.close();
  server.close();
}
for (const [name, samples] of Object.entries(times)) printTimes(`start.${name}`, Float64Array.from(samples));

/**
 * One first visit, in a context of the browser's own: the test library would run scripts of its own in the page.
 * @param {boolean} savesData
 */
async function visit(savesData) {
  const { browserContextId } = await whole.send('Target.createBrowserContext');
  const { targetId } = await whole.send('Target.createTarget', { url: 'about:blank', browserContextId });
  const { sessionId } = await whole.send('Target.attachToTarget', { targetId, flatten: false });
  const page = speakTo(sessionId);
  await page('Page.enable');
  await page('Emulation.setDeviceMetricsOverride', { width: 390, height: 844, deviceScaleFactor: 1, mobile: true });
  await page('Network.enable');
  await page('Network.emulateNetworkConditions', NETWORK);
  // What would keep all of it for use without a network is fetched past these conditions: only who saves data is looked at.
  await page('Network.setBypassServiceWorker', { bypass: true });
  await page('Emulation.setCPUThrottlingRate', { rate: SLOWED_DOWN });
  await page('Page.addScriptToEvaluateOnNewDocument', { source: `(${watch})(${JSON.stringify(SHELF)}, ${savesData})` });
  /** @type {Event[]} */
  const events = [];
  const collect = (/** @type {{ value: any[] }} */ { value }) => void events.push(...value);
  whole.on('Tracing.dataCollected', collect);
  await whole.send('Tracing.start', { traceConfig: { includedCategories: CATEGORIES }, transferMode: 'ReportEvents' });
  await page('Page.navigate', { url: address });
  const isThere = { expression: `performance.getEntriesByName('${SHELF}').length > 0` };
  while (!(await page('Runtime.evaluate', isThere)).result.value) await sleep(500);
  await sleep(AFTERWARDS);
  const complete = new Promise((done) => whole.once('Tracing.tracingComplete', done));
  await whole.send('Tracing.end');
  await complete;
  whole.off('Tracing.dataCollected', collect);
  await whole.send('Target.disposeBrowserContext', { browserContextId });
  return read(events);
}

/**
 * Marks in the page when the shelf stands. Runs there.
 * @param {string} mark
 * @param {boolean} savesData
 */
function watch(mark, savesData) {
  if (savesData) Object.defineProperty(Navigator.prototype, 'connection', { value: { saveData: true } });
  else Object.defineProperty(Navigator.prototype, 'serviceWorker', { value: undefined });
  const watcher = new MutationObserver(() => {
    if (!document.body?.dataset.ready || !document.querySelector('.card-name')?.textContent) return;
    watcher.disconnect();
    requestAnimationFrame(() => performance.mark(mark));
  });
  watcher.observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-ready'] });
}

/**
 * Speaks to a page.
 * @param {string} sessionId
 * @returns {(method: string, params?: object) => Promise<any>}
 */
function speakTo(sessionId) {
  /** @type {Map<number, (result: any) => void>} */
  const waiting = new Map();
  let last = 0;
  whole.on('Target.receivedMessageFromTarget', ({ sessionId: of, message }) => {
    if (of !== sessionId) return;
    const { id, result, error } = JSON.parse(message);
    if (error) throw new Error(error.message);
    waiting.get(id)?.(result);
    waiting.delete(id);
  });
  return (method, params = {}) =>
    new Promise((resolve) => {
      last += 1;
      waiting.set(last, resolve);
      void whole.send('Target.sendMessageToTarget', {
        sessionId,
        message: JSON.stringify({ id: last, method, params }),
      });
    });
}

/** @param {number} milliseconds */
function sleep(milliseconds) {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

/**
 * What a trace says of a visit, in milliseconds since its navigation.
 * @param {Event[]} events
 */
function read(events) {
  const mark = events.find(({ name }) => name === SHELF);
  if (!mark) throw new Error('the shelf is not in the trace');
  const ours = events.filter(({ pid, tid }) => pid === mark.pid && tid === mark.tid);
  const starts = ours.filter(
    ({ name, args }) => name === 'navigationStart' && args?.data?.documentLoaderURL === address,
  );
  const start = starts.at(-1)?.ts;
  if (start === undefined) throw new Error('the navigation is not in the trace');
  const since = (/** @type {number} */ at) => (at - start) / 1000;
  const paints = (/** @type {string} */ name) => ours.filter((event) => event.name === name && event.ts > start);
  const tasks = ours.filter(({ name, ph, ts }) => name === 'RunTask' && ph === 'X' && ts >= start);
  const lengths = tasks.map(({ dur = 0 }) => dur / 1000);
  if (process.env.STILLROOM_TASKS) explain(ours, tasks, since);
  return {
    'first paint': since(paints('firstContentfulPaint')[0]?.ts ?? start),
    'largest paint': since(paints('largestContentfulPaint::Candidate').at(-1)?.ts ?? start),
    'shelf stands': since(mark.ts),
    'longest task': Math.max(0, ...lengths),
    'longest task, of its own thread': Math.max(0, ...tasks.map(({ tdur = 0 }) => tdur / 1000)),
    'longest task before the shelf stands': Math.max(
      0,
      ...tasks.filter(({ ts }) => ts < mark.ts).map(({ dur = 0 }) => dur / 1000),
    ),
    blocking: lengths.reduce((sum, length) => sum + Math.max(0, length - 50), 0),
  };
}

/**
 * Says what the longest tasks did.
 * @param {Event[]} events
 * @param {Event[]} tasks
 * @param {(at: number) => number} since
 */
function explain(events, tasks, since) {
  const longest = [...tasks].sort((a, b) => (b.tdur ?? 0) - (a.tdur ?? 0)).slice(0, 6);
  for (const task of longest) {
    const end = task.ts + (task.dur ?? 0);
    const inside = events
      .filter(
        ({ name, ph, ts, dur = 0 }) =>
          name !== 'RunTask' && ph === 'X' && ts >= task.ts && ts + dur <= end && dur > 3000,
      )
      .sort((a, b) => (b.dur ?? 0) - (a.dur ?? 0))
      .slice(0, 5)
      .map(({ name, dur = 0, args }) => {
        const where = args?.data?.functionName || args?.data?.url || args?.url || '';
        return `${name} ${String(where).split('/').pop()} ${(dur / 1000).toFixed(0)}`;
      });
    console.error(
      `at ${since(task.ts).toFixed(0)}: ${((task.dur ?? 0) / 1000).toFixed(0)} ms (${((task.tdur ?? 0) / 1000).toFixed(0)} of its thread): ${inside.join(', ')}`,
    );
  }
}
