// @ts-check
import { expect, test } from '@playwright/test';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { builtSite, copyBuiltSite, makeNextVersion, readBuild, serveFolder } from './built-site.js';

/** @param {import('@playwright/test').Page} page */
async function waitUntilKept(page) {
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

/**
 * Fetches past every cache and says whether something answered.
 * @param {import('@playwright/test').Page} page
 */
function reachesTheNetwork(page) {
  return page.evaluate(() =>
    fetch(`./not-kept-${Math.random()}`).then(
      () => true,
      () => false,
    ),
  );
}

/**
 * The folder of assets that the page on screen uses.
 * @param {import('@playwright/test').Page} page
 */
function assetsOf(page) {
  return page.locator('script[type=module]').first().getAttribute('src');
}

test('the page works without a network after one visit', async ({ page }) => {
  // The host itself goes: what a browser calls offline need not reach its service workers.
  let host = await serveFolder(builtSite);
  try {
    const { address } = host;
    await page.goto(address);
    await waitUntilKept(page);
    const heading = await page.locator('h1').first().innerText();

    await host.stop();
    expect(await reachesTheNetwork(page), 'the network must really be off').toBe(false);
    await page.reload();
    await expect(page.locator('h1').first()).toHaveText(heading);
    for (const place of ['?from=a-link#and-its-fragment', 'a-page-that-never-was']) {
      await page.goto(new URL(place, address).href);
      await expect(page.locator('h1').first()).toHaveText(heading);
    }

    host = await serveFolder(builtSite);
    expect(await reachesTheNetwork(page), 'the same fetch must get through with the network on').toBe(true);
  } finally {
    await host.stop();
  }
});

/**
 * The paths of everything that is kept.
 * @param {import('@playwright/test').Page} page
 */
const keptPaths = (page) =>
  page.evaluate(async () => {
    const paths = [];
    for (const name of await caches.keys()) {
      for (const request of await (await caches.open(name)).keys()) {
        paths.push(new URL(request.url).pathname.slice(1));
      }
    }
    return paths.sort();
  });

/** The texts of a language other than the first. @param {string} url @param {string} language */
const isSaidIn = (url, language) => url.includes(`/texts/${language}-`) || url.includes(`/words/${language}/`);

test('every built file is kept and nothing else, the texts of another language once it is spoken', async ({ page }) => {
  const { files } = await readBuild();
  const urls = files.map((file) => file.url).sort();
  await page.goto('./');
  await waitUntilKept(page);
  const inEnglish = urls.filter((url) => !isSaidIn(url, 'de') && !isSaidIn(url, 'fr'));
  expect(inEnglish.length).toBeLessThan(urls.length);
  expect(await keptPaths(page)).toEqual(inEnglish);
  await page.evaluate(() => localStorage.setItem('stillroom-language', 'de'));
  await page.reload();
  await expect.poll(() => keptPaths(page)).toEqual(urls.filter((url) => !isSaidIn(url, 'fr')));
});

test('a page in another language works without a network after one visit', async ({ browser }) => {
  const host = await serveFolder(builtSite);
  const context = await browser.newContext({ locale: 'de-DE', viewport: { width: 390, height: 844 } });
  try {
    const page = await context.newPage();
    await page.goto(host.address);
    await waitUntilKept(page);
    const { files } = await readBuild();
    const german = files.map((file) => file.url).filter((url) => isSaidIn(url, 'de'));
    await expect.poll(() => keptPaths(page)).toEqual(expect.arrayContaining(german));
    await host.stop();
    await page.goto(new URL('#jar', host.address).href);
    await page.reload();
    await expect(page.locator('main')).toContainText('Wasser gesamt');
  } finally {
    await context.close();
    await host.stop();
  }
});

test('a new version waits until it is accepted, then the page loads once more', async ({ page }) => {
  const site = await copyBuiltSite();
  const server = await serveFolder(site.folder);
  try {
    await page.goto(server.address);
    await waitUntilKept(page);
    const before = await assetsOf(page);

    await makeNextVersion(site.folder, '0123456789ab');
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
    });
    await page.waitForFunction(async () => (await navigator.serviceWorker.ready).waiting !== null);
    for (let visit = 0; visit < 3; visit += 1) {
      await page.reload();
      // A worker that pushes in does so before the browser is done with what it is asked here.
      await page.evaluate(async () => (await navigator.serviceWorker.ready).update().then(() => undefined));
      expect(await assetsOf(page), 'nothing is forced on the maker').toBe(before);
    }
    expect(await page.evaluate(async () => (await navigator.serviceWorker.ready).waiting?.state)).toBe('installed');

    // The page's own module finds the version that waits, and changes to it.
    await page.evaluate(async (source) => {
      const { registerOffline } = await import(new URL('offline.js', new URL(source, location.href)).href);
      await new Promise((resolve) => {
        const offline = registerOffline({ onUpdate: () => resolve(offline) });
        Object.assign(window, { offline });
      });
    }, String(before));
    await page.evaluate(() => Reflect.get(window, 'offline').takeOver());
    await expect(page.locator('script[src*="v-0123456789ab"]')).toHaveCount(1);

    await server.stop();
    await page.reload();
    await expect(page.locator('script[src*="v-0123456789ab"]')).toHaveCount(1);
    const caches = await page.evaluate(() => window.caches.keys());
    expect(caches, 'the old version is gone').toHaveLength(1);
    expect(caches[0]).toContain('0123456789ab');
  } finally {
    await server.stop();
    await site.remove();
  }
});

/** How a file arrives that is not the one built, by what went wrong. */
const brokenArrivals = {
  'cut short': (/** @type {string} */ page) => page.slice(0, -1),
  'changed in one letter': (/** @type {string} */ page) => page.replace('doctype', 'DOCTYPE'),
};

for (const [fault, spoil] of Object.entries(brokenArrivals)) {
  test(`a version that arrives ${fault} is refused and the old one goes on`, async ({ page }) => {
    const site = await copyBuiltSite();
    const server = await serveFolder(site.folder);
    try {
      await page.goto(server.address);
      await waitUntilKept(page);
      const before = await assetsOf(page);

      await makeNextVersion(site.folder, 'fedcba987654');
      // The list says one thing, the host serves another.
      const file = join(site.folder, 'index.html');
      const asBuilt = await readFile(file, 'utf8');
      expect(spoil(asBuilt)).not.toBe(asBuilt);
      await writeFile(file, spoil(asBuilt));
      const failure = await page.evaluate(async (source) => {
        const { registerOffline } = await import(new URL('offline.js', new URL(source, location.href)).href);
        return new Promise((resolve) => {
          registerOffline({ onFailure: resolve, onUpdate: () => resolve('an update was offered') });
          void navigator.serviceWorker.ready.then((registration) => registration.update().catch(() => {}));
        });
      }, String(before));
      expect(failure).toBe('installation');

      await server.stop();
      await page.reload();
      expect(await assetsOf(page)).toBe(before);
      expect(await page.evaluate(() => window.caches.keys())).toHaveLength(1);
    } finally {
      await server.stop();
      await site.remove();
    }
  });
}

test('the policy of the page holds', async ({ page }) => {
  /** @type {string[]} */
  const refused = [];
  page.on('console', (message) => {
    if (message.text().includes('Content Security Policy')) {
      refused.push(message.text());
    }
  });
  const response = await page.goto('./');
  expect(response?.headers()['content-security-policy']).toContain("default-src 'none'");
  const tag = page.locator('meta[http-equiv="Content-Security-Policy"]');
  expect(await tag.getAttribute('content')).toContain("script-src 'self' 'wasm-unsafe-eval'");
  await waitUntilKept(page);
  expect(refused, 'the page itself does nothing that its policy refuses').toEqual([]);

  // An inline script must not run: were it to, the policy would be no protection.
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.inlineScriptRan = true';
    document.head.append(script);
  });
  expect(await page.evaluate(() => Reflect.get(window, 'inlineScriptRan'))).toBeUndefined();
  await expect.poll(() => refused.length).toBeGreaterThan(0);
});
