// @ts-check

// What must not be lost or hidden while a maker works: trouble with the storage stands on the screen of a run, every
// reading that was filled in is kept, and the undo of a notice takes back its own act.

import { expect, test } from '@playwright/test';
import { amountOf, goTo, openStillroom, waitForTheWhole, waitUntilKept } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

/** @param {Page} page */
async function beginBatch(page) {
  await page.goto('./#batches');
  await page.getByRole('button', { name: /^Make 210 g/ }).click();
  await expect(page.locator('.run')).toBeVisible();
}

/** @param {Page} page @param {string} wanted */
async function goOnTo(page, wanted) {
  for (let count = 0; count < 60; count += 1) {
    if ((await page.locator('.run').getAttribute('data-step'))?.startsWith(wanted)) return;
    await page.locator('.run-next').click();
  }
  throw new Error(`no step ${wanted}`);
}

/** Fills local storage to the last byte. @param {Page} page */
async function fillStorage(page) {
  await page.evaluate(() => {
    let piece = 'x'.repeat(1 << 20);
    for (let at = 0; piece.length > 0; at += 1) {
      try {
        localStorage.setItem(`ballast${at}`, piece);
      } catch {
        piece = piece.slice(0, piece.length >> 1);
      }
    }
  });
}

test('what is typed between keeping a change and checking it is kept, too', async ({ page }) => {
  // A page that takes its time: each wait for rest is long enough for a hand to come between.
  await page.addInitScript(() => {
    globalThis.requestIdleCallback = (act) =>
      Number(setTimeout(() => act({ didTimeout: true, timeRemaining: () => 0 }), 800));
  });
  await openStillroom(page);
  await waitForTheWhole(page);
  await goTo(page, 'formula');
  const kept = () => page.evaluate(() => JSON.stringify(localStorage));
  await amountOf(page, 'Squalane').fill('4.25');
  await expect.poll(kept).toContain('4.25');
  await amountOf(page, 'Squalane').fill('4.75');
  await expect.poll(kept).toContain('4.75');
  await waitUntilKept(page);
});

test('storage that is full is said on the screen of a run, and leaving it does not call it kept', async ({ page }) => {
  await beginBatch(page);
  await fillStorage(page);
  await page.locator('.run-next').click();
  const alert = page.locator('.run .alert.stop');
  await expect(alert).toBeVisible();
  await expect(alert).toContainText(/full/i);
  // Nothing lies over it.
  const box = await alert.boundingBox();
  const top = await page.evaluate(
    ([x, y]) => document.elementFromPoint(x, y)?.closest('.alert') !== null,
    [(box?.x ?? 0) + 20, (box?.y ?? 0) + 10],
  );
  expect(top).toBe(true);
  await page.getByRole('button', { name: 'Leave the run' }).click();
  const dialog = page.getByRole('alertdialog');
  await expect(dialog).toContainText('Not everything of this run is kept');
  await expect(dialog).not.toContainText('is kept as it stands');
  await dialog.getByRole('button', { name: 'Stay' }).click();
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage)) if (key.startsWith('ballast')) localStorage.removeItem(key);
  });
  await page.locator('.run-next').click();
  await expect(alert).toBeHidden();
  await page.getByRole('button', { name: 'Leave the run' }).click();
  await expect(dialog).toContainText('is kept as it stands');
  await dialog.getByRole('button', { name: 'Leave', exact: true }).click();
  // Outside the run trouble stands at the head of the page again.
  await expect(page.locator('main .alert')).toHaveCount(0);
  expect(await page.evaluate(() => document.getElementById('alerts')?.nextElementSibling?.id)).toBe('main');
});

test('a reading typed beside the large area is kept by whatever leaves the step', async ({ page }) => {
  await beginBatch(page);
  await goOnTo(page, 'heat');
  const temperature = page.locator('.run .card-field input').first();
  await temperature.fill('72');
  await page.locator('.run-next').click();
  const record = page.locator('.so-far');
  await page.getByRole('button', { name: 'All steps' }).click();
  await page.locator('.run-list summary').click();
  await expect(record).toContainText('72');
});

test('a pour that was typed is kept when another step is chosen from the list', async ({ page }) => {
  await beginBatch(page);
  await goOnTo(page, 'weigh');
  await page.getByLabel('What the scale shows').fill('60.5');
  await page.getByRole('button', { name: 'All steps' }).click();
  await page.locator('.run-steps button').first().click();
  await page.getByRole('button', { name: 'All steps' }).click();
  await page.locator('.run-list summary').click();
  await expect(page.locator('.so-far')).toContainText('60.5');
});

test('of two notices the first can no longer take back what the second did', async ({ page }) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await goTo(page, 'shelf');
  await page.locator('.card .more').first().click();
  const copy = page.locator('.card .tools:visible button').first();
  await copy.click();
  await copy.click();
  await expect(page.locator('.card')).toHaveCount(3);
  for (const count of [2, 1]) {
    const more = page.locator('.card .more').last();
    if ((await more.getAttribute('aria-expanded')) !== 'true') await more.click();
    await page.locator('.card').last().locator('.take-out').click();
    await expect(page.locator('.card')).toHaveCount(count);
  }
  // One line, and what it takes back is what was done last.
  const said = page.locator('.notice', { hasText: 'Cucumber and oat gel cream' });
  await expect(said).toHaveCount(1);
  await expect(page.locator('.notice').getByRole('button', { name: 'Undo' })).toHaveCount(1);
  await said.getByRole('button', { name: 'Undo' }).click();
  await expect(page.locator('.card')).toHaveCount(2);
});
