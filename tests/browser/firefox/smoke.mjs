// @ts-check

// The main job in Firefox, driven by WebDriver BiDi: the built page opens and shows the example, a changed amount changes the
// total, weighing begins, and all of it is there again after a reload. What people do is tested in Chromium; this shows that
// the page is not of one browser alone.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import puppeteer from 'puppeteer-core';

const address = process.env.STILLROOM_ADDRESS ?? 'http://127.0.0.1:8412/';
const executablePath = process.env.FIREFOX_PATH ?? '/usr/bin/firefox-esr';
/** Milliseconds for what the page does: a first start of Firefox on a slow machine is long. */
const PATIENCE = 20_000;

/** @type {import('puppeteer-core').Browser} */
let browser;
/** @type {import('puppeteer-core').Page} */
let page;
/** What went wrong in the page. @type {string[]} */
const troubles = [];

before(async () => {
  browser = await puppeteer.launch({ browser: 'firefox', executablePath, headless: true, timeout: PATIENCE });
  page = await browser.newPage();
  page.setDefaultTimeout(PATIENCE);
  page.on('pageerror', (error) => troubles.push(String(error)));
  await page.setViewport({ width: 390, height: 844 });
});

after(async () => {
  await browser?.close();
});

/** The text of an element, as people read it. @param {string} selector */
const textOf = (selector) =>
  page.$eval(selector, (element) => /** @type {HTMLElement} */ (element).innerText.replaceAll('\u00a0', ' ').trim());

/** Waits until an element says something. @param {string} selector @param {string} text */
const waitForText = (selector, text) =>
  page.waitForFunction(
    (where, what) => document.querySelector(where)?.textContent?.replaceAll('\u00a0', ' ').includes(what),
    { timeout: PATIENCE },
    selector,
    text,
  );

/** Three clicks select all of a field: what is typed takes its place. @param {string} text */
async function typeFirstAmount(text) {
  await page.locator('.line .amount input').click({ count: 3 });
  await page.keyboard.type(text);
}

const TOTAL = '.phases + .total';

test('Firefox opens the built page and shows the example', async () => {
  await page.goto(address);
  await page.waitForSelector('body[data-ready]');
  assert.match(await browser.version(), /firefox/i);
  assert.equal(await textOf('.card-name'), 'Cucumber and oat gel cream');
  await page.locator('.card-open').click();
  await waitForText(TOTAL, '100.00 %');
  assert.equal(await textOf('.line-name'), 'Water, distilled');
});

test('an amount that is typed changes the total', async () => {
  await typeFirstAmount('60');
  await waitForText(TOTAL, '97.60 %');
  await typeFirstAmount('62.9');
  await waitForText(TOTAL, '100.50 %');
  await typeFirstAmount('62.4');
  await waitForText(TOTAL, '100.00 %');
  // Another line shows that it is this text that is kept, not the example's own.
  await page.keyboard.press('Enter');
  await page.keyboard.type('11.5');
  await waitForText(TOTAL, '99.50 %');
  await typeFirstAmount('62.9');
  await waitForText(TOTAL, '100.00 %');
});

test('weighing begins', async () => {
  await page.locator('.bar .begin').click();
  await page.waitForSelector('.run');
  await page.locator('.run-next').click();
  await page.locator('.run-next').click();
  await waitForText('.run', 'Water, distilled');
});

test('after a reload everything is kept', async () => {
  await page.waitForSelector('#kept[data-state="kept"]');
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  // The run stands where it stood.
  await page.waitForSelector('.run .run-next');
  await waitForText('.run', 'Water, distilled');
  await page.goto(`${address}#formula`);
  await waitForText(TOTAL, '100.00 %');
  const amounts = await page.$$eval('.line .amount input', (inputs) => inputs.map((input) => input.value));
  assert.deepEqual(amounts.slice(0, 2), ['62.90', '11.50']);
  assert.deepEqual(troubles, []);
});
