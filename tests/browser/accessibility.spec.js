// @ts-check

// Every room against the WCAG 2.2 AA rules that can be checked by machine, in both colour schemes.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { goTo, openAbout, openStillroom } from './bench-hands.js';

/** Every view. */
const VIEWS = [
  'shelf',
  'formula',
  'jar',
  'findings',
  'ph',
  'swap',
  'label',
  'costs',
  'bench',
  'materials',
  'extracts',
  'batches',
  'share',
  'post',
  'paste',
  'examples',
  'about',
];
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
/** What depends on colours: in the dark everything else is as it is by day. */
const RULES_OF_COLOUR = ['color-contrast', 'link-in-text-block'];

for (const scheme of /** @type {const} */ (['light', 'dark'])) {
  test(`every room can be read and worked by everybody, ${scheme} @desk`, async ({ page }) => {
    test.setTimeout(120_000);
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
    await openStillroom(page);
    for (const room of VIEWS) {
      await goTo(page, room);
      if (room === 'formula') await page.locator('.line-title').first().click();
      if (room === 'materials') await page.locator('.hit').first().click();
      // Opened without scrolling: what lies half under the pinned bar is another matter.
      await page.evaluate((name) => {
        for (const fold of document.querySelectorAll(`.room[data-room="${name}"] .explained`))
          fold.setAttribute('open', '');
      }, room);
      await expect(page.locator(`.room[data-room="${room}"] .explained > div:empty`)).toHaveCount(0);
      if (room === 'about') await page.locator('.about-numbers summary').first().click();
      if (room === 'paste') {
        await page.getByLabel('One material to a line').fill('water 94 %\npreservative 1 %\nglycerin 5');
        await page.locator('.recipe-asked').waitFor();
      }
      await page.locator('.notice').evaluateAll((notices) => notices.forEach((notice) => notice.remove()));
      const axe = new AxeBuilder({ page });
      const { violations, passes } = await (
        scheme === 'dark' ? axe.withRules(RULES_OF_COLOUR) : axe.withTags(RULES)
      ).analyze();
      expect(
        passes.map(({ id }) => id),
        `${room}: a control`,
      ).toContain('color-contrast');
      expect(
        violations.map(({ id, nodes }) => `${room}: ${id}: ${nodes.map((node) => node.target).join(' | ')}`),
      ).toEqual([]);
    }
  });
}

test('a label that is taken away is noticed', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'formula');
  await openAbout(page);
  await page
    .getByLabel('pH', { exact: true })
    .evaluate((input) => document.querySelector(`label[for="${input.id}"]`)?.remove());
  const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
  expect(violations.map((violation) => violation.id)).toContain('label');
});

test('what a finger presses is 44 px high and wide in every view', async ({ page }) => {
  test.setTimeout(90_000);
  await openStillroom(page);
  for (const room of VIEWS) {
    await goTo(page, room);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('button, summary, select, .dock a, .views a, .masthead a, .box')]
        .filter((each) => each.checkVisibility({ contentVisibilityAuto: true }) && !each.closest('.unseen'))
        .map((each) => ({ each, box: each.getBoundingClientRect() }))
        .filter(({ box }) => box.height < 44 || box.width < 44)
        .map(({ each, box }) => `${each.className || each.textContent} ${box.width}×${box.height}`),
    );
    expect(small, room).toEqual([]);
  }
});

test('nothing scrolls sideways on a narrow phone', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await openStillroom(page);
  for (const room of VIEWS) {
    await goTo(page, room);
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wider, room).toBe(0);
  }
});
