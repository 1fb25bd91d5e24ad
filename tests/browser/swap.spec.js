// @ts-check

// Making it with what one has: the example's glycerite for simples, a shelf that lacks the emulsifier, a reader in an embedded
// element who lacks a line; and links from before there was any of this.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { amountOf, goTo, openStillroom } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

const golden = async (/** @type {string} */ name) =>
  (await readFile(new URL(`../../crates/exchange/golden/${name}.txt`, import.meta.url), 'utf8')).trim();

/** @param {Page} page */
const room = (page) => page.locator('.room[data-room="swap"]');

/** @param {Page} page @param {string} name */
async function swapLine(page, name) {
  await goTo(page, 'formula');
  await page.locator('.line-title', { hasText: name }).click();
  await page.getByRole('button', { name: 'Swap it', exact: true }).click();
  await expect(room(page).getByLabel('Which line')).toHaveValue(/\d/, { timeout: 20_000 });
}

test('the glycerite is swapped for its simples, compared, taken and taken back @desk', async ({ page }) => {
  /** @type {string[]} */
  const fetched = [];
  page.on('request', (request) => fetched.push(request.url()));
  await openStillroom(page);
  expect(fetched.filter((url) => url.includes('split_swap'))).toEqual([]);
  await swapLine(page, 'Cucumber glycerite, lot 7 (invented)');
  const note = room(page).getByLabel('What readers can take instead');
  await note.fill('Glycerin and cucumber water do as well.');
  const apart = room(page).locator('[data-way="apart"]');
  await expect(apart).toContainText('Glycerin');
  await apart.getByRole('button').click();
  const compared = room(page).locator('.swap-compared');
  await expect(compared.locator('.swap-summary')).toContainText('7.80');
  await expect(compared.locator('tr[data-fate="gone"]')).toContainText('glycerite');
  await expect(compared.locator('svg.swap-layers')).toHaveCount(2);
  for (const bar of await compared.locator('svg.swap-layers').all()) {
    await expect(bar).toHaveAttribute('aria-label', /Water.*%/);
  }
  const { violations } = await new AxeBuilder({ page }).include('.room[data-room="swap"]').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  await compared.getByRole('button', { name: 'Put it into the formula' }).click();
  await goTo(page, 'formula');
  await expect(amountOf(page, 'Glycerin, vegetable')).toHaveValue('7.80');
  await page.getByRole('button', { name: 'Undo: made with what you have' }).click();
  await expect(amountOf(page, 'Cucumber glycerite, lot 7 (invented)')).toBeVisible();
  // The author's own words are still there.
  await swapLine(page, 'Cucumber glycerite, lot 7 (invented)');
  await expect(room(page).getByLabel('What readers can take instead')).toHaveValue(/cucumber water/);
});

test('the formula is rebuilt from a shelf that lacks its emulsifier', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'swap');
  await room(page).getByRole('radio', { name: 'From my shelf' }).check();
  const missing = room(page).getByRole('checkbox', { name: /^Cetearyl olivate and sorbitan olivate/ });
  await missing.check();
  await expect(room(page)).toContainText('Nothing on the shelf does the job of Cetearyl olivate and sorbitan olivate');
  // Another one is found in the stores.
  await goTo(page, 'materials');
  await page.getByRole('searchbox').first().fill('cetearyl alcohol and cetearyl glucoside');
  await page
    .getByRole('button', { name: /^Cetearyl alcohol and cetearyl glucoside/ })
    .first()
    .click();
  await page.locator('[data-field="holding.stock"]').fill('100 g');
  await goTo(page, 'swap');
  await expect(room(page)).toContainText('stands in for Cetearyl olivate and sorbitan olivate');
  const compared = room(page).locator('.swap-compared');
  await expect(compared.locator('tr[data-fate="new"]')).toContainText('cetearyl glucoside');
  await compared.getByRole('button', { name: 'Put it into the formula' }).click();
  await goTo(page, 'formula');
  await expect(amountOf(page, 'Cetearyl alcohol and cetearyl glucoside')).toBeVisible();
});

test('a figure is hit, and one that cannot be names what is in the way', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'swap');
  await room(page).getByRole('radio', { name: 'Hit a figure' }).check();
  const target = room(page).getByLabel(/^To/);
  await target.fill('9');
  await expect(room(page).locator('.swap-summary')).toContainText('13.8');
  await room(page).getByLabel('Bring to a figure').selectOption('oil');
  await target.fill('99');
  await expect(room(page).getByRole('status').filter({ hasText: 'This cannot all be kept' })).toBeVisible();
});

test('a reader of an embedded formula lacks a line and gets a weighed sheet of their own', async ({
  page,
  baseURL,
}) => {
  const origin = new URL(baseURL ?? '').origin;
  await openStillroom(page);
  await swapLine(page, 'Squalane');
  await room(page).getByLabel('What readers can take instead').fill('Jojoba oil does as well.');
  await goTo(page, 'share');
  await expect(page.getByLabel('The link', { exact: true })).toHaveValue(/#f=/);
  const link = new URL(await page.getByLabel('The link', { exact: true }).inputValue()).hash;
  /** @type {string[]} */
  const fetched = [];
  page.on('request', (request) => fetched.push(request.url()));
  await page.goto(`${origin}/embed/frame.html?batch=50%20g&unit=g${link}`);
  const sheet = page.locator('.shared-sheet');
  await expect(sheet).toBeVisible({ timeout: 30_000 });
  expect(fetched.filter((url) => /split_(swap|whole)/.test(url))).toEqual([]);
  await sheet.getByRole('button', { name: 'I don’t have this: Squalane' }).click();
  const box = sheet.locator('.sheet-without');
  await expect(box).toContainText('The author says: Jojoba oil does as well.', { timeout: 30_000 });
  expect(fetched.some((url) => url.includes('split_swap'))).toBe(true);
  await expect(sheet.locator('.sheet-whose')).toContainText('your version, not the author’s');
  const lines = sheet.locator('table').first();
  await expect(lines.getByRole('rowheader', { name: /^Squalane/ })).toHaveCount(0);
  await expect(lines.locator('tfoot')).toContainText('50');
});

test('a reader of the example lacks squalane: another oil is weighed, and it is called their own version', async ({
  page,
}) => {
  await page.goto(`./#${await golden('link-1-example')}`);
  const sheet = page.locator('.shared-sheet');
  await sheet.getByRole('button', { name: 'I don’t have this: Squalane' }).click({ timeout: 30_000 });
  await expect(sheet.locator('.sheet-whose')).toContainText('your version, not the author’s', { timeout: 30_000 });
  await expect(
    sheet
      .locator('table')
      .first()
      .getByRole('rowheader', { name: /^Squalane/ }),
  ).toHaveCount(0);
  await sheet.getByLabel('Batch to make').fill('50 g');
  await expect(sheet.locator('tfoot').first()).toContainText('50');
  await sheet.getByRole('button', { name: 'I have it after all: Squalane' }).click();
  await expect(
    sheet
      .locator('table')
      .first()
      .getByRole('rowheader', { name: /^Squalane/ }),
  ).toBeVisible();
  await expect(sheet.locator('.sheet-whose')).toBeHidden();
});

for (const name of ['link-1-example', 'link-1-orchard', 'link-1-everything', 'link-2-kind', 'link-3-substitution']) {
  test(`a link from before opens: ${name}`, async ({ page }) => {
    await page.goto(`./#${await golden(name)}`);
    await expect(page.locator('.shared-sheet .sheet-name')).not.toBeEmpty({ timeout: 30_000 });
    await expect(page.locator('.shared-sheet .sheet-lack').first()).toBeVisible();
  });
}
