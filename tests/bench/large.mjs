// @ts-check

// A notebook of many years on a slow phone: from the navigation until the shelf can be used, and the longest task once the
// page is at rest. A browser slowed down to a quarter of this machine stands for the phone.

import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { builtSite, printTimes } from './harness.mjs';

const SLOWED_DOWN = 4;
const FORMULAS = 2000;
const MATERIALS = 500;
const BATCHES = 100;
const OPENINGS = 5;
const ADDRESS = 'http://localhost/';
const KINDS = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  wasm: 'application/wasm',
  svg: 'image/svg+xml',
};

/** @type {typeof import('../browser/node_modules/playwright/index.js')} */
const { chromium } = createRequire(new URL('../browser/package.json', import.meta.url))('playwright');

const browser = await chromium.launch({
  executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
try {
  const page = await browser.newPage({
    viewport: { width: 390, height: 844 },
    isMobile: true,
    hasTouch: true,
    locale: 'en-GB',
    serviceWorkers: 'block',
  });
  await page.route('**/*', async (route) => {
    const path = new URL(route.request().url()).pathname.slice(1) || 'index.html';
    const kind = KINDS[/** @type {keyof typeof KINDS} */ (path.split('.').pop())] ?? 'application/octet-stream';
    const body = await readFile(join(builtSite, path)).catch(() => undefined);
    await route.fulfill(body ? { body, contentType: kind } : { status: 404 });
  });
  await page.goto(ADDRESS);
  await page.waitForSelector('body[data-ready]');
  // One batch of the example, to be multiplied.
  await page.goto(`${ADDRESS}#batches`);
  await page.getByRole('button', { name: /^Make 210 g/ }).click();
  await page.locator('.run').waitFor();
  await page.waitForTimeout(1000);
  await page.evaluate(
    ([formulas, materials, batches]) => {
      const of = (/** @type {string} */ kind) => {
        const key = Object.keys(localStorage).find((each) => each.startsWith(kind)) ?? '';
        return { key, record: JSON.parse(localStorage.getItem(key) ?? '{}') };
      };
      const hex = (/** @type {number} */ number) => number.toString(16).padStart(16, '0');
      const put = (/** @type {string} */ key, /** @type {any} */ record) => {
        delete record.check;
        localStorage.setItem(key, JSON.stringify(record));
      };
      const formula = of('stillroom.formula.').record;
      formula.formula.steps = [];
      formula.formula.notes = 'Invented, many times.';
      for (let at = 1; at <= formulas; at += 1) {
        const id = hex(0x1000_0000 + at * 7919);
        put(`stillroom.formula.${id}`, {
          ...formula,
          id,
          changed_at: formula.changed_at - at * 1000,
          formula: { ...formula.formula, name: `Cream ${at}` },
        });
      }
      const batch = of('stillroom.batch.').record;
      for (let at = 1; at <= batches; at += 1) {
        const id = hex(0x2000_0000 + at * 104729);
        put(`stillroom.batch.${id}`, { ...batch, id });
      }
      const material = of('stillroom.material.').record;
      for (let at = 1; at <= materials; at += 1) {
        const id = hex(0x3000_0000 + at * 15485863);
        put(`stillroom.material.${id}`, {
          ...material,
          own: { ...material.own, material: { ...material.own.material, id: `o${id}`, name: `Glycerite ${at}` } },
        });
      }
    },
    [FORMULAS, MATERIALS, BATCHES],
  );
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED_DOWN });
  const opened = [];
  const longest = [];
  for (let turn = 0; turn < OPENINGS; turn += 1) {
    await page.goto('about:blank');
    await page.goto(`${ADDRESS}#shelf`, { waitUntil: 'commit' });
    const ready = await page.evaluate(
      () =>
        new Promise((resolve) => {
          const look = () => {
            const card = document.querySelector('.card .card-name');
            if (document.body?.dataset.ready && card?.textContent)
              requestAnimationFrame(() => setTimeout(() => resolve(performance.now())));
            else setTimeout(look, 10);
          };
          look();
        }),
    );
    opened.push(Number(ready));
    // What follows by itself, until nothing does any more.
    const task = await page.evaluate(
      () =>
        new Promise((resolve) => {
          let most = 0;
          new PerformanceObserver((list) => {
            for (const entry of list.getEntries()) most = Math.max(most, entry.duration);
          }).observe({ type: 'longtask', buffered: false });
          setTimeout(() => resolve(most), 8000);
        }),
    );
    longest.push(Number(task));
  }
  printTimes('large.open', Float64Array.from(opened));
  printTimes('large.longest-task-at-rest', Float64Array.from(longest));
} finally {
  await browser.close();
}
