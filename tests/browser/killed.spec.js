// @ts-check

// The browser itself is killed, its process and all, in the middle of things: what was said to be kept is there when it
// opens again. `STILLROOM_KILLS=16` kills so often at each of four places; a test run does it twice.

import { chromium, expect, test } from '@playwright/test';
import { spawn } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { goTo } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */

const KILLS = Number(process.env.STILLROOM_KILLS ?? 2);
/** Milliseconds between two keystrokes of somebody who types. */
const PACE = 50;
/**
 * Keystrokes that may be lost: a second of typing. They are counted, not timed, since a machine that is busy with something
 * else holds up the typing as it holds up the keeping.
 */
const MOST_LOST = 1000 / PACE;

/** A browser of its own with a profile of its own, that can be killed. */
class Mortal {
  /** @type {import('node:child_process').ChildProcess | undefined} */
  #process;
  /** @type {string} */
  #profile;
  /** @type {string} */
  #address;

  /** @param {string} profile @param {string} address */
  constructor(profile, address) {
    this.#profile = profile;
    this.#address = address;
  }

  /** @param {string} address */
  static async born(address) {
    return new Mortal(await mkdtemp(join(tmpdir(), 'stillroom-')), address);
  }

  /** Starts the browser on its profile and opens the page. @param {string} [path] @returns {Promise<Page>} */
  async open(path = '') {
    await rm(join(this.#profile, 'DevToolsActivePort'), { force: true });
    const { launchOptions } = test.info().project.use;
    this.#process = spawn(
      launchOptions?.executablePath ?? '/usr/bin/chromium',
      [
        ...(launchOptions?.args ?? []),
        '--headless=new',
        '--remote-debugging-port=0',
        `--user-data-dir=${this.#profile}`,
        'about:blank',
      ],
      { detached: true, stdio: 'ignore' },
    );
    const port = await this.#port();
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    const context = browser.contexts()[0];
    const page = context.pages()[0] ?? (await context.newPage());
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto(`${this.#address}${path}`);
    await page.waitForSelector('body[data-ready]');
    return page;
  }

  async #port() {
    for (let tries = 0; tries < 200; tries += 1) {
      const text = await readFile(join(this.#profile, 'DevToolsActivePort'), 'utf8').catch(() => '');
      if (text.includes('\n')) return text.split('\n')[0];
      await new Promise((soon) => setTimeout(soon, 50));
    }
    throw new Error('the browser did not say its port');
  }

  /** Ends the browser and all its processes, without a word. */
  async kill() {
    const child = this.#process;
    this.#process = undefined;
    if (!child?.pid) return;
    const gone = new Promise((over) => child.once('exit', over));
    process.kill(-child.pid, 'SIGKILL');
    await gone;
  }

  async buried() {
    await this.kill();
    await rm(this.#profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** @param {Page} page @returns {Promise<import('@playwright/test').Locator>} */
async function notesOf(page) {
  await goTo(page, 'formula');
  const notes = page.locator('.method textarea').last();
  if (!(await notes.isVisible())) await page.locator('.method summary').first().click();
  return notes;
}

const pause = (/** @type {number} */ milliseconds) => new Promise((soon) => setTimeout(soon, milliseconds));

test.describe.configure({ timeout: 60_000 + KILLS * 30_000 });

test('a browser killed while somebody types loses at most a second', async ({ baseURL }) => {
  const browser = await Mortal.born(baseURL ?? '');
  /** @type {number[]} */
  const lost = [];
  let ahead = 0;
  let longest = 0;
  try {
    for (let kill = 0; kill < KILLS; kill += 1) {
      const page = await browser.open();
      const notes = await notesOf(page);
      const end = Date.now() + 1200 + ((kill * 337) % 1500);
      /** When the newest text that the page says is kept was typed. */
      let confirmed = 0;
      /** @type {number[]} */
      const typed = [];
      while (Date.now() < end) {
        const now = Date.now();
        typed.push(now);
        await notes.fill(String(now));
        const { state, text } = await page.evaluate(() => ({
          state: document.getElementById('kept')?.dataset.state,
          text: /** @type {HTMLTextAreaElement} */ ([...document.querySelectorAll('.method textarea')].at(-1)).value,
        }));
        if (state === 'kept') confirmed = Number(text);
        await pause(PACE - (Date.now() - now));
      }
      const died = Date.now();
      await browser.kill();
      const again = await browser.open();
      const found = Number(await (await notesOf(again)).inputValue());
      lost.push(typed.filter((each) => each > found).length);
      longest = Math.max(longest, died - found);
      if (found < confirmed) ahead += 1;
      await browser.kill();
    }
  } finally {
    await browser.buried();
  }
  console.log(
    `killed while typing ${KILLS} times: at most ${Math.max(...lost)} keystrokes (${longest} ms) lost, ${ahead} times what was said to be kept`,
  );
  expect(ahead).toBe(0);
  expect(Math.max(...lost)).toBeLessThanOrEqual(MOST_LOST);
});

test('a browser killed during a run finds every step that was kept', async ({ baseURL }) => {
  const browser = await Mortal.born(baseURL ?? '');
  let lost = 0;
  try {
    let page = await browser.open('#batches');
    for (let kill = 0; kill < KILLS; kill += 1) {
      await expect(page.locator('.run, .finished, .begin-batch').filter({ visible: true }).first()).toBeVisible();
      // One run after the other.
      if (await page.locator('.finished').isVisible()) await page.locator('.finished .acts button').first().click();
      if (await page.locator('.begin-batch').isVisible())
        await page.getByRole('button', { name: /^Make 210 g/ }).click();
      await expect(page.locator('.run')).toBeVisible();
      const done = () =>
        page.locator('.run-bar progress').evaluate((bar) => /** @type {HTMLProgressElement} */ (bar).value);
      let confirmed = await done();
      for (let step = 0; step < 2; step += 1) {
        const on = page.locator('.run-next');
        if ((await page.locator('.finished').isVisible()) || (await on.isDisabled())) break;
        await on.click();
        await page.waitForFunction(() => document.getElementById('kept')?.dataset.state === 'kept');
        confirmed = await done();
      }
      await browser.kill();
      page = await browser.open('#batches');
      await expect(page.locator('.run, .finished').filter({ visible: true }).first()).toBeVisible();
      if ((await page.locator('.run').isVisible()) && (await done()) < confirmed) lost += 1;
    }
  } finally {
    await browser.buried();
  }
  console.log(`killed during a run ${KILLS} times: ${lost} times a kept step was lost`);
  expect(lost).toBe(0);
});

test('a browser killed right after a restore has what was restored', async ({ baseURL, page }) => {
  // A backup of twelve formulas, written by another browser.
  await page.goto('./');
  await page.waitForSelector('body[data-ready]');
  await goTo(page, 'shelf');
  await page.locator('.card .more').first().click();
  for (let count = 0; count < 12; count += 1) await page.locator('.card .tools:visible button').first().click();
  await expect(page.locator('.card-name')).toHaveCount(13);
  await goTo(page, 'share');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Write a backup file' }).click();
  const file = await (await download).path();
  let lost = 0;
  for (let kill = 0; kill < KILLS; kill += 1) {
    const browser = await Mortal.born(baseURL ?? '');
    try {
      const device = await browser.open('#share');
      await device.locator('input[type=file][accept*=zip]').setInputFiles(file);
      await device.getByRole('button', { name: 'Put it on this device' }).click();
      await expect(device.locator('.notice', { hasText: 'on this device' }).first()).toBeVisible();
      await device.waitForFunction(() => document.getElementById('kept')?.dataset.state === 'kept');
      await browser.kill();
      const again = await browser.open();
      await goTo(again, 'shelf');
      if ((await again.locator('.card-name').count()) < 13) lost += 1;
    } finally {
      await browser.buried();
    }
  }
  console.log(`killed right after a restore ${KILLS} times: ${lost} times something was lost`);
  expect(lost).toBe(0);
});

test('a browser killed right after a photo was added has it', async ({ baseURL }) => {
  const browser = await Mortal.born(baseURL ?? '');
  let lost = 0;
  try {
    let page = await browser.open('#batches');
    await page.getByRole('button', { name: /^Make 210 g/ }).click();
    await expect(page.locator('.run')).toBeVisible();
    for (let count = 0; count < 80 && !(await page.locator('.finished').isVisible()); count += 1)
      await page.locator('.run-next').click();
    for (let kill = 0; kill < KILLS; kill += 1) {
      // A day holds six photos.
      await page.getByLabel('Or of another day').fill(`2027-01-${String(1 + kill).padStart(2, '0')}`);
      await page.getByRole('button', { name: 'Write', exact: true }).click();
      const photo = await page.evaluate(async () => {
        const canvas = document.createElement('canvas');
        [canvas.width, canvas.height] = [400, 300];
        canvas.getContext('2d')?.fillRect(0, 0, 200, 300);
        const blob = await new Promise((made) => canvas.toBlob(made, 'image/png'));
        return [...new Uint8Array(await /** @type {Blob} */ (blob).arrayBuffer())];
      });
      await page
        .locator('.entry input[type="file"]')
        .last()
        .setInputFiles({ name: 'cream.png', mimeType: 'image/png', buffer: Buffer.from(photo) });
      await expect(page.locator('.reader canvas')).toBeVisible();
      await page.waitForFunction(() => document.getElementById('kept')?.dataset.state === 'kept');
      await browser.kill();
      page = await browser.open('#batches');
      await page.getByRole('button', { name: /Open$/ }).first().click();
      await expect(page.locator('.entry')).toHaveCount(kill + 1);
      if ((await page.locator('.photo canvas').count()) < kill + 1) {
        await pause(500);
        if ((await page.locator('.photo canvas').count()) < kill + 1) lost += 1;
      }
    }
  } finally {
    await browser.buried();
  }
  console.log(`killed right after a photo ${KILLS} times: ${lost} times it was lost`);
  expect(lost).toBe(0);
});
