// @ts-check

// The shelf of somebody who has many formulas: filed under words of their own, and found by them.

import { expect, test } from '@playwright/test';
import { goTo, openStillroom } from './bench-hands.js';

test('a formula is filed under tags, shown by them, and found by them', async ({ page }) => {
  await openStillroom(page);
  await page.getByRole('button', { name: /^Start a formula/ }).click();
  await page.getByLabel('Name of the formula').fill('Winter balm');
  await page.keyboard.press('Escape');
  await goTo(page, 'shelf');
  const cards = page.locator('.shelf-cards .card');
  const tags = page.getByRole('group', { name: 'Show only what has this tag' });
  await expect(cards).toHaveCount(2);
  await expect(tags).toBeHidden();

  const balm = cards.filter({ hasText: 'Winter balm' });
  await balm.getByRole('button', { name: 'More for Winter balm' }).click();
  const field = balm.getByLabel('Tags, with commas between');
  await field.pressSequentially('winter, gifts, ');
  await expect(field).toHaveValue('winter, gifts, ');
  await expect(balm.locator('.card-tags')).toHaveText('winter, gifts');
  // Too long: said beside the field, which keeps what was typed until it is mended.
  await field.fill('x'.repeat(41));
  await expect(balm.getByText('At most 12 tags')).toBeVisible();
  await expect(field).toHaveValue('x'.repeat(41));
  await field.fill('winter, gifts');
  await expect(balm.getByText('At most 12 tags')).toBeHidden();
  await field.blur();

  await tags.getByRole('button', { name: 'winter' }).click();
  await expect(cards).toHaveCount(1);
  await expect(tags.getByRole('button', { name: 'winter' })).toHaveAttribute('aria-pressed', 'true');
  await tags.getByRole('button', { name: 'winter' }).click();
  await expect(cards).toHaveCount(2);

  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await expect(page.locator('.card-tags', { hasText: 'winter, gifts' })).toBeVisible();
});
