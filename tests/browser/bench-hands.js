// @ts-check

// What a maker's hands do on the page, for every browser test.

import { expect } from '@playwright/test';

/** @typedef {import('@playwright/test').Page} Page */

/** @param {Page} page */
export async function openStillroom(page) {
  await page.goto('./');
  await page.waitForSelector('body[data-ready]');
}

/**
 * @param {Page} page
 * @param {string} room
 */
export async function goTo(page, room) {
  await page.evaluate((name) => {
    location.hash = name;
  }, room);
  const place = page.locator(`[data-room="${room}"].room`);
  await expect(place).toBeVisible();
  // Furnished, or it says why not.
  await expect(place.getByText('Fetching this room…')).toHaveCount(0, { timeout: 20_000 });
}

/**
 * The amount field of a line by the name of its material.
 * @param {Page} page
 * @param {string} name
 */
export function amountOf(page, name) {
  return page.getByLabel(`Amount of ${name}`, { exact: true });
}

/**
 * The masses of the weigh sheet, in hundredths of a gram, so that they sum without a binary fraction.
 * @param {Page} page
 */
export async function weighedHundredths(page) {
  const texts = await page.locator('.weighed-mass').allInnerTexts();
  return texts.map((text) => hundredths(text));
}

/** @param {string} text */
export function hundredths(text) {
  const match = /(\d+)(?:\.(\d{1,2}))?/.exec(text);
  if (!match) throw new Error(`no number in “${text}”`);
  return Number(match[1]) * 100 + Number((match[2] ?? '').padEnd(2, '0'));
}

/** @param {number[]} numbers */
export const sum = (numbers) => numbers.reduce((total, number) => total + number, 0);

/** Waits until the page holds everything, not only the main job. @param {Page} page */
export async function waitForTheWhole(page) {
  await expect(page.locator('body[data-complete]')).toBeAttached({ timeout: 20_000 });
}

/** @param {Page} page */
export async function waitUntilKept(page) {
  await expect(page.locator('#kept[data-state="kept"]')).toBeVisible();
}

/** Opens the quiet line under a formula's name: its use, its pH, what its amounts are. @param {Page} page */
export async function openAbout(page) {
  const line = page.locator('.about-open');
  if ((await line.getAttribute('aria-expanded')) === 'false') await line.click();
}
