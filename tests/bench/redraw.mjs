// @ts-check

// What the maker waits for at a keystroke on a slow phone: the answer, and the page drawn anew. A browser slowed down to
// a quarter of this machine stands for the phone, as is usual for one of the middle class; each time goes from the key to the end of the frame it is drawn in.

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { builtSite, printTimes } from './harness.mjs';

const SLOWED_DOWN = 4;
const LINES = 40;
const KEYSTROKES = 120;
const WARM_UP = 20;
const ADDRESS = 'http://localhost/';
const KINDS = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  wasm: 'application/wasm',
  svg: 'image/svg+xml',
};

// The browser of the browser tests.
/** @type {typeof import('../browser/node_modules/playwright/index.js')} */
const { chromium } = createRequire(new URL('../browser/package.json', import.meta.url))('playwright');
const link = (
  await readFile(new URL('../../crates/exchange/golden/link-1-orchard.txt', import.meta.url), 'utf8')
).trim();

const browser = await chromium.launch({
  executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  for (const [screen, options] of /** @type {const} */ ([
    ['a phone', { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true }],
    ['a desk', { viewport: { width: 1280, height: 800 } }],
  ])) {
    const page = await browser.newPage({ ...options, locale: 'en-GB', serviceWorkers: 'block' });
    // The site as built, without a server: what is measured begins once everything has arrived.
    await page.route('**/*', async (route) => {
      const path = new URL(route.request().url()).pathname.slice(1) || 'index.html';
      const kind = KINDS[/** @type {keyof typeof KINDS} */ (path.split('.').pop())] ?? 'application/octet-stream';
      const body = await readFile(join(builtSite, path)).catch(() => undefined);
      await route.fulfill(body ? { body, contentType: kind } : { status: 404 });
    });
    await page.goto(`${ADDRESS}#${link}`);
    await page.getByRole('button', { name: 'Keep a copy' }).click();
    await page.evaluate(() => {
      location.hash = 'formula';
    });
    const fields = page.locator('input[data-field^="amount:"]');
    await fields.nth(LINES - 1).waitFor();
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED_DOWN });
    const { times, beside } = await fields.nth(3).evaluate(async (field, keystrokes) => {
      const input = /** @type {HTMLInputElement} */ (field);
      input.focus();
      const before = input.value;
      // The last digit becomes another, as when an amount is mended.
      const other = `${before.slice(0, -1)}${before.endsWith('1') ? 2 : 1}`;
      const times = [];
      const beside = [];
      for (let turn = 0; turn < keystrokes; turn += 1) {
        // A moment of rest between two keys, as a hand leaves it: what is done at rest is not measured.
        await new Promise((resolve) => setTimeout(resolve, 60));
        await new Promise((resolve) => requestAnimationFrame(resolve));
        const begin = performance.now();
        input.value = turn % 2 ? before : other;
        input.dispatchEvent(new Event('input', { bubbles: true }));
        // A frame is drawn before the next message is read.
        const drawn = () =>
          new Promise((resolve) => {
            const { port1, port2 } = new MessageChannel();
            port1.onmessage = resolve;
            port2.postMessage(undefined);
          });
        await drawn();
        times.push(performance.now() - begin);
        const jar = document.querySelector('.constituents');
        if (!jar?.checkVisibility()) continue;
        await new Promise((resolve) =>
          new MutationObserver((_, observer) => {
            observer.disconnect();
            resolve(undefined);
          }).observe(jar, { subtree: true, childList: true }),
        );
        await new Promise((resolve) => requestAnimationFrame(resolve));
        await drawn();
        beside.push(performance.now() - begin);
      }
      return { times, beside };
    }, KEYSTROKES);
    printTimes(
      `redraw.amount (${LINES} lines, on ${screen} of a quarter of this speed)`,
      Float64Array.from(times.slice(WARM_UP)),
    );
    if (beside.length > WARM_UP) {
      printTimes(
        `redraw.beside (from the key until what stands beside the lines is drawn, a frame later, on ${screen})`,
        Float64Array.from(beside.slice(WARM_UP)),
      );
    }
    await page.close();
  }
} finally {
  await browser.close();
}
