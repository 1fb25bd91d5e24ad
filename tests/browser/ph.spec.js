// @ts-check

// The pH: the example predicted, brought to a target and taken back; and a run whose pH misses, is titrated and corrected.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { goTo, openAbout, openStillroom } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

/** @param {Page} page */
async function preservationFindings(page) {
  return page.locator('.found > li[data-finding^="preservation."]').evaluateAll((items) => {
    return items.map((item) => /** @type {HTMLElement} */ (item).dataset.finding).sort();
  });
}

/** @param {Page} page */
const offer = (page) => page.locator('[data-offer="set"]');

test('the example is predicted, brought to pH 5.0 at one tap, and its preservatives act @desk', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'formula');
  // Nothing is aimed at: the checks read what it comes to.
  await openAbout(page);
  await page.getByLabel('pH', { exact: true }).fill('');
  await page.getByLabel('pH', { exact: true }).blur();
  await goTo(page, 'findings');
  // The checks speak when the page is at rest: at the pH it comes to, hardly any of the preservative acts.
  await expect.poll(() => preservationFindings(page)).not.toEqual([]);
  const before = await preservationFindings(page);
  await goTo(page, 'formula');
  await page.getByRole('navigation', { name: 'Formula' }).getByRole('link', { name: 'pH' }).click();
  const predicted = page.locator('.ph-predicted b');
  await expect(predicted).toHaveText(/^[678]\.\d$/);
  await expect(page.locator('.ph-counts')).toContainText(/predicted|too wide/);
  await expect(page.locator('.room[data-room="ph"]')).toContainText('Sodium Benzoate');
  await offer(page).getByLabel('Bring it to pH').fill('5.0');
  await expect(offer(page).locator('.offer-lines li').first()).toHaveText(/^Citric acid: 0\.\d+\s%$/);
  await expect(offer(page).locator('.offer-lines')).toContainText(/in a batch of 210\sg/);
  await offer(page).getByRole('button', { name: 'Put it into the formula' }).click();
  await expect(predicted).toHaveText(/^(4\.9|5\.0|5\.1)$/);
  await expect(page.locator('[data-plot]')).toHaveCount(3);
  for (const picture of await page.locator('svg.plot').all()) {
    await expect(picture).toHaveAttribute('aria-label', /\d/);
  }
  const { violations } = await new AxeBuilder({ page }).include('.room[data-room="ph"]').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  await goTo(page, 'findings');
  await expect.poll(() => preservationFindings(page)).not.toEqual(before);
  const after = await preservationFindings(page);
  expect(after.filter((key) => key?.startsWith('preservation.missing'))).toEqual([]);
  await goTo(page, 'formula');
  await expect(page.getByLabel('Amount of Citric acid', { exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Undo: pH set' }).click();
  await expect(page.getByLabel('Amount of Citric acid', { exact: true })).toHaveCount(0);
  await goTo(page, 'findings');
  await expect.poll(() => preservationFindings(page)).toEqual(before);
});

test('a caustic is offered with its cautions, and they stand on the weigh sheet and on paper', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'ph');
  await offer(page).getByLabel('Bring it to pH').fill('9');
  await offer(page).getByLabel('With', { exact: true }).selectOption({ label: 'Sodium hydroxide' });
  await expect(offer(page).locator('.handling')).toContainText('goggles');
  await offer(page).getByRole('button', { name: 'Put it into the formula' }).click();
  await goTo(page, 'bench');
  await expect(page.locator('.weigh-sheet .handling')).toContainText('never water onto it');
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.weigh-sheet .handling')).toBeVisible();
});

test('a run whose pH reads 6.4 against 5.5 is titrated and corrected, and the record tells all of it', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await openStillroom(page);
  await goTo(page, 'formula');
  await openAbout(page);
  await page.getByLabel('pH', { exact: true }).fill('5.5');
  await page.getByLabel('pH', { exact: true }).blur();
  await goTo(page, 'batches');
  await page.getByRole('button', { name: /^Make 210 g/ }).click();
  const run = page.locator('.run');
  for (let count = 0; count < 60; count += 1) {
    if (await run.getByLabel('pH of the batch').isVisible()) break;
    await page.locator('.run-next').click();
  }
  await run.getByLabel('pH of the batch').fill('6.4');
  await page.locator('.run-next').click();
  await expect(run).toContainText('pH 6.4 is above the 5.5 aimed at');
  await run.getByLabel('Water it is diluted with').fill('40');
  await run.getByLabel('Weigh out a sample').fill('10');
  await run.getByRole('button', { name: 'Take it' }).click();
  const note = async (/** @type {string} */ ph) => {
    await run.getByRole('textbox', { name: 'pH of the sample' }).fill(ph);
    await run.getByRole('textbox', { name: 'pH of the sample' }).press('Enter');
  };
  await note('6.4');
  await run.getByLabel('20 drops of it weigh').fill('1');
  await run.getByLabel('20 drops of it weigh').press('Enter');
  await run.getByLabel('Drops added').fill('1');
  await run.getByLabel('Drops added').press('Enter');
  await note('5.7');
  await expect(run.locator('.curve-picture')).toHaveAttribute('aria-label', /through 2 readings/);
  await expect(run.locator('.curve-picture .read')).toHaveCount(2);
  await expect(run).toContainText('Add now: 80');
  await run.getByRole('button', { name: /into the batch.*80/ }).click();
  await expect(run).toContainText('read the batch again');
  await run.getByLabel('pH of the batch').fill('5.5');
  await page.locator('.run-next').click();
  // The target is reached, and is itself outside of what benzoate bears.
  await expect(run).toContainText('outside the window of Sodium Benzoate');
  await expect(run).not.toContainText('the 5.5 aimed at');
  await run.getByRole('button', { name: /^Leave it and write it down/ }).click();
  await expect(run.getByLabel('pH of the batch')).toHaveCount(0);
  await run.getByRole('button', { name: 'All steps' }).click();
  await run.getByText('The record so far').click();
  for (const told of [
    'Batch: pH 6.4',
    'Sample of 10 g taken, diluted with 40 g of water',
    '20 drops weigh 1 g',
    'Sample: pH 5.7',
    'of the solution into the batch',
    'Batch: pH 5.5',
  ]) {
    await expect(run).toContainText(told);
  }
  // The finished record says the same, and what was corrected and taken.
  await run.getByRole('button', { name: 'All steps' }).click();
  const record = page.locator('.record').first();
  for (let count = 0; count < 6 && !(await record.isVisible()); count += 1) await page.locator('.run-next').click();
  for (const told of ['Batch: pH 6.4', 'Batch: pH 5.5', 'pH corrected with', 'Taken for samples']) {
    await expect(record).toContainText(told);
  }
});
