// @ts-check

// Materials: what is known of one and from where, what one has of it, and tables in and out.

import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { amountOf, goTo, openStillroom, waitUntilKept } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

/** @param {Page} page */
async function enterMaterials(page) {
  await openStillroom(page);
  await goTo(page, 'materials');
  await expect(page.locator('.hit').first()).toBeVisible();
}

/**
 * @param {Page} page
 * @param {string} name
 */
async function openCard(page, name) {
  await page.getByLabel(/^Search by name/).fill(name);
  await page
    .locator('.hit', { has: page.getByText(name, { exact: true }) })
    .last()
    .click();
  await expect(page.locator('.material-card')).toBeVisible();
}

/**
 * Hands a file to the table reader.
 * @param {Page} page
 * @param {string | Buffer} content
 */
async function readTable(page, content) {
  await page.locator('input[type=file][accept*=".csv"]').setInputFiles({
    name: 'mine.csv',
    mimeType: 'text/csv',
    buffer: typeof content === 'string' ? Buffer.from(content) : content,
  });
}

test('a card shows every value with its unit, its source and how far it may be trusted', async ({ page }) => {
  await enterMaterials(page);
  await openCard(page, 'Caffeine');
  const values = page.locator('.values dd');
  expect(await values.count()).toBeGreaterThan(5);
  for (const text of await values.locator('small').allInnerTexts()) {
    expect(text, 'each value names basis and source').toMatch(
      /^(published|computed|typical of suppliers|from memory, to be checked) · \S.*/,
    );
  }
  await expect(page.locator('.values')).toContainText('194.19');
});

test('a search forgives typing errors, accents and case, and knows CAS numbers', async ({ page }) => {
  await enterMaterials(page);
  for (const [typed, found] of [
    ['glycerin', 'Glycerin, vegetable'],
    ['GLÝCERIN', 'Glycerin, vegetable'],
    ['niacinamde', 'Niacinamide'],
    ['58-08-2', 'Caffeine'],
    ['Simmondsia', 'Jojoba oil'],
  ]) {
    await page.getByLabel(/^Search by name/).fill(typed);
    await expect(page.locator('.hit', { hasText: found }).first(), `“${typed}”`).toBeVisible();
  }
  await page.getByLabel(/^Search by name/).fill('qqqqqqqq');
  await expect(page.getByText('Nothing found.').first()).toBeVisible();
});

test('a density measured by the maker counts on this device and is marked as theirs', async ({ page }) => {
  await enterMaterials(page);
  await openCard(page, 'Sunflower seed oil');
  await page.getByText('Price, density and notes of my own').click();
  await page.getByLabel('Density, if you measured it').fill('0,8');
  await expect(page.locator('.values dd').first()).toContainText('yours');
  await page.getByLabel('Price of a pack').fill('7.50');
  await page.getByLabel('A pack holds').fill('500 g');
  await expect(page.locator('.material-card')).toContainText('1.50');
  await page.getByLabel('Density, if you measured it').fill('heavy');
  await expect(page.locator('.material-card .message:visible')).toContainText('is not a number');
  await waitUntilKept(page);
  await page.reload();
  await expect(page.locator('.hit').first()).toBeVisible();
  await openCard(page, 'Sunflower seed oil');
  await expect(page.locator('.values dd').first()).toContainText('0.80');
});

test('a bad table is reported line by line and nothing of it is taken in', async ({ page }) => {
  await enterMaterials(page);
  await page.getByText('Tables of your own materials').click();
  await readTable(
    page,
    'name,class,parts\nGood one,oil,\n=cmd|calc,oil,\nBad class,soap,\nNo such part,,2 % Unobtainium; q.s. Glycerin\n',
  );
  const report = page.locator('.report');
  await expect(report).toContainText('nothing can be taken in yet');
  await expect(report).toContainText('Line 3, name: the text begins like a formula of a spreadsheet');
  await expect(report).toContainText('Line 4, class: “soap” is no kind of material');
  await expect(report).toContainText('Line 5, parts: no material is called “Unobtainium”');
  await expect(report.getByRole('button', { name: 'Take them in' })).toHaveCount(0);

  await readTable(page, Buffer.from([0x6e, 0x61, 0x6d, 0x65, 0x0a, 0x43, 0x61, 0x66, 0xe9, 0x0a]));
  await expect(report).toContainText('Line 2 is not written in UTF-8');
  await readTable(page, 'inci,density\nAqua,1\n');
  await expect(report).toContainText('one of them must be “name”');
  await readTable(page, `name\n${'a\n'.repeat(100_000)}`);
  await expect(report).toContainText('more than 2000 lines');
  await goTo(page, 'shelf');
  await goTo(page, 'materials');
  await expect(page.locator('.hit[data-origin=own]')).toHaveCount(1);
});

test('a good table is taken in as one act, used, and saved again so that a spreadsheet runs nothing', async ({
  page,
}) => {
  await enterMaterials(page);
  await page.getByText('Tables of your own materials').click();
  await readTable(
    page,
    'name;inci;class;density;parts\nCaffeine stock;;active;1,01;"2 % Caffeine; q.s. Water, distilled"\nMy resin;Imaginaria Resin;other;;\n',
  );
  await page.getByRole('button', { name: 'Take them in' }).click();
  await expect(page.locator('.notice', { hasText: '2 materials are taken in' })).toBeVisible();
  await openCard(page, 'Caffeine stock');
  await expect(page.locator('.brought')).toContainText('98.0000');
  await page.locator('.material-card').getByLabel('Note', { exact: true }).fill('=1+1');

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save my materials as a table' }).click(),
  ]);
  const table = await readFile(await download.path(), 'utf8');
  expect(table.startsWith('\ufeffname,inci,class,phase,density,parts,note')).toBe(true);
  expect(table).toContain('Caffeine stock,,active,heated-water,1.01,"2 % Caffeine; q.s. Water, distilled",\'=1+1');

  await goTo(page, 'formula');
  await page.getByRole('button', { name: 'Add to Cool-down phase' }).click();
  await page.getByRole('dialog').getByRole('searchbox').fill('Caffeine stock');
  await page.getByRole('dialog').locator('.hit').first().click();
  await amountOf(page, 'Caffeine stock').fill('5');
  await goTo(page, 'jar');
  await expect(
    page.locator('.constituents > li', { has: page.locator('.inci', { hasText: 'Caffeine' }) }),
  ).toContainText('0.100');
});

test('the bibliography lists every source', async ({ page }) => {
  await enterMaterials(page);
  // By keyboard: at the foot of the page a notice may lie over it for some seconds.
  await page.getByText('All sources', { exact: true }).press('Enter');
  await expect(page.locator('.sources li').nth(100)).toBeVisible();
});

test('what was done before the materials room was entered is still there after it came, and can be taken back', async ({
  page,
}) => {
  await openStillroom(page);
  await goTo(page, 'formula');
  await amountOf(page, 'Betaine').fill('2.9');
  await page.evaluate(() => {
    location.hash = 'materials';
  });
  await expect(page.locator('.hit').first()).toBeVisible();
  await goTo(page, 'formula');
  await expect(amountOf(page, 'Betaine')).toHaveValue('2.90');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(amountOf(page, 'Betaine')).toHaveValue('2.00');
  await page.getByRole('button', { name: /^Redo/ }).click();
  await expect(amountOf(page, 'Betaine')).toHaveValue('2.90');
  await amountOf(page, 'Betaine').fill('3.1');
  await expect(page.locator('.takes-rest').getByRole('textbox').first()).toHaveValue('61.30');
});
