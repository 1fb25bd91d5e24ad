// @ts-check

// A large backup comes back: one at a time, with progress, and if it is stopped nothing of it stays.

import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { goTo, openStillroom, waitForTheWhole, waitUntilKept } from './bench-hands.js';
import { readBuild } from './built-site.js';

/** @typedef {import('@playwright/test').Page} Page */

const { version } = await readBuild();
/** Records, photos and bytes of each photo; `STILLROOM_RESTORE=20000,2000,100000` tries the largest that may be. */
const [RECORDS, PHOTOS, BYTES] = (process.env.STILLROOM_RESTORE ?? '600,400,20000').split(',').map(Number);

/** Milliseconds after which something is taken to be stuck. */
const PATIENCE = RECORDS > 1000 ? 300_000 : 45_000;

/** Everything this device keeps, to be compared. @param {Page} page */
async function everythingKept(page) {
  return page.evaluate(async (folder) => {
    const { listPhotos } = await import(`${location.origin}/${folder}/rooms/batches/photos.js`);
    return JSON.stringify([Object.entries(localStorage).sort(), (await listPhotos()).sort()]);
  }, `v-${version}`);
}

/**
 * Makes a backup in the page and drops it there, as a person would. The file is made by another session, which keeps
 * nothing.
 * @param {Page} page
 * @param {{ records: number, photos: number, bytes: number, name: string }} options
 */
async function dropBackup(page, options) {
  return page.evaluate(
    async ({ folder, records, photos, bytes, name }) => {
      const seam = await import(`${location.origin}/${folder}/seam/stillroom.js`);
      await seam.default();
      for (const piece of ['desk', 'share', 'whole']) await new Promise((came) => seam.fetchPiece(piece, came));
      const maker = new seam.Stillroom({ decimalMark: 'point', keepNothing: true });
      // Materials are the smallest records that a maker may have many of.
      /** @type {Record<string, unknown>} */
      const many = {};
      for (let at = 1; at <= records; at += 1) {
        const number = (0xabc00000 + at).toString(16).padStart(16, '0');
        const material = {
          id: `o${number}`,
          name: `${name} ${at}`,
          class: 'oil',
          usual_phase: 'heated-oil',
          makeup: { Composite: [{ material: 'c2', amount: 'quantum-satis' }] },
        };
        many[`stillroom.material.${number}`] = { schema: 1, revision: 1, changed_at: 1, own: { material } };
      }
      const text = JSON.stringify({ format: 'stillroom-backup', version: 1, made_at: Date.now(), records: many });
      maker.readBackup(new TextEncoder().encode(text), []);
      maker.apply({ do: 'restore-backup', differing: 'theirs' });
      const archive = maker.beginBackup(`${location.origin}/`);
      const pieces = [archive.records()];
      const photo = new Uint8Array(bytes);
      for (let at = 0; at < bytes; at += 65_536)
        crypto.getRandomValues(photo.subarray(at, Math.min(bytes, at + 65_536)));
      photo.set([0xff, 0xd8, 0xff]);
      for (let at = 0; at < photos; at += 1) pieces.push(archive.photo(`feed-${at}`, Date.now(), photo));
      pieces.push(archive.finish());
      maker.free();
      const data = new DataTransfer();
      data.items.add(new File(pieces, `${name}.zip`));
      dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
      return data.files[0].size;
    },
    { folder: `v-${version}`, ...options },
  );
}

/** Ends the page's own guard against being left in the middle. @param {Page} page */
const acceptLeaving = (page) => page.on('dialog', (dialog) => void dialog.accept());

/**
 * Holds the photos of this device, as another page that is writing does, until it is let go: whatever is put waits.
 * @param {Page} page
 */
async function holdPhotos(page) {
  await page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const request = indexedDB.open('stillroom-photos');
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          const database = request.result;
          const store = database.transaction('photos', 'readwrite').objectStore('photos');
          let held = true;
          Reflect.set(globalThis, 'letGo', () => (held = false));
          const again = () => {
            if (!held) return database.close();
            store.count().onsuccess = again;
            resolve(undefined);
          };
          again();
        };
      }),
  );
  return () => page.evaluate(() => Reflect.get(globalThis, 'letGo')());
}

test('a large backup is restored with progress, and a second file dropped meanwhile is refused', async ({ page }) => {
  test.setTimeout(PATIENCE * 2);
  acceptLeaving(page);
  await openStillroom(page);
  await waitForTheWhole(page);
  await waitUntilKept(page);
  const began = Date.now();
  const size = await dropBackup(page, { records: RECORDS, photos: PHOTOS, bytes: BYTES, name: 'first' });
  await expect(page.locator('.backup')).toContainText(`${PHOTOS}`, { timeout: PATIENCE });
  const take = page.getByRole('button', { name: 'Put it on this device' });
  await expect(take).toBeVisible({ timeout: PATIENCE });
  const read = Date.now();
  const letGo = await holdPhotos(page);
  await take.click();
  const bar = page.locator('.restoring progress');
  await expect(bar).toBeVisible();
  await expect(bar).toHaveAttribute('max', String(PHOTOS));

  // A second file while the first is being put here.
  await dropBackup(page, { records: 1, photos: 0, bytes: 3, name: 'second' });
  await expect(page.locator('.backup .message')).toContainText('Another file is being worked on');
  await expect(page.getByRole('button', { name: 'Put it on this device' }), 'nothing of it is offered').toBeHidden();
  const free = Date.now();
  await letGo();

  await expect(page.locator('.notice', { hasText: 'on this device now' })).toBeVisible({ timeout: PATIENCE });
  const done = Date.now();
  await waitUntilKept(page).catch(() => {});
  const memory = await page.evaluate(() => /** @type {any} */ (performance).memory?.usedJSHeapSize);
  const state = await page.locator('#kept').getAttribute('data-state');
  console.log(
    `${RECORDS} records and ${PHOTOS} photos, ${size} bytes: read ${read - began} ms (the making of the file included), put here ${done - free} ms, kept ${Date.now() - done} ms later: ${state}; heap ${memory}`,
  );
  const kept = JSON.parse(await everythingKept(page));
  expect(kept[1].filter((/** @type {string} */ name) => name.startsWith('feed-'))).toHaveLength(PHOTOS);
  const materials = kept[0].filter((/** @type {string[]} */ [key]) => key.startsWith('stillroom.material.0000000'));
  if (state === 'kept')
    expect(materials.filter((/** @type {string[]} */ [, text]) => text.includes('first '))).toHaveLength(RECORDS);
  expect(JSON.stringify(kept)).not.toContain('second 1');
});

test('a restore that is stopped leaves everything exactly as it was', async ({ page }) => {
  test.setTimeout(PATIENCE * 2);
  acceptLeaving(page);
  await openStillroom(page);
  await waitForTheWhole(page);
  await waitUntilKept(page);
  const before = await everythingKept(page);
  await dropBackup(page, { records: 50, photos: Math.max(PHOTOS, 300), bytes: BYTES, name: 'stopped' });
  const take = page.getByRole('button', { name: 'Put it on this device' });
  await expect(take).toBeVisible({ timeout: PATIENCE });
  const letGo = await holdPhotos(page);
  await take.click();
  const stop = page.getByRole('button', { name: 'Stop and leave everything as it was' });
  await stop.click();
  // What was on its way arrives, and goes again.
  await letGo();
  await expect(page.locator('.backup .message')).toContainText('Stopped. Nothing was restored');
  expect(await everythingKept(page)).toBe(before);
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await waitForTheWhole(page);
  await waitUntilKept(page);
  expect(await everythingKept(page), 'nor is anything done later').toBe(before);
  // And the way is free for another file.
  await goTo(page, 'share');
  await dropBackup(page, { records: 1, photos: 0, bytes: 3, name: 'another' });
  await expect(page.locator('.backup-items')).toContainText('another 1');
});

test('a backup names its description, which stands in the build and says what the file holds', async ({
  page,
  baseURL,
}) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await goTo(page, 'share');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Write a backup file' }).click(),
  ]);
  const backup = JSON.parse(await readFile(await download.path(), 'utf8'));
  expect(backup.$schema).toBe(`${baseURL}schema/backup-1.json`);
  const answer = await page.request.get(backup.$schema);
  expect(answer.ok()).toBe(true);
  const schema = await answer.json();
  expect(schema.properties.version.const).toBe(backup.version);
  expect(Object.keys(schema.properties)).toEqual(expect.arrayContaining(Object.keys(backup)));
});

test('a photo is kept small whichever side is long', async ({ page }) => {
  await page.goto('./embed/blog.html');
  const sides = await page.evaluate(async (folder) => {
    const { shrinkPhoto } = await import(`${location.origin}/${folder}/rooms/batches/photos.js`);
    const found = [];
    for (const [width, height] of [
      [4000, 300],
      [300, 4000],
      [3000, 4000],
      [200, 100],
      [8000, 3],
    ]) {
      const canvas = new OffscreenCanvas(width, height);
      canvas.getContext('2d')?.fillRect(0, 0, width, height);
      const { canvas: small } = await shrinkPhoto(await canvas.convertToBlob());
      found.push([small.width, small.height]);
    }
    return found;
  }, `v-${version}`);
  expect(sides).toEqual([
    [1200, 90],
    [90, 1200],
    [900, 1200],
    [200, 100],
    [1200, 1],
  ]);
});
