// @ts-check

// The post: from the example to a page that is copied, saved, printed and opened again, with nothing private in it.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { HtmlValidate } from 'html-validate';
import { readFile } from 'node:fs/promises';
import { goTo, openStillroom, waitForTheWhole } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

/** @param {Page} page */
const room = (page) => page.locator('.room[data-room="post"]');

/**
 * What html-validate (<https://html-validate.org>) finds by its recommended rules.
 * @param {string} html
 * @param {boolean} isWhole whether it is a page of its own, whose headings begin with the first rank
 */
async function findFaults(html, isWhole) {
  const validator = new HtmlValidate({
    extends: ['html-validate:recommended'],
    rules: isWhole ? {} : { 'heading-level': ['error', { minInitialRank: 'h2' }] },
  });
  const { results } = await validator.validateString(html);
  return results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, line }) => `${line}: ${ruleId}: ${message}`),
  );
}

/** @param {Page} page @param {string} name */
async function copied(page, name) {
  await room(page).getByRole('button', { name, exact: true }).click();
  await expect(room(page).getByRole('status')).toHaveText('Copied.');
  return page.evaluate(() => navigator.clipboard.readText());
}

/** @param {Page} page @param {string} name */
async function saved(page, name) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    room(page).getByRole('button', { name, exact: true }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

/** Comes from the share room, as a maker does, once what can be taken instead was worked out. @param {Page} page */
async function enterPost(page) {
  await goTo(page, 'share');
  await page.getByRole('link', { name: 'Write the post about it' }).click();
  await expect(room(page).locator('[data-part="cautions"]')).toBeVisible({ timeout: 20_000 });
  await expect(room(page).locator('[data-part="instead"]')).toBeVisible({ timeout: 20_000 });
}

/** What a maker keeps to herself: of a material, of the label, of a batch and its journal. @param {Page} page */
async function plant(page) {
  await goTo(page, 'materials');
  await page.getByLabel(/^Search by name/).fill('Squalane');
  await page
    .locator('.hit', { has: page.getByText('Squalane', { exact: true }) })
    .last()
    .click();
  const card = page.locator('.material-card');
  await page.getByText('Price, density and notes of my own').click();
  await card.getByLabel('Price of a pack').fill('98.76');
  await card.getByLabel('A pack holds').fill('6543 g');
  await card.getByLabel('Lot', { exact: true }).fill('PLANTEDLOT');
  await card.getByLabel('Your notes').fill('from PLANTEDSUPPLIER');
  await card.getByLabel('Your notes').blur();
  await goTo(page, 'label');
  await page.getByLabel('Name of who answers for it').fill('PLANTEDPERSON');
  await goTo(page, 'batches');
  await page.getByRole('button', { name: /^Make 210 g/ }).click();
  await expect(page.locator('.run')).toBeVisible();
  for (let count = 0; count < 60; count += 1) {
    if ((await page.locator('.run').getAttribute('data-step')) === 'finish') break;
    await page.locator('.run-next').click();
  }
  await page.locator('.run-next').click();
  await page.getByRole('button', { name: 'Write down today' }).click();
  await page.getByLabel('Smell', { exact: true }).fill('PLANTEDJOURNAL');
  await page.getByLabel('Smell', { exact: true }).blur();
}
const PLANTED = ['98.76', '6543', 'PLANTEDLOT', 'PLANTEDSUPPLIER', 'PLANTEDPERSON', 'PLANTEDJOURNAL'];

test('from the example to the post: copied and saved, valid, its link opens the formula, and nothing private is in it', async ({
  page,
  context,
  browser,
}) => {
  test.setTimeout(120_000);
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openStillroom(page);
  await waitForTheWhole(page);
  await plant(page);
  const kept = await page.evaluate(() => JSON.stringify(Object.entries(localStorage)));
  for (const planted of PLANTED) expect(kept, 'it was planted').toContain(planted);

  await goTo(page, 'formula');
  await enterPost(page);
  const article = room(page).locator('.post-article');
  for (const part of [
    'formula',
    'sizes',
    'method',
    'why',
    'keeping',
    'findings',
    'ingredients',
    'link',
    'code',
    'embed',
  ])
    await expect(article.locator(`[data-part="${part}"]`)).toBeVisible();
  await expect(article.locator('[data-part="sizes"] thead')).toContainText(/105.g.*210.g.*2100.g/s);

  const markdown = await copied(page, 'Copy Markdown');
  expect(markdown).toMatch(/^# Cucumber and oat gel cream\n/);
  const html = await copied(page, 'Copy HTML');
  const file = await saved(page, 'Save as .html');
  expect(file.name).toBe('Cucumber-and-oat-gel-cream.html');
  const whole = file.bytes.toString();
  const svg = await saved(page, 'Save as .svg');
  const png = await saved(page, 'Save as .png');
  for (const planted of PLANTED)
    for (const text of [markdown, html, whole, svg.bytes.toString(), await room(page).innerHTML()])
      expect(text).not.toContain(planted);

  // Valid, without style, and with no script but what machines read.
  expect(await findFaults(html, false)).toEqual([]);
  expect(await findFaults(whole, true)).toEqual([]);
  expect(await findFaults(whole.replace('</h1>', ''), true), 'a fault is found').not.toEqual([]);
  expect(whole).not.toMatch(/<style|style=|onload/);
  const scripts = [...whole.matchAll(/<script[^>]*>([^<]*)<\/script>/g)];
  expect(scripts.length).toBe(1);
  expect(JSON.parse(scripts[0][1])['@type']).toBe('HowTo');

  // A picture in pixels is as large as the drawing says: width and height of a PNG stand in its first chunk.
  const [, width, height] = /width="(\d+)" height="(\d+)"/.exec(svg.bytes.toString()) ?? [];
  expect([png.bytes.readUInt32BE(16), png.bytes.readUInt32BE(20)]).toEqual([Number(width), Number(height)]);
  expect(png.bytes.length).toBeGreaterThan(20_000);

  // Read as a page by somebody else: every link in it leads where it says.
  const reader = await (await browser.newContext()).newPage();
  await reader.setContent(whole);
  await expect(reader.getByRole('heading', { level: 1 })).toHaveText('Cucumber and oat gel cream');
  const addresses = await reader
    .getByRole('link')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href')));
  expect(addresses.length).toBeGreaterThan(0);
  expect(markdown).toContain(`](<${addresses[0]}>)`);
  for (const address of addresses) {
    await reader.goto(address ?? '');
    await expect(reader.getByRole('heading', { name: 'A formula that was shared with you' })).toBeVisible({
      timeout: 20_000,
    });
    await expect(reader.locator('.shared-sheet tr', { hasText: 'Squalane' }).first()).toContainText('8.4');
    for (const planted of PLANTED) expect(await reader.locator('body').innerHTML()).not.toContain(planted);
    await reader.goto('about:blank');
  }
  await reader.context().close();
});

test('a box leaves a part out of everything, undo takes it in again, and cautions stay @desk', async ({
  page,
  context,
}) => {
  test.setTimeout(90_000);
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openStillroom(page);
  await waitForTheWhole(page);
  await enterPost(page);
  const article = room(page).locator('.post-article');
  await expect(room(page).getByRole('checkbox', { name: /^Cautions/ })).toBeDisabled();
  await room(page)
    .getByRole('checkbox', { name: /^Why each material/ })
    .uncheck();
  await expect(article.locator('[data-part="why"]')).toHaveCount(0);
  expect(await copied(page, 'Copy Markdown')).not.toContain('Why each material');
  expect(await copied(page, 'Copy HTML')).not.toContain('Why each material');
  // It is kept with the formula.
  await expect(page.locator('#kept[data-state="kept"]')).toBeAttached();
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await expect(room(page).locator('[data-part="cautions"]')).toBeVisible({ timeout: 20_000 });
  await expect(article.locator('[data-part="why"]')).toHaveCount(0);
  await room(page)
    .getByRole('checkbox', { name: /^How long it keeps/ })
    .uncheck();
  await expect(article.locator('[data-part="keeping"]')).toHaveCount(0);
  await page.getByRole('button', { name: /^Undo/ }).first().click();
  await expect(article.locator('[data-part="keeping"]')).toBeVisible();
  await expect(room(page).getByRole('checkbox', { name: /^How long it keeps/ })).toBeChecked();

  // A batch of another size; what is not understood says so, and what was typed up to it counts no more than that.
  const batch = room(page).getByLabel('Batch', { exact: true });
  await batch.fill('500 g');
  await expect(article.locator('[data-part="sizes"] thead')).toContainText(/250.g.*500.g.*5000.g/s);
  await batch.fill('a bowlful');
  await expect(room(page).locator('.post-sizes .message:visible')).toContainText('“a bowlful” is not a number');
  await expect(article.locator('[data-part="sizes"] thead')).toContainText(/105.g.*210.g.*2100.g/s);
});

test('the post can be read and worked by everybody, and prints without what cannot be pressed @desk', async ({
  page,
}) => {
  test.setTimeout(90_000);
  await openStillroom(page);
  await waitForTheWhole(page);
  for (const colorScheme of /** @type {const} */ (['light', 'dark'])) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await enterPost(page);
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target).join(' | ')}`)).toEqual([]);
  }
  await page.emulateMedia({ media: 'print' });
  await expect(room(page).locator('.post-article h4')).toBeVisible();
  await expect(room(page).getByRole('button').filter({ visible: true })).toHaveCount(0);
  await expect(room(page).getByRole('checkbox').filter({ visible: true })).toHaveCount(0);
  await expect(page.locator('.weigh-sheet').filter({ visible: true })).toHaveCount(0);
});
