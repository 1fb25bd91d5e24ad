// @ts-check

// A formula on somebody else's page: another origin, a strict policy, a hostile style sheet.

import { expect, test } from '@playwright/test';
import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';

const example = (
  await readFile(new URL('../../crates/exchange/golden/link-1-example.txt', import.meta.url), 'utf8')
).trim();
const long = (
  await readFile(new URL('../../crates/exchange/golden/link-1-everything.txt', import.meta.url), 'utf8')
).trim();

/** A style sheet that wants to get at everything. */
const HOSTILE = `
  * { color: red !important; background: lime !important; font-size: 3px !important; display: inline !important; visibility: hidden; letter-spacing: 9px !important; text-transform: uppercase !important; direction: rtl !important; }
  table, tr, td, th, input, button, article, .shared-sheet, .sheet-name { display: none !important; position: fixed !important; }
`;

/**
 * Serves a page as a host of its own would, and nothing else.
 * @param {string} body
 * @param {{ origin: string, style?: string }} options
 */
async function hostPage(body, { origin, style = '' }) {
  const page = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>A host</title><link rel="stylesheet" href="/style.css"></head><body>${body}</body></html>`;
  const server = createServer((request, response) => {
    response.setHeader(
      'Content-Security-Policy',
      `default-src 'none'; script-src ${origin} 'wasm-unsafe-eval'; connect-src ${origin}; style-src 'self'; frame-src ${origin}; base-uri 'none'; require-trusted-types-for 'script'`,
    );
    if (request.url === '/style.css') {
      response.setHeader('Content-Type', 'text/css');
      response.end(style);
    } else {
      response.setHeader('Content-Type', 'text/html');
      response.end(page);
    }
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve(undefined)));
  const { port } = /** @type {import('node:net').AddressInfo} */ (server.address());
  // Another name of the same machine: another origin, and another site.
  return { address: `http://localhost:${port}/`, stop: () => server.close() };
}

/** @param {string} [baseURL] */
const originOf = (baseURL) => new URL(baseURL ?? '').origin;

test('the element works under a strict policy and a hostile style sheet, and several share one seam', async ({
  page,
  baseURL,
}) => {
  const origin = originOf(baseURL);
  const host = await hostPage(
    `<h1>Host</h1>
     <stillroom-formula id="one"><a href="${origin}/#${example}">The formula</a></stillroom-formula>
     <stillroom-formula id="two" link="${example}" batch="50 g" unit="g" mark="comma"></stillroom-formula>
     <script type="module" src="${origin}/embed/stillroom.js"></script>
     <script type="module" src="${origin}/embed/stillroom.js?again"></script>`,
    { origin, style: HOSTILE },
  );
  /** @type {string[]} */
  const fetched = [];
  /** @type {string[]} */
  const complaints = [];
  page.on('request', (request) => fetched.push(request.url()));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  try {
    await page.goto(host.address);
    const one = page.locator('#one');
    await expect(one.locator('.sheet-name')).toHaveText('Cucumber and oat gel cream', { timeout: 30_000 });
    await expect(page.locator('#two').locator('.sheet-name')).toHaveText('Cucumber and oat gel cream', {
      timeout: 30_000,
    });

    // Nothing of the host's style reaches in.
    const look = await one.locator('.sheet-name').evaluate((element) => {
      const style = getComputedStyle(element);
      return [
        style.fontSize,
        style.color,
        style.display,
        style.visibility,
        style.letterSpacing,
        style.textTransform,
        style.direction,
      ];
    });
    expect(look).toEqual([
      '22px',
      expect.not.stringContaining('255, 0, 0'),
      'block',
      'visible',
      'normal',
      'none',
      'ltr',
    ]);
    await expect(one.getByRole('table').first()).toBeVisible();
    // And nothing of ours leaks out: the host's own words look as the host wants them.
    expect(await page.locator('h1').evaluate((element) => getComputedStyle(element).color)).toBe('rgb(255, 0, 0)');
    expect(await page.evaluate(() => [document.styleSheets.length, document.adoptedStyleSheets.length])).toEqual([
      1, 0,
    ]);

    // 12 % of 50 g, as a reader with a decimal comma writes it.
    await expect(page.locator('#two').locator('tr', { hasText: 'glycerite' }).first()).toContainText('6,0');
    await page.locator('#two').getByLabel('Batch to make').fill('250 g');
    await expect(page.locator('#two').locator('tr', { hasText: 'glycerite' }).first()).toContainText('30,0');
    await page.locator('#two').getByLabel('Weigh in').selectOption('oz');
    await expect(page.locator('#two').locator('thead').first()).toContainText('oz');
    // 70 °C of the heated phases, as 1.8 t + 32 says it.
    await expect(page.locator('#two').locator('.group').first()).toContainText('70 °C');
    await page.locator('#two').getByLabel('Temperatures in').selectOption('°F');
    await expect(page.locator('#two').locator('.group').first()).toContainText('158 °F');
    await expect(page.locator('#two').getByRole('link', { name: 'Open at my bench' })).toHaveAttribute(
      'href',
      `${origin}/#${example}`,
    );

    // One seam and what reads a link; nothing of the rooms beyond.
    const parts = fetched.filter((url) => url.endsWith('.wasm')).map((url) => url.split('/').pop() ?? '');
    expect(new Set(parts).size).toBe(parts.length);
    expect(parts.filter((name) => !name.startsWith('common')).sort()).toEqual([
      'split_share.wasm',
      'stillroom_bg.wasm',
    ]);
    expect(complaints).toEqual([]);
    // No server hears of the formula.
    expect(fetched.filter((url) => url.includes(example.slice(2, 30)))).toEqual([]);
  } finally {
    host.stop();
  }
});

test('an element far down is fetched when it comes into sight, and its colours can be chosen', async ({
  page,
  baseURL,
}) => {
  const origin = originOf(baseURL);
  const host = await hostPage(
    `<div class="tall"></div><stillroom-formula link="${example}"></stillroom-formula><script type="module" src="${origin}/embed/stillroom.js"></script>`,
    {
      origin,
      style:
        '.tall { height: 6000px } stillroom-formula { --stillroom-paper: rgb(1, 2, 3); --stillroom-ink: rgb(250, 251, 252); }',
    },
  );
  /** @type {string[]} */
  const wasm = [];
  page.on('request', (request) => {
    if (request.url().endsWith('.wasm')) wasm.push(request.url());
  });
  try {
    await page.goto(host.address);
    await page.waitForFunction(() => customElements.get('stillroom-formula') !== undefined);
    // The element's own watcher was there first: once this one has been told, so has it.
    const isNear = await page.locator('stillroom-formula').evaluate(
      (element) =>
        new Promise((resolve) => {
          const watcher = new IntersectionObserver(([{ isIntersecting }]) => resolve(isIntersecting), {
            rootMargin: '200px',
          });
          watcher.observe(element);
        }),
    );
    expect(isNear, 'a control').toBe(false);
    await page.waitForLoadState('networkidle');
    expect(wasm).toEqual([]);
    await page.locator('stillroom-formula').scrollIntoViewIfNeeded();
    const sheet = page.locator('stillroom-formula .shared-sheet');
    await expect(sheet).toBeVisible({ timeout: 30_000 });
    expect(
      await sheet.evaluate((element) => [getComputedStyle(element).backgroundColor, getComputedStyle(element).color]),
    ).toEqual(['rgb(1, 2, 3)', 'rgb(250, 251, 252)']);
  } finally {
    host.stop();
  }
});

test('the frame works without reaching the page around it', async ({ page, baseURL }) => {
  const origin = originOf(baseURL);
  const host = await hostPage(
    `<p id="secret">of the host</p><iframe title="formula" width="380" height="900" src="${origin}/embed/frame.html?batch=50+g&unit=g&mark=point#${example}" sandbox="allow-scripts allow-popups allow-popups-to-escape-sandbox allow-modals" referrerpolicy="no-referrer"></iframe>`,
    { origin, style: '' },
  );
  try {
    await page.goto(host.address);
    const frame = page.frameLocator('iframe');
    await expect(frame.locator('.sheet-name')).toHaveText('Cucumber and oat gel cream', { timeout: 30_000 });
    await expect(frame.locator('tr', { hasText: 'glycerite' }).first()).toContainText('6.0');
    const inside = page.frames().find((each) => each.url().includes('frame.html'));
    const reached = await inside?.evaluate(() => {
      try {
        return String(parent.document.title);
      } catch (problem) {
        return /** @type {Error} */ (problem).name;
      }
    });
    expect(reached).toBe('SecurityError');
  } finally {
    host.stop();
  }
});

test('script text and odd characters of a link are shown as text', async ({ page, baseURL }) => {
  const origin = originOf(baseURL);
  const host = await hostPage(
    `<stillroom-formula link="${long}"></stillroom-formula><script type="module" src="${origin}/embed/stillroom.js"></script>`,
    { origin },
  );
  try {
    await page.goto(host.address);
    await expect(page.locator('stillroom-formula').getByText('<script>alert(1)</script>')).toBeVisible({
      timeout: 30_000,
    });
    expect(await page.locator('stillroom-formula script').count()).toBe(0);
  } finally {
    host.stop();
  }
});

test('a link that cannot be read is said in the element', async ({ page, baseURL }) => {
  const origin = originOf(baseURL);
  const host = await hostPage(
    `<stillroom-formula link="${example.slice(0, -8)}"></stillroom-formula><stillroom-formula></stillroom-formula><stillroom-formula link="javascript:alert(1)//#f=&quot;&gt;"></stillroom-formula><script type="module" src="${origin}/embed/stillroom.js"></script>`,
    { origin },
  );
  try {
    await page.goto(host.address);
    await expect(page.locator('stillroom-formula').first()).toContainText('cut off', { timeout: 30_000 });
    await expect(page.locator('stillroom-formula').nth(1)).toContainText('No formula is named here');
    await expect(page.locator('stillroom-formula').nth(2)).toContainText('damaged');
    expect(await page.locator('stillroom-formula a[href^="javascript"]').count()).toBe(0);
  } finally {
    host.stop();
  }
});

test('an element that could not be fetched draws itself once there is a network', async ({ page, baseURL }) => {
  const origin = originOf(baseURL);
  const host = await hostPage(
    `<stillroom-formula link="${example}"></stillroom-formula><script type="module" src="${origin}/embed/stillroom.js"></script>`,
    { origin },
  );
  const seam = /\/seam\/stillroom\.js/;
  try {
    await page.route(seam, (route) => route.abort());
    await page.goto(host.address);
    const element = page.locator('stillroom-formula');
    await expect(element.getByRole('link')).toHaveAttribute('href', `${origin}/#${example}`, { timeout: 30_000 });
    await expect(element.locator('.sheet-name')).toHaveCount(0);
    await page.unroute(seam);
    await page.evaluate(() => dispatchEvent(new Event('online')));
    await expect(element.locator('.sheet-name')).toHaveText('Cucumber and oat gel cream', { timeout: 30_000 });
  } finally {
    host.stop();
  }
});

test('the page about embedding and the invented blog work @desk', async ({ page, baseURL }) => {
  /** @type {string[]} */
  const complaints = [];
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto(`./embed/index.html#${example}`);
  await expect(page.locator('#element')).toContainText(`${originOf(baseURL)}/#${example}`);
  await expect(page.locator('#policy')).toContainText(`script-src ${originOf(baseURL)}`);
  await page.goto('./embed/blog.html');
  await expect(page.locator('stillroom-formula .sheet-name').first()).toHaveText('Cucumber and oat gel cream', {
    timeout: 30_000,
  });
  await page.locator('iframe').scrollIntoViewIfNeeded();
  await expect(page.frameLocator('iframe').locator('.sheet-name')).toHaveText('Cucumber and oat gel cream', {
    timeout: 30_000,
  });
  expect(complaints).toEqual([]);
});

test('a frame that may open nothing says so when a reader wants to print', async ({ page, baseURL }) => {
  const origin = originOf(baseURL);
  const frame = (/** @type {string} */ id, /** @type {string} */ leave) =>
    `<iframe id="${id}" title="${id}" sandbox="${leave}" width="380" height="900" src="${origin}/embed/frame.html#${example}"></iframe>`;
  const shut = await hostPage(frame('frame', 'allow-scripts'), { origin });
  const free = await hostPage(
    frame('frame', 'allow-scripts allow-popups allow-popups-to-escape-sandbox allow-modals'),
    { origin },
  );
  const inside = page.frameLocator('#frame');
  const print = inside.getByRole('button', { name: 'Print' });
  const refusal = inside.getByText('does not let it open a page to print');
  try {
    await page.goto(shut.address);
    await print.click({ timeout: 30_000 });
    await expect(refusal).toBeVisible();
    await page.goto(free.address);
    const [opened] = await Promise.all([page.context().waitForEvent('page'), print.click({ timeout: 30_000 })]);
    await opened.waitForURL(/print=yes/);
    expect(await opened.evaluate(() => window.opener), 'what is opened cannot reach back').toBe(null);
    await expect(refusal).toBeHidden();
  } finally {
    shut.stop();
    free.stop();
  }
});
