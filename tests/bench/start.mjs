// @ts-check

// A first visit on a slow phone: slow 4G (1.6 Mbit/s, 150 ms) and a quarter of this machine's speed, as Lighthouse's mobile
// preset has it, over a server of its own that sends brotli. By the browser's own clock and its own list of long tasks.

import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { builtSite, printTimes } from './harness.mjs';

const VISITS = 7;
const SLOWED_DOWN = 4;
const NETWORK = { offline: false, latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 };
const KINDS = { html: 'text/html', js: 'text/javascript', css: 'text/css', wasm: 'application/wasm', svg: 'image/svg+xml', webmanifest: 'application/manifest+json' };

/** @type {typeof import('../browser/node_modules/playwright/index.js')} */
const { chromium } = createRequire(new URL('../browser/package.json', import.meta.url))('playwright');

/** @type {Map<string, Buffer>} */
const sent = new Map();
const server = createServer(async (request, response) => {
  const path = new URL(request.url ?? '/', 'http://localhost').pathname.slice(1) || 'index.html';
  const body = sent.get(path) ?? (await readFile(join(builtSite, path)).then((file) => brotliCompressSync(file), () => undefined));
  if (!body) return void response.writeHead(404).end();
  sent.set(path, body);
  const kind = KINDS[/** @type {keyof typeof KINDS} */ (path.split('.').pop())] ?? 'application/octet-stream';
  response.writeHead(200, { 'content-type': kind, 'content-encoding': 'br', 'cache-control': 'no-store' }).end(body);
});
await new Promise((listening) => server.listen(0, '127.0.0.1', () => listening(undefined)));
const address = `http://127.0.0.1:${/** @type {import('node:net').AddressInfo} */ (server.address()).port}/`;
const browser = await chromium.launch({ executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
/** @type {Record<string, number[]>} */
const times = { 'first paint': [], 'largest paint': [], 'shelf stands': [], 'longest task': [], blocking: [] };
try {
  // Once unmeasured, so that what the server sends is packed already.
  for (let visit = -1; visit < VISITS; visit += 1) {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true, locale: 'en-GB', serviceWorkers: 'block' });
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send('Network.enable');
    await session.send('Network.emulateNetworkConditions', NETWORK);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED_DOWN });
    await page.addInitScript(() => {
      const seen = { largest: 0, tasks: /** @type {number[]} */ ([]), shelf: 0 };
      Reflect.set(globalThis, 'seen', seen);
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) seen.largest = entry.startTime;
      }).observe({ type: 'largest-contentful-paint', buffered: true });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) seen.tasks.push(entry.duration);
      }).observe({ type: 'longtask', buffered: true });
      const look = () => {
        if (document.body?.dataset.ready && document.querySelector('.card-name')?.textContent) requestAnimationFrame(() => (seen.shelf = performance.now()));
        else setTimeout(look, 10);
      };
      look();
    });
    await page.goto(address, { waitUntil: 'commit' });
    await page.waitForFunction(() => Reflect.get(globalThis, 'seen').shelf > 0, undefined, { timeout: 60_000 });
    await page.waitForTimeout(6000);
    const seen = await page.evaluate(() => ({ ...Reflect.get(globalThis, 'seen'), first: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0 }));
    if (visit >= 0) {
      times['first paint'].push(seen.first);
      times['largest paint'].push(seen.largest);
      times['shelf stands'].push(seen.shelf);
      times['longest task'].push(Math.max(0, ...seen.tasks));
      times.blocking.push(seen.tasks.reduce((/** @type {number} */ sum, /** @type {number} */ task) => sum + Math.max(0, task - 50), 0));
    }
    await context.close();
  }
} finally {
  await browser.close();
  server.close();
}
for (const [name, samples] of Object.entries(times)) printTimes(`start.${name}`, Float64Array.from(samples));
