// @ts-check

// Where somebody chooses the colours, or asks for less motion: what carries meaning is still there to be seen.

import { expect, test } from '@playwright/test';
import { amountOf, goTo, openStillroom, waitForTheWhole } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */
/** @typedef {import('@playwright/test').Locator} Locator */

/**
 * How many colours cover at least so many hundredths of what is drawn: read from its picture, whatever the style sheets say.
 * @param {Page} page
 * @param {Locator} target
 * @param {number} hundredths
 */
async function coloursOf(page, target, hundredths = 1) {
  await target.scrollIntoViewIfNeeded();
  const picture = (await target.screenshot()).toString('base64');
  const beside = await page.context().newPage();
  try {
    return await beside.evaluate(async ([data, least]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = new OffscreenCanvas(image.width, image.height);
      const context = canvas.getContext('2d');
      if (!context) return 0;
      context.drawImage(image, 0, 0);
      const { data: bytes } = context.getImageData(0, 0, image.width, image.height);
      /** @type {Map<string, number>} */
      const counts = new Map();
      for (let at = 0; at < bytes.length; at += 4) {
        const colour = [bytes[at], bytes[at + 1], bytes[at + 2]].join(' ');
        counts.set(colour, (counts.get(colour) ?? 0) + 1);
      }
      const enough = (bytes.length / 4 / 100) * least;
      return [...counts.values()].filter((count) => count >= enough).length;
    }, /** @type {const} */ ([picture, hundredths]));
  } finally {
    await beside.close();
  }
}

for (const scheme of /** @type {const} */ (['light', 'dark'])) {
  test(`with chosen colours, ${scheme}, layers, tags, marks, edges and the ring of focus are still seen`, async ({
    page,
  }) => {
    await page.emulateMedia({ forcedColors: 'active', colorScheme: scheme });
    await openStillroom(page);
    await waitForTheWhole(page);
    // The jar on the shelf and in its own room: its glass, and at least five layers.
    expect(await coloursOf(page, page.locator('.card .minijar').first())).toBeGreaterThanOrEqual(5);
    await goTo(page, 'ph');
    await goTo(page, 'jar');
    expect(await coloursOf(page, page.locator('.room[data-room="jar"] svg').first())).toBeGreaterThanOrEqual(5);
    // What another room draws before its list does not stand before this one's.
    const before = await page
      .locator('.room[data-room="jar"] .legend li')
      .first()
      .evaluate((item) => getComputedStyle(item, '::before').content);
    expect(before).toBe('none');

    await goTo(page, 'findings');
    const tag = page.locator('.found .tag svg').first();
    expect(await coloursOf(page, tag)).toBeGreaterThanOrEqual(2);

    // Where one is: the mark over the place in the dock, and the edge round the view.
    const mark = await page
      .locator('.dock [aria-current]')
      .evaluate((place) => [
        getComputedStyle(place, '::before').backgroundColor,
        getComputedStyle(place).backgroundColor,
      ]);
    expect(mark[0]).not.toBe(mark[1]);
    await expect(page.locator('.views [aria-current]').first()).toHaveCSS('outline-style', 'solid');

    await page.keyboard.press('Tab');
    const ring = await page.evaluate(() => {
      const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement ?? document.body);
      return [outlineStyle, outlineWidth];
    });
    expect(ring[0]).not.toBe('none');
    expect(Number.parseFloat(ring[1] ?? '')).toBeGreaterThan(0);

    // A box with its tick is not the box without it.
    await goTo(page, 'post');
    const box = page.locator('.room[data-room="post"] input[type="checkbox"]:not(:disabled)').first();
    await box.scrollIntoViewIfNeeded();
    const ticked = await box.screenshot();
    await box.uncheck();
    expect(ticked.equals(await box.screenshot())).toBe(false);

    await goTo(page, 'formula');
    await page.locator('.begin').click();
    await page.locator('.run').waitFor();
    await page.locator('.run-next').click();
    const slab = page.locator('.run-next');
    await expect(slab).toHaveCSS('border-top-style', 'solid');
    // Done, now and to come are three colours on the ground of the page.
    expect(await coloursOf(page, page.locator('.run .cells').first())).toBeGreaterThanOrEqual(3);
  });
}

test('who asks for less motion sees none, and everybody else does', async ({ page }) => {
  const moving = async () => {
    await amountOf(page, 'Allantoin').fill(String(Math.random()).slice(0, 4));
    return page.evaluate(
      () =>
        new Promise((done) => {
          let most = 0;
          // Until after a number that changed has stood out for a while, and fades.
          const end = performance.now() + 1500;
          const look = () => {
            most = Math.max(most, document.getAnimations().length);
            if (performance.now() < end) requestAnimationFrame(look);
            else done(most);
          };
          look();
        }),
    );
  };
  await page.emulateMedia({ reducedMotion: 'no-preference' });
  await openStillroom(page);
  await goTo(page, 'formula');
  expect(await moving()).toBeGreaterThan(0);
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.waitForTimeout(1000);
  expect(await moving()).toBe(0);
});
