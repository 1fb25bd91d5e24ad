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

const SHEET =
  'Phase\tIngredient\t%\tGrams\tCost\nA\tDistilled water\t70\t140\t£0.06\nA\tGlycerin\t5\t10\t£0.05\nB\tSunflower oil\t25\t50\t£0.40\nTotal\t\t100\t200\t£0.51\n';

test('several columns of a spreadsheet say what they were taken for and are set right', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openStillroom(page);
  await goTo(page, 'paste');
  await page.evaluate((copied) => navigator.clipboard.writeText(copied), SHEET);
  await page.getByLabel('One material to a line').focus();
  await page.keyboard.press('Control+v');
  await expect(page.getByText('3 of 3 lines found')).toBeVisible();
  await expect(page.getByText('Prices are no part of a formula and are left out: Cost')).toBeVisible();
  await expect(page.locator('.recipe-summary')).toContainText('200 g in all');
  await page.getByText('What each column holds').click();
  const column = (/** @type {string} */ name) => page.locator('.recipe-columns').getByLabel(name, { exact: true });
  await expect(column('Phase')).toHaveValue('phase');
  await expect(column('Grams')).toHaveValue('grams');
  await expect(column('Cost')).toHaveValue('price');
  // The maker knows better: what was the price is a note.
  await column('Cost').focus();
  await column('Cost').selectOption('note');
  await expect(column('Cost')).toBeFocused();
  await expect(page.getByText('Prices are no part')).toBeHidden();
  await column('%').selectOption('left-out');
  await expect(page.locator('.recipe-total')).toHaveText('100.00 %');
  await column('Cost').selectOption('price');
  await column('%').selectOption('percent');
  // One act, and one undo.
  await page.getByRole('button', { name: 'Make this a formula' }).click();
  await expect(page.locator('.lines > *')).toHaveCount(3);
  await page.locator('#history button').first().click();
  await goTo(page, 'shelf');
  await expect(page.locator('.shelf-cards .card')).toHaveCount(1);
});

test('a file in other letters is read, what is no text is refused, and what stood there comes back', async ({
  page,
}) => {
  await openStillroom(page);
  await goTo(page, 'paste');
  const area = page.getByLabel('One material to a line');
  await area.fill('water 90 %\nglycerin 10 %');
  const input = page.locator('.paste-room input[type="file"]');
  const choose = (/** @type {string} */ name, /** @type {Buffer} */ buffer) =>
    input.setInputFiles({ name, mimeType: 'application/octet-stream', buffer });
  // Signs of a picture, a workbook, something far too large: each is said, and nothing changes.
  for (const [bytes, said] of /** @type {const} */ ([
    [Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]), 'no text in this file'],
    [Buffer.from('PK\u0003\u0004and so on'), 'workbook'],
    [Buffer.alloc(300_000, 'a'), 'larger than a recipe'],
    [Buffer.from(''), 'empty'],
  ])) {
    await choose('something', bytes);
    await expect(page.getByRole('status').filter({ hasText: said })).toBeVisible();
    await expect(area).toHaveValue('water 90 %\nglycerin 10 %');
  }
  await choose('wide.txt', Buffer.from('\ufeffMandelöl 30 %\nWasser 70 %', 'utf16le'));
  await expect(page.getByRole('status').filter({ hasText: 'UTF-16' })).toBeVisible();
  await expect(page.getByText('2 of 2 lines found')).toBeVisible();
  await choose('old.csv', Buffer.from('Rohstoff;%\nMandelöl;30\nWasser;70', 'latin1'));
  await expect(page.getByRole('status').filter({ hasText: 'Latin-1' })).toBeVisible();
  await expect(page.locator('.recipe-phases').getByText('Sweet almond oil')).toBeVisible();
  await page.getByRole('button', { name: 'Bring back the text from before' }).click();
  await expect(area).toHaveValue(/Mandelöl 30 %/);
});

test('a file that is dropped is read, and the page stays', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'paste');
  const drop = (/** @type {number} */ count) =>
    page.locator('.room[data-room="paste"]').evaluate((room, files) => {
      const carried = new DataTransfer();
      for (let at = 0; at < files; at += 1)
        carried.items.add(new File(['water,60\nglycerin,40\n'], `recipe-${at}.csv`, { type: 'text/csv' }));
      const over = new DragEvent('dragover', { dataTransfer: carried, bubbles: true, cancelable: true });
      room.dispatchEvent(over);
      room.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
      return over.defaultPrevented;
    }, count);
  expect(await drop(2)).toBe(true);
  await expect(page.getByText('One file at a time')).toBeVisible();
  expect(await drop(1)).toBe(true);
  await expect(page.getByText('2 of 2 lines found')).toBeVisible();
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
