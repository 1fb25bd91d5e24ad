// @ts-check

// A name without a space, as long as a field takes: on a phone nothing may be pushed out of sight sideways.

import { expect, test } from '@playwright/test';
import { goTo, openStillroom, waitForTheWhole } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

const LONG = 'Unbroken'.repeat(40);

/** What is wider than the screen, if anything is: a phone zooms out to show it. @param {Page} page @param {number} width */
const tooWide = (page, width) =>
  page.evaluate((innerWidth) => {
    const { scrollWidth } = document.documentElement;
    if (scrollWidth <= innerWidth && document.body.scrollWidth <= innerWidth) return [];
    // What scrolls in itself, such as a wide table, pushes nothing.
    const scrolls = (/** @type {Element | null} */ element) => {
      for (let each = element; each && each !== document.body; each = each.parentElement) {
        if (/auto|scroll|hidden|clip/.test(getComputedStyle(each).overflowX)) return true;
      }
      return false;
    };
    const wide = [...document.querySelectorAll('body *')].filter(
      (each) =>
        each.checkVisibility() && each.getBoundingClientRect().right > innerWidth + 1 && !scrolls(each.parentElement),
    );
    return [
      `${scrollWidth} of ${innerWidth}`,
      ...wide
        .slice(0, 8)
        .map(
          (each) =>
            `${each.tagName}.${each.className} in ${each.parentElement?.className}: ${each.textContent?.slice(0, 30)}`,
        ),
    ];
  }, width);

/** Fills every field in sight of a room. @param {Page} page @param {string} room */
async function fillAll(page, room) {
  return page.evaluate(
    ([text, where]) => {
      for (const key of document.querySelectorAll(
        `.room[data-room="${where}"] [aria-expanded="false"], .room[data-room="${where}"] details:not([open]) > summary`,
      )) {
        if (key.checkVisibility()) /** @type {HTMLElement} */ (key).click();
      }
      const fields = document.querySelectorAll(
        `.room[data-room="${where}"] input:not([type=radio], [type=checkbox], [type=file]), .room[data-room="${where}"] textarea`,
      );
      let filled = 0;
      for (const field of /** @type {NodeListOf<HTMLInputElement>} */ (fields)) {
        if (!field.checkVisibility() || field.readOnly) continue;
        field.focus();
        field.value = field.maxLength > 0 ? text.slice(0, field.maxLength) : text;
        for (const type of ['input', 'change']) field.dispatchEvent(new Event(type, { bubbles: true }));
        field.blur();
        filled += 1;
      }
      return filled;
    },
    [LONG, room],
  );
}

for (const width of [320, 390]) {
  test(`text without a break, in every field and wherever it is shown, never scrolls a phone of ${width} pixels sideways`, async ({
    page,
  }) => {
    test.setTimeout(90_000);
    await page.setViewportSize({ width, height: 844 });
    await openStillroom(page);
    await waitForTheWhole(page);
    let filled = 0;
    /** @type {Record<string, string[]>} */
    const found = {};
    const look = async (/** @type {string} */ where) => {
      const wide = await tooWide(page, width);
      if (wide.length > 0) found[where] = wide;
    };
    for (const room of ['formula', 'bench', 'materials', 'extracts', 'shelf']) {
      await goTo(page, room);
      if (room === 'materials') await page.getByRole('button', { name: 'New blend' }).click();
      if (room === 'extracts')
        await page.evaluate(() =>
          /** @type {any} */ (
            document.querySelector('.room[data-room="extracts"] .card-open, .room[data-room="extracts"] li button')
          )?.click(),
        );
      for (let round = 0; round < 2; round += 1) filled += await fillAll(page, room);
      await look(`${room}, filled`);
    }
    // Back to what is shown of it everywhere.
    await goTo(page, 'bench');
    await page
      .getByLabel('Batch', { exact: true })
      .fill('100')
      .catch(() => {});
    for (const room of ['shelf', 'formula', 'findings', 'jar', 'bench', 'materials', 'extracts', 'batches', 'share']) {
      await goTo(page, room);
      await look(room);
    }
    await goTo(page, 'shelf');
    await goTo(page, 'share');
    const link = await page.getByLabel('The link', { exact: true }).inputValue();
    if (link.includes('#f=')) {
      await page.goto('about:blank');
      await page.goto(link);
      await expect(page.locator('.shared-sheet, .reading-room [role="alert"]').first()).toBeVisible({
        timeout: 20_000,
      });
      await look('reading');
    }
    expect(filled).toBeGreaterThan(15);
    expect(found).toEqual({});
  });
}
