// @ts-check

// Choosing a material by keyboard, and what asks before it is gone.

import { expect, test } from '@playwright/test';
import { goTo, openStillroom } from './bench-hands.js';

test('a material is chosen by Enter, and the picker stays shut with the amount at hand @desk', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'formula');
  const lines = page.locator('.lines > *');
  const before = await lines.count();
  await page
    .getByRole('button', { name: /^Add to/ })
    .first()
    .focus();
  await page.keyboard.press('Enter');
  const picker = page.locator('dialog.picker');
  await expect(picker).toBeVisible();
  await page.keyboard.type('urea');
  await expect(picker.locator('.hit-name').first()).toHaveText(/Urea/);
  await page.keyboard.press('Enter');
  await expect(picker).toBeHidden();
  await expect(lines).toHaveCount(before + 1);
  // The key that chose presses nothing else.
  await page.waitForFunction(() => document.activeElement?.getAttribute('data-field')?.startsWith('amount:'));
  await expect(picker).toBeHidden();
  await page.keyboard.type('3');
  await expect(page.getByLabel('Amount of Urea', { exact: true })).toHaveValue('3');
});

test('a record that is finished asks before it is deleted', async ({ page }) => {
  await page.goto('./#batches');
  await page.getByRole('button', { name: /^Make 210 g/ }).click();
  await expect(page.locator('.run')).toBeVisible();
  for (let count = 0; count < 80 && !(await page.locator('.finished').isVisible()); count += 1)
    await page.locator('.run-next').click();
  await page.locator('.finished .acts button').first().click();
  await page.getByRole('button', { name: /^Delete/ }).click();
  const question = page.getByRole('alertdialog');
  await expect(question).toBeVisible();
  await question.getByRole('button', { name: 'Keep it' }).click();
  await expect(page.locator('.batch-card')).toHaveCount(1);
  await page
    .getByRole('button', { name: /^Delete/ })
    .first()
    .click();
  await question.getByRole('button', { name: 'Delete it' }).click();
  await expect(page.locator('.batch-card')).toHaveCount(0);
});
