// @ts-check

// A maker publishes a formula; a reader opens it, compares it, keeps a copy. Nothing of the reader's is ever overwritten.

import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { amountOf, goTo, openStillroom, waitForTheWhole, waitUntilKept } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

/**
 * The link of the open formula.
 * @param {Page} page
 */
export async function linkOf(page) {
  await goTo(page, 'share');
  return page.getByLabel('The link', { exact: true }).inputValue();
}

/** @param {Page} page */
async function storedTexts(page) {
  return page.evaluate(() => JSON.stringify(Object.entries(localStorage).sort()));
}

const example = (
  await readFile(new URL('../../crates/exchange/golden/link-1-example.txt', import.meta.url), 'utf8')
).trim();

test('a maker shares a formula and a reader opens it, asks for another batch and keeps a copy @desk', async ({
  page,
  browser,
}) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await goTo(page, 'formula');
  await amountOf(page, 'Squalane').fill('5.5');
  await page.getByRole('link', { name: 'Share', exact: true }).click();
  const link = await page.getByLabel('The link', { exact: true }).inputValue();
  expect(link.split('#')[1].length).toBeLessThanOrEqual(300);
  await expect(page.getByRole('img', { name: 'QR code that opens Cucumber and oat gel cream' })).toBeVisible();

  const reader = await (await browser.newContext()).newPage();
  await reader.goto(link);
  await expect(reader.getByRole('heading', { name: 'A formula that was shared with you' })).toBeVisible({
    timeout: 20_000,
  });
  await expect(reader.locator('.shared-sheet').getByRole('rowheader', { name: 'Squalane' })).toBeVisible();
  await expect(reader.locator('.shared-sheet tr', { hasText: 'Squalane' }).first()).toContainText('5.50');
  // The example on the reader's shelf has the same number and another percent.
  await expect(reader.getByText('You have another version of this formula.')).toBeVisible();
  await reader.getByText('What is different from yours').click();
  await expect(reader.locator('.changes').first().locator('tr', { hasText: 'Squalane' })).toContainText('+1.50');

  const before = await storedTexts(reader);
  await reader.getByLabel('Batch to make').fill('50 g');
  await expect(reader.locator('.shared-sheet tr', { hasText: 'glycerite' }).first()).toContainText('6.0');
  await reader.getByLabel('Batch to make').fill('a bowlful');
  await expect(reader.locator('.shared-sheet .sheet-field .message')).toBeVisible();
  await expect(
    reader.locator('.shared-sheet tr', { hasText: 'glycerite' }).first(),
    'the maker’s batch stays',
  ).toContainText('25.2');
  expect(await storedTexts(reader), 'reading keeps nothing').toBe(before);

  await reader.getByRole('button', { name: 'Keep a copy' }).click();
  await expect(reader.locator('[data-room="formula"].room')).toBeVisible();
  await expect(reader.getByLabel('Name of the formula')).toHaveValue('Cucumber and oat gel cream (from a link)');
  await waitUntilKept(reader);
  await reader.reload();
  await reader.waitForSelector('body[data-ready]');
  await goTo(reader, 'shelf');
  await expect(reader.locator('.card-name', { hasText: 'Cucumber and oat gel cream' })).toHaveCount(2);
  await reader.context().close();
});

test('something is tried on a copy and compared with the formula it came from', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'share');
  await page.getByRole('button', { name: 'Try something: work on a copy' }).click();
  await expect(page.getByLabel('Name of the formula')).toHaveValue('Cucumber and oat gel cream, copy');
  await amountOf(page, 'Squalane').fill('6');
  await goTo(page, 'share');
  await page.getByLabel('Compare it with another formula').selectOption('Cucumber and oat gel cream');
  const row = page.locator('.changes').first().locator('tr', { hasText: 'Squalane' });
  await expect(row).toContainText('6.00');
  await expect(row).toContainText('+2.00');
});

test('a link that is damaged, cut off or of a later version is said so, and the shelf stays', async ({ page }) => {
  await openStillroom(page);
  await waitUntilKept(page);
  const before = await storedTexts(page);
  const changed = example.slice(0, 40) + (example[40] === 'A' ? 'B' : 'A') + example.slice(41);
  for (const [fragment, word] of [
    [example.slice(0, -6), 'cut off'],
    [changed, 'damaged'],
    ['f=AgFhQ7jEqA', 'damaged'],
    [`f=${'A'.repeat(70_000)}`, 'more than a link may'],
  ]) {
    await page.goto('about:blank');
    await page.goto(`./#${fragment}`);
    await expect(page.getByRole('alert').filter({ hasText: word })).toBeVisible({ timeout: 20_000 });
    await page.getByRole('button', { name: 'To your shelf' }).click();
    await expect(page.locator('.card-name').first()).toBeVisible();
  }
  expect(await storedTexts(page)).toBe(before);
});

test('a reader opens a shared link offline', async ({ page, context }) => {
  await openStillroom(page);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await waitForTheWhole(page);
  await context.setOffline(true);
  await page.goto('about:blank');
  await page.goto(`./#${example}`);
  await expect(page.getByRole('heading', { name: 'A formula that was shared with you' })).toBeVisible({
    timeout: 20_000,
  });
  await page.goBack();
  await context.setOffline(false);
});

/** Script in every text field of a formula, its batch and an extract; then everywhere it is shown. Names of materials: main-job.spec.js. */
test('script text in every field stays text', async ({ page }) => {
  const hostile = `"><img src=x onerror="window.ran=1"><script>window.ran=2</script>\u202e\u0000{{7*7}}`;
  /** @type {string[]} */
  const dialogs = [];
  page.on('dialog', (dialog) => {
    dialogs.push(dialog.message());
    void dialog.dismiss();
  });
  /** @type {string[]} */
  const complaints = [];
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`${page.url()}: ${message.text()}`);
  });
  await openStillroom(page);
  await waitForTheWhole(page);
  let filled = 0;
  for (const room of ['formula', 'bench', 'materials', 'extracts', 'shelf']) {
    await goTo(page, room);
    await page.evaluate((where) => {
      for (const key of document.querySelectorAll(
        `.room[data-room="${where}"] [aria-expanded="false"], .room[data-room="${where}"] details:not([open]) > summary`,
      )) {
        /** @type {HTMLElement} */ (key).click();
      }
    }, room);
    if (room === 'materials') {
      await page.evaluate(() => {
        /** @type {any[]} */
        const keys = [
          ...document.querySelectorAll('.room[data-room="materials"] .acts button, .room[data-room="materials"] .hit'),
        ];
        // What nobody can see nobody can press.
        for (const key of keys.filter((each) => each.checkVisibility()).slice(0, 2)) key.click();
      });
    }
    if (room === 'extracts')
      await page.evaluate(() =>
        /** @type {any} */ (
          document.querySelector('.room[data-room="extracts"] .card-open, .room[data-room="extracts"] li button')
        )?.click(),
      );
    // Several rounds: a field that takes its text may bring others.
    for (let round = 0; round < 2; round += 1) {
      filled += await page.evaluate(
        ([text, where]) => {
          const fields = document.querySelectorAll(
            `.room[data-room="${where}"] input:not([type=radio], [type=checkbox], [type=file]), .room[data-room="${where}"] textarea`,
          );
          for (const field of /** @type {NodeListOf<HTMLInputElement>} */ (fields)) {
            if (!field.checkVisibility() || field.readOnly) continue;
            field.focus();
            field.value = text;
            for (const type of ['input', 'change']) field.dispatchEvent(new Event(type, { bubbles: true }));
            field.blur();
          }
          return fields.length;
        },
        [hostile, room],
      );
    }
    expect(complaints).toEqual([]);
  }
  expect(filled).toBeGreaterThan(20);
  const link = await linkOf(page);
  expect(complaints).toEqual([]);
  expect(link).toContain('#f=');
  await goTo(page, 'formula');
  await goTo(page, 'jar');
  await goTo(page, 'bench');
  await goTo(page, 'shelf');
  await waitUntilKept(page);
  await page.goto('about:blank');
  await page.goto(link);
  await expect(page.locator('.shared-sheet')).toBeVisible({ timeout: 20_000 });
  await expect(page.locator('.shared-sheet .sheet-name')).toContainText('<script>window.ran=2</script>');
  for (const where of ['share', 'materials', 'extracts', 'formula']) await goTo(page, where);
  // The element on a page of its own.
  await page.goto(`./embed/frame.html#${link.split('#')[1]}`);
  await expect(page.locator('stillroom-formula .sheet-name')).toContainText('<script>window.ran=2</script>', {
    timeout: 20_000,
  });
  expect(await page.evaluate(() => Reflect.get(window, 'ran'))).toBeUndefined();
  expect(await page.locator('stillroom-formula img, stillroom-formula script').count()).toBe(0);
  expect(dialogs).toEqual([]);
});

test('everything goes into one file and comes back from it', async ({ page, browser }) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await goTo(page, 'formula');
  await page.getByLabel('Name of the formula').fill('Gel of the backup');
  await goTo(page, 'share');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Write a backup file' }).click(),
  ]);
  const file = await download.path();
  expect(download.suggestedFilename()).toMatch(/^stillroom-\d{4}-\d\d-\d\d\.(json|zip)$/);
  expect(JSON.parse(await readFile(file, 'utf8')).format).toBe('stillroom-backup');

  const other = await (await browser.newContext()).newPage();
  await openStillroom(other);
  await waitForTheWhole(other);
  await goTo(other, 'share');
  await other.locator('input[type=file]').last().setInputFiles(file);
  await expect(other.getByText('What is in the file')).toBeVisible();
  await expect(other.locator('.backup-items li[data-fate="differs"]')).toContainText('Gel of the backup');
  await other.getByRole('button', { name: 'Put it on this device' }).click();
  await expect(other.locator('.card-name', { hasText: 'Gel of the backup (from the backup)' })).toBeVisible();
  await expect(other.locator('.card-name', { hasText: 'Cucumber and oat gel cream' })).toBeVisible();
  await waitUntilKept(other);
  await other.context().close();
});

test('a dropped file that is no backup is refused in a sentence', async ({ page }) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await page.evaluate(() => {
    const data = new DataTransfer();
    data.items.add(new File(['these are no records'], 'notes.json', { type: 'application/json' }));
    dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
  });
  await expect(page.getByRole('alert').filter({ hasText: 'backup' })).toBeVisible();
});

test('a formula is written out for a blog and a spreadsheet', async ({ page }) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await goTo(page, 'share');
  for (const [name, ending, words] of [
    ['As Markdown, for a blog', 'md', '# Cucumber and oat gel cream'],
    ['As plain text', 'txt', 'Cucumber and oat gel cream'],
    ['As a table (CSV)', 'csv', '"Squalane","4.00","8.4"'],
  ]) {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
    expect(download.suggestedFilename()).toBe(`Cucumber-and-oat-gel-cream.${ending}`);
    expect(await readFile(await download.path(), 'utf8')).toContain(words);
  }
});

test('what is for the maker alone goes along only where that is ticked, and each time anew', async ({ page }) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await goTo(page, 'share');
  const address = page.getByLabel('The link', { exact: true });
  const before = await address.inputValue();
  // The glycerite of the example has notes of its own.
  const tick = page.getByLabel('With my notes, for another device of mine');
  await expect(page.getByText('Left out of it, and for nobody else to read')).toBeVisible();
  await tick.check();
  await expect(page.getByText('Whoever opens it reads them.')).toBeVisible();
  expect(await address.inputValue()).not.toBe(before);
  await goTo(page, 'formula');
  await goTo(page, 'share');
  await expect(tick).not.toBeChecked();
  expect(await address.inputValue()).toBe(before);
});
