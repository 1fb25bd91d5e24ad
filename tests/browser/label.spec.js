// @ts-check

// The label: from the invented example to printed labels of a 50 mL jar, their letters measured in the printed file.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { goTo, openStillroom } from './bench-hands.js';
import { readCodes } from './printed-codes.js';
import { readLetters } from './printed-letters.js';

/** @typedef {import('@playwright/test').Page} Page */

/** @param {Page} page */
const room = (page) => page.locator('.room[data-room="label"]');

/** Millimetres that lengths in a printed file may be off by rounding. */
const ROUNDING = 0.01;
/** Least height of a small letter on a label below 80 cm², and of the figures of 50 mL, in millimetres. */
const LEAST_LETTER = 0.9;
const LEAST_FIGURE = 2;
/** Least width of a module of a code that a phone reads from a label, in millimetres: common practice. */
const LEAST_MODULE = 0.33;

/**
 * How high small letters and figures of the typeface of labels really are on this machine, in parts of their size.
 * @param {Page} page
 */
async function heights(page) {
  return page.evaluate(() => {
    const context = document.createElement('canvas').getContext('2d');
    const text = document.querySelector('.label-art text');
    if (!context || !text) throw new Error('nothing to measure with');
    context.font = `1000px ${getComputedStyle(text).fontFamily}`;
    const high = (/** @type {string} */ letter) => context.measureText(letter).actualBoundingBoxAscent / 1000;
    return { small: Math.min(high('x'), high('z'), high('v')), figure: Math.min(...[...'0123456789'].map(high)) };
  });
}

test('from the example to printed labels of a 50 mL jar, with letters as high as they have to be', async ({ page }) => {
  test.setTimeout(90_000);
  await openStillroom(page);
  await goTo(page, 'formula');
  await page.getByRole('navigation', { name: 'Formula' }).getByRole('link', { name: 'Label' }).click();
  const label = room(page);
  await expect(label.locator('.label-declaration')).toContainText('Ingredients: Aqua, Glycerin, ');
  await expect(label).toContainText('Name and address of the responsible person');
  await label.getByLabel('Container').selectOption('jar-50');
  await label.getByLabel('Name of who answers for it').fill('Hedgerow Soaps (invented)');
  await label.getByLabel('Address').fill('1 Invented Lane, Nowhere');
  await label.getByLabel('Lot', { exact: true }).fill('13 11 26 A');
  await label.getByLabel('Labels', { exact: true }).fill('10');
  await expect(label).not.toContainText('Name and address of the responsible person');
  await expect(label.getByText('10 labels on 2 sheets of A4, 8 to a sheet.')).toBeVisible();
  const art = label.locator('.label-art');
  await expect(art).toHaveAttribute('width', '180mm');
  await expect(art).toContainText('13 11 26 A');
  await expect(art).toContainText('50 mL');
  const { small, figure } = await heights(page);
  const declared = (await label.locator('.label-declaration').textContent())?.replace('Ingredients: ', '') ?? '';

  await page.emulateMedia({ media: 'print' });
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
  const pages = readLetters(pdf);
  expect(pages.length).toBe(2);
  for (const { width, height } of pages) {
    expect(width).toBeCloseTo(210, 0);
    expect(height).toBeCloseTo(297, 0);
  }
  const runs = pages.flatMap((each) => each.runs);
  // Ten labels, the name of the product and every ingredient on each.
  expect(runs.length).toBeGreaterThan(100);
  const heightOf = (/** @type {number} */ size) => size * small;
  const smallest = Math.min(...runs.map(({ size }) => heightOf(size)));
  expect(smallest).toBeGreaterThanOrEqual(LEAST_LETTER - ROUNDING);
  // The contents stand in the largest figures but those of the name.
  const said = label.locator('.label-desk .figure', { hasText: 'Figures of the contents' });
  await page.emulateMedia({ media: 'screen' });
  await expect(said).toContainText('at least 2 mm');
  const contents = await art.locator('text', { hasText: /^50\smL$/ }).getAttribute('font-size');
  const printed = runs.filter(({ size }) => Math.abs(size - Number(contents)) < 0.02);
  expect(printed.length).toBeGreaterThanOrEqual(10);
  expect(Number(contents) * figure).toBeGreaterThanOrEqual(LEAST_FIGURE - ROUNDING);
  // What is drawn is what is declared, word for word.
  const drawn = (await art.locator('text').allTextContents()).join(' ').replaceAll(/\s+/g, ' ');
  expect(drawn).toContain(declared.replaceAll(/\s+/g, ' '));
});

test('a label that does not fit says so, and another outline does; it is copied at one tap @desk', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openStillroom(page);
  await goTo(page, 'label');
  const label = room(page);
  await label.getByLabel('Width').fill('30');
  await label.getByLabel('Height').fill('12');
  await expect(label.getByText(/does not fit on 30 by 12\smm/)).toBeVisible();
  await expect(label.locator('.label-art')).toHaveCount(0);
  await expect(label.getByRole('button', { name: 'Print the labels' })).toBeHidden();
  await label.getByLabel('Container').selectOption('lid-50');
  await expect(label.locator('.label-art[data-shape="round"]')).toBeVisible();
  await label.getByLabel('Sold or given away in').selectOption('us');
  await expect(label.locator('.label-declaration')).toContainText('Ingredients: Water, Glycerin');
  await label.getByRole('button', { name: 'Copy the ingredients' }).click();
  await expect(label.getByText('Copied.')).toBeVisible();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  expect(copied).toBe(await label.locator('.label-declaration').textContent());
  await label.getByLabel('What it does and how it is used').fill('Heals eczema');
  await expect(label.getByText(/“Heals”.*makes it a medicine/)).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).include('.room[data-room="label"]').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  // It stays on the device.
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await expect(room(page).getByLabel('Sold or given away in')).toHaveValue('us');
});

test('an address is read back from the printed code of every label, in modules a phone reads', async ({ page }) => {
  test.setTimeout(90_000);
  await openStillroom(page);
  await goTo(page, 'label');
  const label = room(page);
  const address = label.getByLabel('Your page on the web');
  await address.fill('my page');
  await expect(label.getByText('An address has no space in it')).toBeVisible();
  await address.fill('maker.example/cucumber');
  await label.getByLabel('On the label').selectOption('code');
  await label.getByLabel('Labels', { exact: true }).fill('3');
  for (const [container, paper] of [
    ['jar-50', 'a4'],
    ['lid-50', 'letter'],
    ['tube-50', 'a4'],
  ]) {
    await label.getByLabel('Container').selectOption(container ?? '');
    await label.getByLabel('Paper').selectOption(paper ?? '');
    await expect(label.locator('.label-art').getByText('50 mL')).toBeVisible();
    await expect(label.locator('.label-drawn .label-code')).toHaveCount(1);
    await page.emulateMedia({ media: 'print' });
    const pages = readLetters(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
    await page.emulateMedia({ media: 'screen' });
    const codes = pages.flatMap(({ dark }) => readCodes(dark));
    // Nothing but the address is in it.
    expect(codes.map(({ text }) => text)).toEqual(Array.from({ length: 3 }, () => 'https://maker.example/cucumber'));
    for (const { module, side } of codes) {
      expect(module).toBeGreaterThanOrEqual(LEAST_MODULE - ROUNDING);
      // 30 bytes at correction M are version 3, 29 modules (ISO/IEC 18004, tables 1 and 7).
      expect(side / module).toBeCloseTo(29, 1);
    }
    // Four modules around it are empty: no letters reach into them.
    const gaps = pages.flatMap(({ runs, dark }) =>
      runs.map(({ x, y, size }) => {
        const nearest = dark.map((bar) =>
          Math.max(bar.x - x, x - bar.x - bar.width, bar.y - (y + size * 0.7), y - bar.y - bar.height),
        );
        return Math.min(...nearest);
      }),
    );
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(4 * LEAST_MODULE - ROUNDING);
  }
  // What does not fit is said, and not drawn.
  await label.getByLabel('Container').selectOption('jar-50');
  await label.getByLabel('Height').fill('24');
  await address.fill(`maker.example/${'a'.repeat(180)}`);
  await expect(label.getByText('The QR code does not fit on this label')).toBeVisible();
  await expect(label.locator('.label-code')).toHaveCount(0);
  await expect(label.locator('.label-drawn .label-art')).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).include('.room[data-room="label"]').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
});
