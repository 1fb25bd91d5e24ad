// @ts-check

// The costs: the invented example priced, made in twelve units, bought for, kept; and nothing of it in a link.

import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { goTo, openStillroom, waitUntilKept } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

/** @param {Page} page */
const room = (page) => page.locator('.room[data-room="costs"]');

/** What is needed of a material, by its name. @param {Page} page @param {string} name */
const material = (page, name) =>
  room(page)
    .locator('.cost-buy > details')
    .filter({ has: page.locator('.cost-name', { hasText: name }) });

/** A line of the formula, by its name. @param {Page} page @param {string} name */
const line = (page, name) => room(page).locator('.cost-lines li').filter({ hasText: name });

/** @param {Page} page @param {string} name @param {string} price @param {string} pack */
async function price(page, name, price, pack) {
  const row = material(page, name);
  await row.locator('summary').click();
  await row.getByLabel('Price of a pack').fill(price);
  await row.getByLabel('A pack holds').fill(pack);
  await row.locator('summary').click();
}

test('from the example and three packs to what twelve jars cost and what to buy @desk', async ({ page }) => {
  test.setTimeout(90_000);
  await openStillroom(page);
  await goTo(page, 'formula');
  await page.getByRole('navigation', { name: 'Formula' }).getByRole('link', { name: 'Costs' }).click();
  const costs = room(page);
  await costs.getByLabel('Units').fill('12');
  await costs.getByLabel('One holds').fill('50');
  await expect(costs.getByText(/^Planned: 12 units of 50\smL, /)).toBeVisible();
  await price(page, 'Betaine', '12', '100');
  await price(page, 'Squalane', '18.40', '100');
  await price(page, 'Allantoin', '4.50', '50');
  await costs.getByLabel('Price of a container').fill('0.85');
  await expect(line(page, 'Betaine')).toContainText('1.50 EUR');
  await expect(line(page, 'Packaging')).toContainText('10.20 EUR');
  // The bar is as long as its share says.
  const bar = await line(page, 'Packaging').locator('rect').getAttribute('width');
  const share = await line(page, 'Packaging').locator('small.number').textContent();
  expect(Math.round(Number(bar) * 1000) / 10).toBeCloseTo(Number.parseFloat(share ?? ''), 1);
  // What has no price is said by name.
  await expect(line(page, 'Xanthan gum')).toContainText('no price');
  await expect(costs.getByText(/missing from every sum: .*Xanthan gum/)).toBeVisible();
  await expect(costs.locator('.cost-plate')).toContainText('at least, for one unit');
  // Whole packs, and what is left of them.
  await expect(material(page, 'Squalane')).toContainText(/one pack of 100\sg; 75\sg left then/);
  await expect(costs.locator('.cost-list')).toContainText('To buy for one batch of Cucumber and oat gel cream');
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    costs.getByRole('button', { name: 'Save as CSV' }).click(),
  ]);
  const table = await readFile(await file.path(), 'utf8');
  expect(table).toContain('name,needed_g,stock_g,missing_g,packs,pack_g,cost,currency\r\n');
  expect(table).toContain('Squalane,25,,25,1,100,18.40,EUR\r\n');
  const { violations } = await new AxeBuilder({ page }).include('.room[data-room="costs"]').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  // It stays, and the price stands in the stores.
  await waitUntilKept(page);
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await expect(costs.getByLabel('Price of a container')).toHaveValue('0.85');
  await expect(costs.getByLabel('Units')).toHaveValue('12');
  await expect(line(page, 'Betaine')).toContainText('1.50 EUR');
});

test('wrong input is said beside its field, a change can be taken back, and the containers are counted', async ({
  page,
}) => {
  await openStillroom(page);
  await goTo(page, 'costs');
  const costs = room(page);
  const margin = costs.getByLabel('Margin on cost');
  await margin.fill('much');
  await expect(margin).toHaveAttribute('aria-invalid', 'true');
  await expect(costs.getByText(/“much” is not a number\. Type a percent from 0 to 10000/)).toBeVisible();
  await margin.fill('60');
  await expect(margin).toHaveAttribute('aria-invalid', 'false');
  await costs.getByLabel('Units').fill('1.5');
  await expect(costs.getByText('1.5 is not a whole number. Type a whole number from 1.')).toBeVisible();
  await costs.getByLabel('Units').fill('6');
  await costs.getByLabel('One holds').fill('30');
  await costs.getByLabel('Measured density').fill('1');
  await expect(costs.getByText(/^6 of 30\smL$/)).toBeVisible();
  await costs.getByLabel('Container made of').selectOption('bare-aluminium');
  await expect(costs.getByText(/Nothing known here speaks against it/)).toBeVisible();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(costs.getByLabel('Container made of')).toHaveValue('');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(costs.getByLabel('Measured density')).toHaveValue('');
});

test('prices go out as a table and come back, with what would change shown first', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'costs');
  const costs = room(page);
  await price(page, 'Betaine', '12', '100');
  await costs.getByText('Prices as a table').click();
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    costs.getByRole('button', { name: 'Save the prices' }).click(),
  ]);
  const table = await readFile(await file.path(), 'utf8');
  expect(table).toContain(',Betaine,100,12,,EUR,\r\n');
  const upload = async (/** @type {string} */ text) =>
    costs
      .locator('input[type="file"]')
      .setInputFiles({ name: 'prices.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  await upload('name,price,currency\nBetaine,13,EUR\nUnheard of,1,EUR\n');
  await expect(costs.getByText('Nothing is taken in: one line is not understood.')).toBeVisible();
  await expect(costs.getByText(/Unheard of/)).toBeVisible();
  await expect(costs.getByRole('button', { name: 'Take them in' })).toHaveCount(0);
  await upload(table.replace(',Betaine,100,12,,EUR,', ',Betaine,250,24.90,,EUR,'));
  await expect(costs.getByText(/Betaine: price 12\.00 EUR → 24\.90 EUR; pack 100\sg → 250\sg/)).toBeVisible();
  await costs.getByRole('button', { name: 'Take them in' }).click();
  await material(page, 'Betaine').locator('summary').click();
  await expect(material(page, 'Betaine').getByLabel('Price of a pack')).toHaveValue('24.90');
});

test('no price, lot or supplier is in a link or in the written formula', async ({ page, browser }) => {
  await openStillroom(page);
  await goTo(page, 'costs');
  const planted = ['7351.77', '4321.99', '1357.31'];
  await price(page, 'Betaine', planted[0] ?? '', '100');
  await room(page)
    .getByLabel('Price of a container')
    .fill(planted[1] ?? '');
  await room(page)
    .getByLabel('An hour costs')
    .fill(planted[2] ?? '');
  await goTo(page, 'share');
  const share = page.locator('.room[data-room="share"]');
  await expect(share.getByRole('button', { name: 'As plain text' })).toBeVisible();
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    share.getByRole('button', { name: 'As plain text' }).click(),
  ]);
  const written = await readFile(await file.path(), 'utf8');
  expect(written).toContain('Betaine');
  const link = await share.locator('.share-address').inputValue();
  expect(link).toContain('#f=');
  // Whoever opens it reads nothing of them either.
  const elsewhere = await browser.newContext({ locale: 'en-GB' });
  const reader = await elsewhere.newPage();
  await reader.goto(link);
  await reader.waitForSelector('body[data-ready]');
  await expect(reader.getByText('Betaine').first()).toBeVisible();
  const read = await reader.locator('body').innerText();
  await elsewhere.close();
  for (const amount of planted) {
    expect(written).not.toContain(amount);
    expect(read).not.toContain(amount);
  }
});

test('a batch goes into jars and bottles, each counted, priced and on the list @desk', async ({ page }) => {
  test.setTimeout(90_000);
  await openStillroom(page);
  await goTo(page, 'costs');
  const costs = room(page);
  await costs.getByLabel('Units').fill('10');
  await costs.getByLabel('One holds').fill('50');
  await costs.getByLabel('Price of a container').fill('0.80');
  await costs.getByRole('button', { name: 'Add a kind' }).click();
  const bottle = costs.locator('.cost-kinds fieldset');
  await expect(bottle).toHaveCount(1);
  await bottle.getByLabel('Called').fill('Bottle');
  await bottle.getByLabel('How many; empty: the rest').fill('half');
  await expect(bottle.getByText(/is not a number. Type a whole number from 1/)).toBeVisible();
  await bottle.getByLabel('How many; empty: the rest').fill('4');
  await bottle.getByLabel('Price of a container').fill('0.60');
  // Ten jars were planned for, and the bottles are too much: that is said, and a batch that fills all planned at one tap.
  await expect(costs.getByText(/are short: Bottle\./)).toBeVisible();
  await costs.getByRole('button', { name: /which fills them all$/ }).click();
  await expect(costs.getByText(/are short: Bottle\./)).toBeHidden();
  await expect(costs.locator('.figure', { hasText: 'Bottle' }).filter({ hasText: /4 of 30\smL/ })).toBeVisible();
  await expect(costs.getByText(/^Planned: 14 units of several kinds/)).toBeVisible();
  await expect(line(page, 'Packaging').first()).toContainText('10.40 EUR');
  await expect(costs.locator('.cost-list')).toContainText('Bottle: 4 pieces (2.40 EUR)');
  await expect(costs.locator('.figure', { hasText: 'One unit: Bottle' })).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).include('.room[data-room="costs"]').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  // It stays; one kind less is one act that can be taken back.
  await waitUntilKept(page);
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await expect(bottle.getByLabel('Called')).toHaveValue('Bottle');
  await bottle.getByRole('button', { name: 'Remove' }).click();
  await expect(bottle).toHaveCount(0);
  const { scroll, width } = await page.evaluate(() => ({
    scroll: document.documentElement.scrollWidth,
    width: document.documentElement.clientWidth,
  }));
  expect(scroll).toBeLessThanOrEqual(width);
});
