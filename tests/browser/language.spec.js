// @ts-check

import { expect, test } from '@playwright/test';

test('the page opens in a language of the browser', async ({ browser }) => {
  for (const [locale, language, layer] of [
    ['de-AT', 'de', 'Wasser gesamt'],
    ['fr-CA', 'fr', 'Eau totale'],
    ['sv-SE', 'en', 'Water, all sources'],
  ]) {
    const context = await browser.newContext({ locale, viewport: { width: 390, height: 844 } });
    const page = await context.newPage();
    await page.goto('/#jar');
    await expect(page.locator('html')).toHaveAttribute('lang', language ?? '');
    await expect(page.locator('main')).toContainText(layer ?? '');
    await context.close();
  }
});

test('another language is chosen in the settings, and stays', async ({ page }) => {
  await page.goto('/#bench');
  await page.locator('details.scales > summary').click();
  await Promise.all([page.waitForEvent('load'), page.getByLabel('Language').selectOption('de')]);
  await expect(page.locator('html')).toHaveAttribute('lang', 'de');
  await expect(page.locator('main')).toContainText('Einwaageliste');
  await page.reload();
  await expect(page.locator('main')).toContainText('Einwaageliste');
});

test('materials are found by their names in the language of the page', async ({ browser }) => {
  const context = await browser.newContext({ locale: 'de-DE', viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await page.goto('/#materials');
  await page.getByRole('searchbox').fill('Bienenwachs');
  await expect(page.locator('main')).toContainText('Cera Alba');
  await context.close();
});
