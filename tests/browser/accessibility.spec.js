// @ts-check

// Every room against the WCAG 2.2 AA rules that can be checked by machine, in both colour schemes.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { goTo, openStillroom } from './bench-hands.js';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

for (const scheme of /** @type {const} */ (['light', 'dark'])) {
  test(`every room can be read and worked by everybody, ${scheme} @desk`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
    await openStillroom(page);
    for (const room of ['shelf', 'formula', 'jar', 'bench', 'materials']) {
      await goTo(page, room);
      if (room === 'formula') await page.locator('.line-title').first().click();
      if (room === 'materials') await page.locator('.hit').first().click();
      await page.locator('.notice').evaluateAll((notices) => notices.forEach((notice) => notice.remove()));
      const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
      expect(violations.map(({ id, nodes }) => `${room}: ${id}: ${nodes.map((node) => node.target).join(' | ')}`)).toEqual([]);
    }
  });
}

test('a label that is taken away is noticed', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'formula');
  await page.getByLabel('pH', { exact: true }).evaluate((input) => document.querySelector(`label[for="${input.id}"]`)?.remove());
  const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
  expect(violations.map((violation) => violation.id)).toContain('label');
});

test('nothing scrolls sideways on a narrow phone', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await openStillroom(page);
  for (const room of ['shelf', 'formula', 'jar', 'bench', 'materials']) {
    await goTo(page, room);
    const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wider, room).toBe(0);
  }
});
