// @ts-check

// The extract room, from the plan to the jar.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { goTo } from './bench-hands.js';

/** @param {import('@playwright/test').Page} page */
async function open(page, room = 'extracts') {
  await page.goto(`./#${room}`);
  await page.waitForSelector('body[data-ready]');
}

/**
 * @param {import('@playwright/test').Page} page
 * @param {string} name
 */
function field(page, name) {
  return page.locator(`[data-field="extract.${name}"]`);
}

/**
 * Goes to a step of the extract, where they are not all in sight.
 * @param {import('@playwright/test').Page} page
 * @param {'Plan' | 'Keeping' | 'Measure and use'} step
 */
async function stepTo(page, step) {
  const radio = page.getByRole('radio', { name: step, exact: true });
  if (await radio.isVisible()) await radio.check();
}

/** Opens everything that can be done with an extract. @param {import('@playwright/test').Page} page */
async function openTools(page) {
  await page.evaluate(() => {
    for (const tool of document.querySelectorAll('details.tool')) tool.setAttribute('open', '');
  });
}

/**
 * The value of a figure by what it is called.
 * @param {import('@playwright/test').Page} page
 * @param {string} label
 */
function figure(page, label) {
  return page.locator('.figure', { has: page.getByText(label, { exact: true }) }).locator('summary b');
}

/**
 * Percent of a constituent in the jar.
 * @param {import('@playwright/test').Page} page
 * @param {string} inci
 */
async function inTheJar(page, inci) {
  await goTo(page, 'jar');
  const row = page.locator('.constituents > li:visible').filter({ has: page.getByText(inci, { exact: true }) });
  await expect(row).toHaveCount(1);
  if ((await row.locator('details').getAttribute('open')) === null) await row.locator('summary').click();
  await expect(row.locator('.trail li').first()).toBeVisible();
  // As it stands, in sight or not: on a desk the list may lie below what is laid out.
  const trail = await row.locator('.trail li').allTextContents();
  const number = /** @param {string} text */ (text) => Number(text.replace(/[^\d.]/g, ''));
  return { percent: number((await row.locator('.number').first().textContent()) ?? ''), trail };
}

test('a maker plans a glycerite, adjusts it, reads it, shelves it and uses it in a formula @desk', async ({ page }) => {
  await open(page);
  await page.getByRole('button', { name: 'New glycerite' }).click();
  await field(page, 'name').fill('Cucumber, spring');
  await field(page, 'plant').selectOption({ label: 'cucumber, fruit with peel, fresh' });
  await field(page, 'plant-mass').fill('300');
  await field(page, 'glycerin').fill('500');
  // By hand: 497.5 g of glycerin in 497.5 + 285.69 + 2.5 + 5.72 g.
  await expect(figure(page, 'Glycerin')).toHaveText('62.9 %');
  await expect(page.getByText('95.23', { exact: false }).first()).toBeVisible();

  await stepTo(page, 'Measure and use');
  await page.locator('.tool > summary', { hasText: 'Adjust' }).click();
  await field(page, 'adjust-target').fill('65');
  await page.getByRole('button', { name: 'I poured it in' }).click();
  await stepTo(page, 'Plan');
  await expect(figure(page, 'Glycerin')).toHaveText('65.0 %');
  // 65 % glycerin in water reads 50.2 on the Brix scale; the sugars of the plant add a little.
  await expect(figure(page, 'Refractometer')).toHaveText(/5[01]\.\d\s°Bx/);
  await stepTo(page, 'Keeping');
  await expect(page.locator('.verdict')).toContainText('no bacterium known');
  await expect(page.locator('.keep-scale')).toHaveAttribute('aria-label', /It meets the criterion of ISO 29621/);

  await stepTo(page, 'Measure and use');
  const verify = page.locator('.tool', { hasText: 'Verify' });
  if ((await verify.getAttribute('open')) === null) await verify.locator(':scope > summary').click();
  await field(page, 'optical-value').fill('51');
  await expect(page.locator('.offer-lines').filter({ hasText: 'lies within that' })).toBeVisible();
  await field(page, 'optical-value').fill('30');
  await expect(page.locator('.offer-lines').filter({ hasText: 'disagrees with the plan' })).toBeVisible();
  await field(page, 'optical-value').fill('51');

  await stepTo(page, 'Measure and use');
  await field(page, 'lot').fill('8');
  await page.getByRole('button', { name: 'Put it on the shelf of materials' }).click();
  await expect(page.locator('.notice').first()).toContainText('Cucumber, spring, lot 8');

  const before = { glycerin: await inTheJar(page, 'Glycerin'), water: await inTheJar(page, 'Aqua') };
  await goTo(page, 'extracts');
  await stepTo(page, 'Measure and use');
  await field(page, 'use-percent').fill('12');
  await page.getByRole('button', { name: /^Add 12\s% to “Cucumber and oat gel cream”/ }).click();
  const after = { glycerin: await inTheJar(page, 'Glycerin'), water: await inTheJar(page, 'Aqua') };
  // 12 % of it at 65 % bring 7.8 % glycerin.
  expect(after.glycerin.percent - before.glycerin.percent).toBeCloseTo(7.8, 2);
  // Its water is counted; the q.s. line gave way for all 12 %, so that 12 − 4.1 % are less poured in.
  const brought = after.water.trail.find((line) => line.includes('Cucumber, spring'));
  expect(brought).toMatch(/4\.1/);
  expect(before.water.trail.find((line) => line.includes('Cucumber, spring'))).toBeUndefined();
  expect(before.water.percent - after.water.percent).toBeCloseTo(12 - Number(/4\.1\d*/.exec(brought ?? '')?.[0]), 1);

  await page.reload();
  await page.waitForSelector('body[data-ready]');
  expect((await inTheJar(page, 'Glycerin')).percent).toBeCloseTo(after.glycerin.percent, 4);
});

test('the jar gains glycerin and water when another line makes room for the glycerite', async ({ page }) => {
  await open(page);
  await stepTo(page, 'Measure and use');
  await page.getByRole('button', { name: 'Update the material' }).click();
  const before = { glycerin: await inTheJar(page, 'Glycerin'), water: await inTheJar(page, 'Aqua') };
  await goTo(page, 'formula');
  // The oil takes up the rest, so that the water stays as it is poured.
  const oil = page.locator('.line').filter({ hasText: 'Sunflower' });
  await oil.locator('.line-title').click();
  await oil.getByRole('button', { name: 'Make it q.s.' }).click();
  await page.getByLabel(/^Amount of Cucumber glycerite/).fill('17');
  const after = { glycerin: await inTheJar(page, 'Glycerin'), water: await inTheJar(page, 'Aqua') };
  // Five percent more of it: 3.25 % glycerin and 1.7 % water.
  expect(after.glycerin.percent - before.glycerin.percent).toBeCloseTo(3.25, 2);
  expect(after.water.percent - before.water.percent).toBeCloseTo(1.716, 1);
});

test('wrong input in the extract room is said beside its field and the last good value counts', async ({ page }) => {
  await open(page);
  const glycerin = await figure(page, 'Glycerin').innerText();
  for (const wrong of ['', 'abc', '-3', '99999999999999999']) {
    await field(page, 'plant-mass').fill(wrong);
    const box = page.locator('.field', { has: field(page, 'plant-mass') });
    await expect(box.locator('.message')).toBeVisible();
    await expect(field(page, 'plant-mass')).toHaveAttribute('aria-invalid', 'true');
    expect(await figure(page, 'Glycerin').innerText()).toBe(glycerin);
  }
  await field(page, 'plant-mass').fill('1,5');
  await expect(field(page, 'plant-mass')).toHaveAttribute('aria-invalid', 'false');
  await expect(figure(page, 'Glycerin')).not.toHaveText(glycerin);
});

test('an impossible strength names the nearest that is possible', async ({ page }) => {
  await open(page);
  await page.locator('.tool > summary', { hasText: 'Work backwards' }).click();
  await field(page, 'wanted-glycerin').fill('95');
  await expect(page.locator('.tool .finding').filter({ hasText: 'nearest possible' })).toBeVisible();
  await field(page, 'wanted-glycerin').fill('60');
  await page.getByRole('button', { name: 'Use these amounts' }).click();
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await expect(field(page, 'glycerin')).toHaveValue('500');
});

test('an extract is deleted, comes back by undo, and the example only when it is asked for', async ({ page }) => {
  await open(page);
  const cards = page.locator('.extract-cards button');
  await expect(cards).toHaveCount(1);
  await page.locator('.extract-head').getByRole('button', { name: 'Delete' }).click();
  await expect(cards).toHaveCount(0);
  await page.locator('.notice').getByRole('button', { name: 'Undo' }).click();
  await expect(cards).toHaveCount(1);
  await cards.first().click();
  await page.locator('.extract-head').getByRole('button', { name: 'Delete' }).click();
  await page.waitForFunction(() => document.getElementById('kept')?.dataset.state === 'kept');
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await expect(cards).toHaveCount(0);
  await page.getByRole('button', { name: 'Put the invented example here' }).click();
  await expect(cards).toHaveText(/invented/);
});

for (const scheme of /** @type {const} */ (['light', 'dark'])) {
  test(`the extract room can be read and worked by everybody, ${scheme} @desk`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
    await open(page);
    await openTools(page);
    for (const kind of ['Plan', 'Keeping', 'Measure and use', 'New stock solution', 'Dilute alcohol']) {
      if (kind === 'Plan' || kind === 'Keeping' || kind === 'Measure and use') await stepTo(page, kind);
      else await page.getByRole('button', { name: kind }).click();
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        .analyze();
      expect(
        violations.map(({ id, nodes }) => `${kind}: ${id}: ${nodes.map((node) => node.target).join(' | ')}`),
      ).toEqual([]);
    }
  });
}

test('the extract room does not scroll sideways on a narrow phone', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await open(page);
  await openTools(page);
  for (const step of /** @type {const} */ (['Plan', 'Keeping', 'Measure and use'])) {
    await stepTo(page, step);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(
      0,
    );
  }
});
