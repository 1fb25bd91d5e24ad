// @ts-check

// Pictures of every room, for somebody to look at: at phone and desk sizes, light and dark, and with text at twice its size.
// `cargo xtask pictures` serves the build, says where and leaves them in target/pictures.

import { mkdir, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';

/** @typedef {import('@playwright/test').Page} Page */

/** @type {typeof import('playwright')} */
const { chromium } = createRequire(import.meta.url)('playwright');

const { STILLROOM_ADDRESS = '', STILLROOM_PICTURES = '', STILLROOM_LANGUAGE = 'en', CHROME_PATH } = process.env;
/** Only what holds one of these words in its name, if any are given. */
const wanted = process.argv.slice(2);

const sizes = /** @type {const} */ ([
  { name: '390', width: 390, height: 844 },
  { name: '320', width: 320, height: 640 },
  { name: '1280', width: 1280, height: 800 },
  { name: '1600', width: 1600, height: 1000 },
  { name: '390-large', width: 390, height: 844, text: 32 },
  { name: '1280-large', width: 1280, height: 800, text: 32 },
]);

/** @param {string} hash @returns {(page: Page) => Promise<void>} */
const at = (hash) => async (page) => {
  await page.evaluate((name) => {
    location.hash = name;
  }, hash);
  await page.locator(`.room[data-room="${hash}"]`).waitFor();
  await page.waitForTimeout(400);
};

/** Each picture with what a hand does to come there. Later ones go on from where the earlier ones left the page. */
const scenes = /** @type {[string, (page: Page) => Promise<void>][]} */ ([
  ['shelf', async () => {}],
  ['examples', at('examples')],
  [
    'about',
    async (page) => {
      await at('about')(page);
      await page.locator('.about-numbers summary').nth(4).click();
    },
  ],
  ['formula', at('formula')],
  [
    'line',
    async (page) => {
      await page.locator('.line-title').nth(1).click();
    },
  ],
  ['jar', at('jar')],
  ['findings', at('findings')],
  [
    'plain-words',
    async (page) => {
      const fold = page.locator('.room[data-room="findings"] .explained');
      await fold.locator('summary').click();
      await fold.locator('dl').waitFor();
      await fold.scrollIntoViewIfNeeded();
    },
  ],
  [
    'finding',
    async (page) => {
      await page.locator('.found summary').first().click();
    },
  ],
  ['ph', at('ph')],
  [
    'swap',
    async (page) => {
      await at('formula')(page);
      const title = page.locator('.line-title', { hasText: 'Cucumber glycerite' });
      if ((await title.getAttribute('aria-expanded')) === 'false') await title.click();
      await page.getByRole('button', { name: 'Swap it', exact: true }).click();
      await page.locator('[data-way]').first().waitFor();
      await page.locator('[data-way="apart"] button').first().click();
      await page.locator('.swap-compared').waitFor();
    },
  ],
  ['label', at('label')],
  [
    'costs',
    async (page) => {
      await at('costs')(page);
      const costs = page.locator('.room[data-room="costs"]');
      const typed = {
        'batch.count': '12',
        'batch.volume': '50',
        'cost.price': '0.85',
        'cost.minutes': '60',
        'cost.hour': '18',
      };
      for (const [field, text] of Object.entries(typed)) await costs.locator(`[data-field="${field}"]`).fill(text);
      const row = costs.locator('.cost-buy > details').nth(2);
      await row.locator('summary').click();
      await row.locator('[data-field="holding.price"]').fill('12');
      await row.locator('[data-field="holding.pack"]').fill('100');
      await page.evaluate(() => scrollTo(0, 0));
    },
  ],
  [
    'paste',
    async (page) => {
      await at('paste')(page);
      const text =
        'Easy lotion\nA\ndistilled water q.s. to 100\nveg glycerin 4\nB\nalmond oil 12\ne-wax 6\nC\npreservative 1\nlavender EO 0.3';
      await page.locator('.recipe-text textarea').fill(text);
      await page.locator('.recipe-result').waitFor();
    },
  ],
  ['bench', at('bench')],
  ['materials', at('materials')],
  [
    'material',
    async (page) => {
      await page.locator('.hit').first().click();
      await page.waitForTimeout(200);
    },
  ],
  ['extracts', at('extracts')],
  [
    'extract-measure',
    async (page) => {
      const step = page.getByRole('radio').nth(2);
      if (await step.isVisible()) await step.check();
    },
  ],
  ['share', at('share')],
  [
    'post',
    async (page) => {
      await at('post')(page);
      await page.locator('.post-article [data-part="instead"]').waitFor();
    },
  ],
  ['post-article', async (page) => page.locator('.post-article').scrollIntoViewIfNeeded()],
  ['post-picture', async (page) => page.locator('.post-picture').scrollIntoViewIfNeeded()],
  ['batches', at('batches')],
  [
    'picker',
    async (page) => {
      await at('formula')(page);
      await page.locator('.phase .add').first().click();
      await page.waitForTimeout(200);
    },
  ],
  [
    'run',
    async (page) => {
      await page.keyboard.press('Escape');
      await page.locator('.begin').click();
      await page.locator('.run').waitFor();
      await page.locator('.run-next').click();
      await page.waitForTimeout(200);
      await page.locator('.run-next').click();
      await page.waitForTimeout(400);
    },
  ],
  [
    'over',
    async (page) => {
      await page.locator('.run-next').click();
      await page.locator('.run .card-fields input').last().fill('9999');
      await page.locator('.run .card-fields input').last().press('Enter');
      await page.waitForTimeout(300);
    },
  ],
  [
    'record',
    async (page) => {
      await page.locator('.run .choice').first().click();
      for (let count = 0; count < 120 && !(await page.locator('.finished').isVisible()); count += 1)
        await page.locator('.run-next').click();
      await page.waitForTimeout(300);
    },
  ],
]);

await rm(STILLROOM_PICTURES, { recursive: true, force: true });
await mkdir(STILLROOM_PICTURES, { recursive: true });
let count = 0;
for (const size of sizes) {
  const name = (/** @type {string} */ scheme) => `${size.name}-${scheme}`;
  const schemes = /** @type {const} */ (['light', 'dark']).filter(
    (scheme) => !wanted.some((word) => /^\d/.test(word)) || wanted.includes(name(scheme)),
  );
  if (schemes.length === 0) continue;
  const browser = await chromium.launch({
    executablePath: CHROME_PATH ?? '/usr/bin/chromium',
    args: ['--no-sandbox', ...('text' in size ? [`--blink-settings=defaultFontSize=${size.text}`] : [])],
  });
  for (const scheme of schemes) {
    const page = await browser.newPage({
      viewport: { width: size.width, height: size.height },
      colorScheme: scheme,
      locale: STILLROOM_LANGUAGE,
      hasTouch: size.width < 600,
    });
    page.setDefaultTimeout(10_000);
    page.on('pageerror', (error) => console.warn(`${name(scheme)}: ${error.message}`));
    await page.goto(STILLROOM_ADDRESS);
    await page.locator('body[data-complete]').waitFor({ timeout: 30_000 });
    for (const [scene, come] of scenes) {
      try {
        await come(page);
      } catch (problem) {
        console.warn(`${name(scheme)} ${scene}: ${problem}`);
        break;
      }
      if (wanted.some((word) => !/^\d/.test(word)) && !wanted.includes(scene)) continue;
      const file = `${STILLROOM_PICTURES}/${scene}-${name(scheme)}`;
      await page.screenshot({ path: `${file}.png` });
      count += 1;
      const wider = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      if (wider > 0) console.warn(`${scene} ${name(scheme)}: ${wider} px wider than the screen`);
    }
    await page.close();
  }
  await browser.close();
}
console.log(`${count} pictures in ${STILLROOM_PICTURES}`);
