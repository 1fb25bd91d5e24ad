// @ts-check

// A run at the bench on a phone: from the first weigh card to the printed record; killed and taken up; watched afterwards.

import AxeBuilder from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { goTo, openStillroom, waitForTheWhole } from './bench-hands.js';
import { readBuild } from './built-site.js';

/** @typedef {import('@playwright/test').Page} Page */

/** @param {Page} page */
async function openBatches(page) {
  await page.goto('./#batches');
  await page.waitForSelector('.begin-batch:visible, .run:visible');
}

/** @param {Page} page */
async function beginBatch(page) {
  await openBatches(page);
  await page.getByRole('button', { name: /^Make 210 g/ }).click();
  await expect(page.locator('.run')).toBeVisible();
}

/** @param {Page} page */
const step = (page) => page.locator('.run').getAttribute('data-step');
/** @param {Page} page */
const next = (page) => page.locator('.run-next').click();

/**
 * Goes on until a step of that kind is in sight.
 * @param {Page} page
 * @param {string} wanted
 */
async function goOnTo(page, wanted) {
  for (let count = 0; count < 60; count += 1) {
    if ((await step(page))?.startsWith(wanted)) return;
    await next(page);
  }
  throw new Error(`no step ${wanted}; the last was ${await step(page)}`);
}

/** What stands on the screen of a run, the clock apart. @param {Page} page */
async function standing(page) {
  await expect(page.locator('.run')).toBeVisible();
  return page.evaluate(() => ({
    step: document.querySelector('.run')?.getAttribute('data-step'),
    title: document.querySelector('.run-title')?.textContent,
    big: document.querySelector('.run-big')?.textContent,
    about: document.querySelector('.run-about')?.textContent,
    next: document.querySelector('.run-next')?.textContent,
    steps: document.querySelector('.run-steps')?.textContent,
    progress: document.querySelector('.run-bar progress')?.getAttribute('value'),
  }));
}

test('a maker runs a batch on a phone from the first weigh card to the printed record', async ({ page }) => {
  await openStillroom(page);
  await goTo(page, 'bench');
  // One tap from the formula, or from the sheet.
  await page.getByRole('button', { name: 'Begin weighing' }).click();
  await page.getByRole('textbox', { name: 'Room' }).fill('21');
  await page.getByLabel('Weighed by').fill('A maker');
  await page.getByLabel('Equipment: pots, mixer').fill('Steel pot, hand blender');
  await next(page);

  await page.getByLabel('Empty beaker').fill('150.5');
  await next(page);
  await expect(page.locator('.run-big')).toHaveText(/131\.1\s*g/);
  await expect(page.locator('.run-about')).toContainText('0.0 g now, 131.1 g afterwards');
  await next(page);
  await next(page);

  // 4.4 g in place of 4.2: everything is brought to it.
  await expect(page.locator('.run-title')).toHaveText('Betaine');
  await page.getByLabel('What the scale shows').fill('4,4');
  await next(page);
  await expect(page.locator('.run .finding')).toContainText('0.2 g too much');
  await expect(page.locator('.run-next')).toBeDisabled();
  await page.getByRole('button', { name: /batch of 220 g/ }).click();
  await expect(page.locator('.run-title')).toHaveText('Water, distilled');
  await expect(page.locator('.run-big')).toHaveText(/6\.2\s*g/);
  await next(page);

  await goOnTo(page, 'heat');
  await page.getByLabel('Thermometer').fill('71');
  await page.getByRole('button', { name: 'Note it' }).click();
  await goOnTo(page, 'replace');
  const before = Number(await page.getByLabel('Before heating').inputValue());
  await page.getByLabel('Now, with its beaker').fill(String((before * 100 - 430) / 100));
  await page.getByRole('button', { name: 'Note it' }).last().click();
  await expect(page.locator('.run-big')).toHaveText(/4\.3\s*g/);
  await next(page);

  await expect(page.locator('.run-title')).toHaveText('Bring the phases together');
  await expect(page.locator('.figure', { hasText: 'Temperature together' })).toContainText('°C');
  await goOnTo(page, 'blend');
  await page.getByRole('button', { name: 'Start the timer' }).click();
  await expect(page.locator('.clock')).toHaveText(/1:2\d/);
  await page.getByRole('button', { name: 'Stop' }).click();
  await goOnTo(page, 'cool');
  const thermometer = page.locator('.run').getByLabel('Batch', { exact: true });
  const note = page.getByRole('button', { name: 'Note it' }).first();
  await page.clock.install({ time: new Date() });
  await thermometer.fill('64');
  await note.click();
  await expect(page.locator('.run-about')).toContainText('Two readings');
  for (const degrees of ['57.5', '52']) {
    await page.clock.fastForward('05:00');
    await thermometer.fill(degrees);
    await note.click();
  }
  // From 64 to 52 °C in ten minutes in a room of 21 °C: 40 °C is reached 25 minutes after the first reading.
  await expect(page.locator('.figure', { hasText: 'Cool enough at' }).locator('summary b')).toHaveText(
    /^\d\d:\d\d \(\d\d:\d\d to \d\d:\d\d\)$/,
  );
  await expect(page.locator('.curve-picture')).toHaveAttribute(
    'aria-label',
    /^Cooling curve through 3 readings, down to 40\s°C$/,
  );
  await goOnTo(page, 'ph');
  await page.locator('.run').getByLabel('pH of the batch').fill('4.9');
  await next(page);
  await page.getByRole('button', { name: '7 × 30.0 g' }).click();
  await next(page);
  await page.getByLabel('Look, colour, smell').fill('smooth, pale green');
  await next(page);

  const record = page.locator('.record');
  await expect(record).toBeVisible();
  for (const text of [
    'brought from 210 g to 220 g',
    '4.3 g',
    '4.9',
    '7 × 30.0 g',
    '95.5 %',
    'Regulation (EC) No 1223/2009',
  ]) {
    await expect(record).toContainText(text);
  }
  await expect(record.getByLabel('Look, colour, smell')).toHaveValue('smooth, pale green');
  for (const format of /** @type {const} */ (['A4', 'Letter'])) {
    const pdf = await page.pdf({ format });
    expect(pdf.length).toBeGreaterThan(20_000);
    // As many pages as a stapled record has; each is an object of its own in the file.
    const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(0);
    expect(pages).toBeLessThanOrEqual(4);
  }
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.record-table')).toBeVisible();
  await expect(page.locator('.signatures')).toBeVisible();
  await expect(page.locator('.journal')).toBeHidden();
  await expect(page.locator('.desk')).toBeHidden();
  const overflow = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overflow).toBeLessThanOrEqual(0);
});

test('a run whose tab is killed at every step is taken up where it was', async ({ context }) => {
  test.setTimeout(180_000);
  let page = await context.newPage();
  await beginBatch(page);
  let steps = 0;
  for (;;) {
    const before = await standing(page);
    // The process of the page dies at once: no event tells it to keep anything.
    const cdp = await context.newCDPSession(page);
    const gone = page.waitForEvent('crash');
    void cdp.send('Page.crash').catch(() => {});
    await gone;
    await page.close();
    page = await context.newPage();
    await openBatches(page);
    expect(await standing(page)).toEqual(before);
    if (before.step === 'finish') break;
    await next(page);
    steps += 1;
  }
  expect(steps).toBeGreaterThan(25);
});

test('the back button asks before it leaves a run, and a reload loses nothing', async ({ page }) => {
  await page.goto('./#bench');
  await page.waitForSelector('body[data-ready]');
  await beginBatch(page);
  await next(page);
  await page.getByLabel('Empty beaker').fill('99.5');
  await next(page);
  const before = await standing(page);
  await page.goBack();
  await expect(page.getByRole('alertdialog')).toBeVisible();
  await page.getByRole('button', { name: 'Stay' }).click();
  expect(await standing(page)).toEqual(before);
  await page.reload();
  await expect(page.locator('.run')).toBeVisible();
  expect(await standing(page)).toEqual(before);
  await page.goBack();
  await page.getByRole('button', { name: 'Leave', exact: true }).click();
  await expect(page.locator('.run')).toBeHidden();
  await page.getByRole('button', { name: /Go on$/ }).click();
  expect(await standing(page)).toEqual(before);
});

test('what is typed wrong says what is accepted; what was done wrong is taken back and stays crossed out', async ({
  page,
}) => {
  await beginBatch(page);
  await goOnTo(page, 'weigh');
  await page.getByLabel('What the scale shows').fill('a lot');
  await next(page);
  await expect(page.locator('.run .message')).toContainText('what the scale shows, such as 1.5');
  await page.getByLabel('What the scale shows').fill('12');
  await page.keyboard.press('Enter');
  await expect(page.locator('.run .finding')).toContainText('12.0 g of 131.1 g is in');
  await page.getByRole('button', { name: /^Take back/ }).click();
  await expect(page.locator('.run-big')).toHaveText(/131\.1/);
  await page.getByRole('button', { name: 'All steps' }).click();
  await page.getByText('The record so far').click();
  await expect(page.locator('.so-far .taken-back')).toContainText('Water, distilled: 12 g in');
});

test('a key or a pedal goes on without a touch @desk', async ({ page }) => {
  await beginBatch(page);
  await page.keyboard.press('Space');
  await expect(page.locator('.run')).toHaveAttribute('data-step', /^beaker/);
  await page.keyboard.press('PageDown');
  await expect(page.locator('.run')).toHaveAttribute('data-step', /^weigh/);
});

test('a timer stops half-way to scrape the walls, and is heard and felt', async ({ page }) => {
  await page.addInitScript(() => {
    /** @type {unknown[]} */
    const felt = [];
    Object.assign(globalThis, { felt });
    navigator.vibrate = (pattern) => {
      felt.push(pattern);
      return true;
    };
  });
  await beginBatch(page);
  await goOnTo(page, 'blend');
  await page.getByLabel('Minutes').fill('0.1');
  await page.getByRole('button', { name: 'Start the timer' }).click();
  await expect(page.locator('.at-stop')).toContainText('Scrape the walls');
  expect(await page.evaluate(() => Reflect.get(globalThis, 'felt').length)).toBe(1);
  await page.reload();
  await expect(page.locator('.at-stop')).toContainText('Scrape the walls');
  await page.locator('.timer').getByRole('button', { name: 'Go on' }).click();
  await expect(page.locator('.at-stop')).toContainText('Blended');
});

test('the journal reads a colour from a photo beside a white, keeps it on the device and in the backup, and writes a calendar', async ({
  page,
  browser,
}) => {
  await beginBatch(page);
  await goOnTo(page, 'finish');
  await next(page);
  await page.getByRole('button', { name: 'Write down today' }).click();
  await page.getByLabel('Smell', { exact: true }).fill('cucumber, faint');
  // A photo: white paper on the left, a green cream on the right.
  const photo = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [1600, 800];
    const paint = /** @type {CanvasRenderingContext2D} */ (canvas.getContext('2d'));
    paint.fillStyle = 'rgb(232, 230, 224)';
    paint.fillRect(0, 0, 800, 800);
    paint.fillStyle = 'rgb(150, 180, 90)';
    paint.fillRect(800, 0, 800, 800);
    const blob = /** @type {Blob} */ (
      await new Promise((resolve) => canvas.toBlob((made) => resolve(/** @type {Blob} */ (made)), 'image/png'))
    );
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  await page
    .locator('.entry input[type="file"]')
    .setInputFiles({ name: 'cream.png', mimeType: 'image/png', buffer: Buffer.from(photo) });
  const canvas = page.locator('.reader canvas');
  await expect(canvas).toBeVisible();
  const box = /** @type {{ width: number, height: number }} */ (await canvas.boundingBox());
  // The wrong way round first: the cream as the white is refused.
  await canvas.click({ position: { x: box.width * 0.75, y: box.height / 2 } });
  await canvas.click({ position: { x: box.width * 0.25, y: box.height / 2 } });
  await expect(page.locator('.reader .message')).toContainText('lighter than the white');
  await canvas.click({ position: { x: box.width * 0.25, y: box.height / 2 } });
  await expect(page.locator('.reader-hint')).toContainText('product');
  await canvas.click({ position: { x: box.width * 0.75, y: box.height / 2 } });
  await expect(page.locator('.entry-colour')).toContainText('L*');
  await expect(page.locator('.photo canvas')).toBeVisible();
  const { version } = await readBuild();
  const size = await page.evaluate(async (folder) => {
    const { listPhotos, getPhoto } = await import(`${location.origin}/${folder}/rooms/batches/photos.js`);
    const names = await listPhotos();
    return { count: names.length, bytes: (await getPhoto(names[0])).blob.size };
  }, `v-${version}`);
  expect(size.count).toBe(1);
  expect(size.bytes).toBeLessThan(200_000);
  await page.reload();
  await page.getByRole('button', { name: /Open$/ }).click();
  await expect(page.getByLabel('Smell', { exact: true })).toHaveValue('cucumber, faint');
  await expect(page.locator('.photo canvas')).toBeVisible();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: /calendar file/ }).click();
  const file = await (await download).createReadStream();
  let calendar = '';
  for await (const chunk of file) calendar += chunk;
  expect(calendar.split('\r\n')[0]).toBe('BEGIN:VCALENDAR');
  expect(calendar.match(/BEGIN:VEVENT/g)).toHaveLength(4);

  // The backup takes the photo along, in a zip, and another device gets it from there.
  await goTo(page, 'share');
  const backup = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Write a backup file' }).click();
  expect((await backup).suggestedFilename()).toMatch(/^stillroom-\d{4}-\d\d-\d\d\.zip$/);
  const zip = await (await backup).path();
  const other = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
  await openStillroom(other);
  await waitForTheWhole(other);
  await goTo(other, 'share');
  await other.locator('input[type=file][accept*=zip]').setInputFiles(zip);
  await expect(other.getByText('One photo is in it, which is not on this device yet.')).toBeVisible();
  await other.getByRole('button', { name: 'Put it on this device' }).click();
  await expect(other.getByText('One photo is on this device now.')).toBeVisible();
  await goTo(other, 'batches');
  await other.getByRole('button', { name: /Open$/ }).click();
  await expect(other.locator('.photo canvas')).toBeVisible();
  // Once its batch is gone for good, the photo can go.
  await other.evaluate(() => {
    for (const key of Object.keys(localStorage)) if (/batch|journal/.test(key)) localStorage.removeItem(key);
    // The log of what was written last would bring it back.
    indexedDB.deleteDatabase('stillroom-log');
  });
  await other.reload();
  await waitForTheWhole(other);
  await goTo(other, 'share');
  await expect(other.getByText('belongs to no batch any more')).toBeVisible();
  await other.getByRole('button', { name: 'Remove these photos' }).click();
  await expect(other.getByText('belongs to no batch any more')).toBeHidden();
  await other.context().close();
});

test('the rooms of a batch are sound for assistive technology @desk', async ({ page }) => {
  // Ten looks, each of which reads all of the page.
  test.setTimeout(150_000);
  const look = async () => {
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations).toEqual([]);
  };
  await openBatches(page);
  await look();
  await beginBatch(page);
  for (const wanted of ['prepare', 'weigh', 'replace', 'blend', 'cool', 'fill', 'finish']) {
    await goOnTo(page, wanted);
    await look();
  }
  await page.getByRole('button', { name: 'All steps' }).click();
  await look();
  await page.getByRole('button', { name: 'All steps' }).click();
  await next(page);
  await page.getByRole('button', { name: 'Write down today' }).click();
  await look();
});
