// @ts-check

// Findings: what the checks say, why, and what one tap does about it.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { amountOf, goTo, openAbout, openStillroom, waitUntilKept } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

/** @param {Page} page @param {string} text */
function finding(page, text) {
  return page.locator('.found > li').filter({ hasText: text });
}

/** Lets the amount of a line be. @param {Page} page @param {string} name @param {string} percent */
async function setAmount(page, name, percent) {
  await goTo(page, 'formula');
  await amountOf(page, name).fill(percent);
  await amountOf(page, name).blur();
}

/** @param {Page} page */
async function open(page) {
  await openStillroom(page);
  await goTo(page, 'findings');
  await expect(page.locator('.findings-summary')).not.toBeEmpty();
}

test('too much of a solid is found, cured at one tap and taken back @desk', async ({ page }) => {
  await open(page);
  await setAmount(page, 'Allantoin', '0.8');
  await goTo(page, 'findings');
  const over = finding(page, 'Allantoin: 0.8 % is in');
  await expect(over).toHaveAttribute('data-severity', /stop|caution/);
  const cure = over.getByRole('button', { name: /^Lower Allantoin to 0\.\d+/ });
  const [, to] = /** @type {RegExpExecArray} */ (/to ([\d.]+)/.exec(await cure.innerText()));
  await cure.click();
  await expect(over).toHaveCount(0);
  await goTo(page, 'formula');
  await expect(amountOf(page, 'Allantoin')).toHaveValue(new RegExp(`^${to}0?$`));
  await page.getByRole('button', { name: 'Undo: cure applied' }).click();
  await expect(amountOf(page, 'Allantoin')).toHaveValue(/^0\.80?$/);
  await goTo(page, 'findings');
  await expect(over).toHaveCount(1);
});

test('a finding opens to its arithmetic, its sources and a picture', async ({ page }) => {
  await open(page);
  await setAmount(page, 'Sodium benzoate', '0.5');
  await goTo(page, 'formula');
  await openAbout(page);
  await page.getByLabel('pH', { exact: true }).fill('6.5');
  await page.getByLabel('pH', { exact: true }).blur();
  await goTo(page, 'findings');
  const weak = finding(page, 'Sodium Benzoate: at pH 6.5');
  await weak.locator('summary').click();
  // pKa 4.202, at the worse end of an aim of 6.5 ± 0.2: 1 / (1 + 10^2.498) = 0.317 %.
  await expect(weak.locator('.working')).toContainText('1 / (1 + 10^(6.7 − 4.2)) = 0.317 %');
  await expect(weak.locator('.from li').first()).toBeVisible();
  await expect(weak.locator('.from')).toContainText(/read in the source|from memory/);
  await expect(weak.getByRole('img', { name: /undissociated over pH/ })).toBeVisible();
  await expect(weak).toContainText('From: Sodium benzoate');
});

test('a finding is set aside with a reason that stays with the formula', async ({ page }) => {
  await open(page);
  await setAmount(page, 'Allantoin', '0.8');
  await goTo(page, 'findings');
  const over = finding(page, 'Allantoin: 0.8 % is in');
  await over.locator('summary').click();
  await over.getByRole('button', { name: 'Set aside', exact: true }).click();
  await over.getByRole('button', { name: /with this reason/ }).click();
  await expect(over.locator('.message')).toHaveText(/Write why/);
  await over.getByLabel('Why you set it aside').fill('Stirred in as a fine powder for a test batch');
  await over.getByRole('button', { name: /with this reason/ }).click();
  await expect(over).toHaveCount(0);
  await expect(page.locator('.aside-list', { hasText: 'Allantoin' })).toContainText('Stirred in as a fine powder');
  await waitUntilKept(page);
  await page.reload();
  await expect(page.locator('.aside-list', { hasText: 'Allantoin' })).toContainText('Stirred in as a fine powder');
  await page.getByRole('button', { name: 'Take back' }).click();
  await expect(over).toHaveCount(1);
});

test('while the amounts make no whole, what was found stays in sight', async ({ page }) => {
  await open(page);
  const before = await page.locator('.found > li').count();
  expect(before).toBeGreaterThan(0);
  await setAmount(page, 'Water, distilled', '50');
  await goTo(page, 'findings');
  await expect(page.locator('.findings-summary')).toHaveText(/once the amounts make 100/);
  await expect(page.locator('.found.waiting > li')).toHaveCount(before);
});

test('a cold storage that is none is refused beside its field', async ({ page }) => {
  await open(page);
  const cold = page.getByLabel('Kept as cold as');
  const problem = page.locator('.findings-foot .field', { has: cold }).locator('.message');
  for (const wrong of ['fridge', '-80', '60']) {
    await cold.fill(wrong);
    await expect(problem).toBeVisible();
  }
  await cold.fill('-5 °C');
  await expect(problem).toBeHidden();
});

test('where the checks cannot be fetched nothing is said to be checked, and they can be fetched again', async ({
  page,
}) => {
  await page.route(/\/rooms\/findings\/room\.js/, (route) => route.abort());
  await openStillroom(page);
  await goTo(page, 'findings');
  const room = page.locator('[data-room="findings"].room');
  await expect(room).toContainText('could not be fetched');
  await page.unroute(/\/rooms\/findings\/room\.js/);
  await room.getByRole('button', { name: 'Try again' }).click();
  await expect(page.locator('.findings-summary')).not.toBeEmpty();
});

for (const scheme of /** @type {const} */ (['light', 'dark'])) {
  test(`findings can be read and worked by everybody, ${scheme} @desk`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
    await open(page);
    await setAmount(page, 'Allantoin', '0.8');
    await goTo(page, 'findings');
    await page.locator('.found summary').first().click();
    await expect(page.locator('.working').first()).toBeVisible();
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target).join(' | ')}`)).toEqual([]);
    await page.setViewportSize({ width: 320, height: 640 });
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wider).toBe(0);
  });
}
