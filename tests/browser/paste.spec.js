// @ts-check

// A recipe that a maker already has, pasted.

import { expect, test } from '@playwright/test';
import { amountOf, goTo, openStillroom, waitForTheWhole } from './bench-hands.js';

const TWELVE = `Easy lotion
distilled water 67.4 %
veg glycerin 4 %
xanthan 0.3 %
almond oil 12 %
shea 4 %
e-wax 6 %
cetyl alcohol 2 %
vit E 0.5 %
panthenol 2 %
lavender EO 0.3 %
phenoxyethanol 1 %
k sorbate 0.5 %`;

test('twelve lines pasted are a formula after three taps', async ({ page }, { project }) => {
  await openStillroom(page);
  let taps = 0;
  const tap = async (/** @type {import('@playwright/test').Locator} */ target) => {
    await target.click();
    taps += 1;
  };
  await tap(page.getByRole('button', { name: 'Paste a recipe' }));
  const area = page.getByLabel('One material to a line');
  await expect(area).toBeVisible({ timeout: 20_000 });
  // To paste is one act of the hand: a long press and a tap on a phone, two keys on a desk.
  await area.fill(TWELVE);
  taps += 1;
  await expect(page.getByRole('status').filter({ hasText: '12 of 12 lines found' })).toBeVisible();
  await tap(page.getByRole('button', { name: 'Make this a formula' }));
  await expect(
    page.getByRole('heading', { name: 'Easy lotion' }).or(page.getByText('Easy lotion')).first(),
  ).toBeVisible();
  await expect(page.locator('.lines > *')).toHaveCount(12);
  await expect(amountOf(page, 'Glycerin, vegetable')).toHaveValue('4.00');
  console.log(`${project.name}: 12 lines pasted: ${taps} taps, no letter typed`);
  expect(taps).toBeLessThanOrEqual(3);
  // One act, taken back as one.
  await page.locator('#history button').first().click();
  await goTo(page, 'shelf');
  await expect(page.getByText('Easy lotion')).toHaveCount(0);
});

test('what is not plain is asked, and nothing is dropped', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'paste');
  await page
    .getByLabel('One material to a line')
    .fill('water 79 %\npreservative 1 %\nviolet leaf milk 20 %\nStir it all for a long while, then bottle it.');
  await expect(page.getByText('1 of 3 lines found')).toBeVisible();
  await expect(page.locator('.recipe-asked .recipe-line')).toHaveCount(2);
  const choice = page.locator('.recipe-asked .recipe-line').first().locator('.recipe-choice').first();
  const chosen = (await choice.textContent()) ?? '';
  await choice.click();
  await expect(page.getByText('2 of 3 lines found')).toBeVisible();
  await expect(page.locator('.recipe-phases').getByText(chosen)).toBeVisible();
  await page.getByText('Other lines').click();
  await expect(page.locator('.recipe-others').getByText('Stir it all for a long while')).toBeVisible();
  await page.getByRole('button', { name: 'Make this a formula' }).click();
  await expect(page.locator('.lines > *')).toHaveCount(3);
  await expect(amountOf(page, 'violet leaf milk')).toHaveValue('20.00');
});

test('a file with columns is read the same way', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'paste');
  const table =
    'Phase;Rohstoff;%\nA;Destilliertes Wasser;62,4\nA;Glycerin;5\nB;Mandelöl;25\nB;Glycerinstearat;7\nC;Vitamin E;0,6\n';
  await page
    .locator('.paste-room input[type="file"]')
    .setInputFiles({ name: 'recipe.csv', mimeType: 'text/csv', buffer: Buffer.from(table) });
  await expect(page.getByText('5 of 5 lines found')).toBeVisible();
  await expect(page.locator('.recipe-total')).toHaveText('100.00 %');
  await expect(page.locator('.recipe-phases h4')).toHaveCount(3);
});

test('a material that nobody knows is described from the picker, and the line has it', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'formula');
  await waitForTheWhole(page);
  await page
    .getByRole('button', { name: /^Add to/ })
    .first()
    .click();
  const picker = page.locator('dialog.picker');
  await picker.getByRole('searchbox').fill('quince seed gel');
  await picker.getByRole('button', { name: 'Describe “quince seed gel”' }).click();
  await expect(picker).toBeHidden();
  await expect(amountOf(page, 'quince seed gel')).toBeVisible();
});
