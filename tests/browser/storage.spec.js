// @ts-check

// A phone's storage is the maker's only notebook: pages that end between two writes, storage that is full or forbidden or
// emptied, two tabs.

import { expect, test } from '@playwright/test';
import { amountOf, goTo, openStillroom, waitUntilKept } from './bench-hands.js';
import { readBuild } from './built-site.js';

/** @typedef {import('@playwright/test').Page} Page */

/**
 * A thousand sessions of the built seam on the browser's own local storage. Each is ended in the middle of keeping: from a
 * random write on, nothing it does reaches the storage, as when a process is killed between two writes. What the next
 * session finds must be all of the old state or all of the new one. A storage shim, not a killed process: what it cannot
 * show is a browser that tears a single write apart.
 */
for (const pieces of [['desk'], ['desk', 'share', 'whole']]) {
  test(`a thousand sessions end between any two storage writes and nothing is lost${pieces.length > 1 ? '' : ', before the rest is fetched'}`, async ({
    page,
  }) => {
    await endAThousand(page, pieces);
  });
}

/** @param {Page} page @param {string[]} pieces */
async function endAThousand(page, pieces) {
  test.setTimeout(240_000);
  const { version } = await readBuild();
  await page.goto('./icons/icon.svg');
  const seen = await page.evaluate(
    async ([folder, ...pieces]) => {
      const seam = await import(`${location.origin}/${folder}/seam/stillroom.js`);
      await seam.default();
      for (const piece of pieces) await new Promise((came) => seam.fetchPiece(piece, came));
      const { setItem, removeItem } = Storage.prototype;
      let left = Infinity;
      const lives = () => (left -= 1) >= 0;
      Storage.prototype.setItem = function (/** @type {string} */ key, /** @type {string} */ text) {
        if (lives()) setItem.call(this, key, text);
      };
      Storage.prototype.removeItem = function (/** @type {string} */ key) {
        if (lives()) removeItem.call(this, key);
      };
      let seed = 0x2545f491;
      const below = (/** @type {number} */ most) => {
        seed ^= seed << 13;
        seed ^= seed >>> 17;
        seed ^= seed << 5;
        return (seed >>> 0) % most;
      };
      const open = () => new seam.Stillroom({ decimalMark: 'point', keepNothing: false });
      const shown = (/** @type {any} */ session) => {
        const view = session.showEverything();
        return JSON.stringify([
          view.formula?.notes,
          view.formula?.name,
          view.lines.map((/** @type {any} */ line) => [line.name, line.amount]),
          view.ownMaterials,
          view.status.unreadable,
        ]);
      };
      localStorage.clear();
      const first = open();
      first.keep();
      first.free();
      const counts = { old: 0, new: 0, neither: 0 };
      for (let turn = 0; turn < 1000; turn += 1) {
        const session = open();
        const before = shown(session);
        const view = session.showEverything();
        const kind = below(pieces.includes('whole') ? 3 : 2);
        if (kind === 0) {
          session.apply({ do: 'set-notes', text: `note ${turn}` });
          // Before the rest is there no material can be made: then the settings are the other record.
          if (pieces.includes('whole')) session.apply({ do: 'new-material', composite: true, name: `own ${turn}` });
          else session.apply({ do: 'set-setting', name: 'tolerance', text: `${1 + (turn % 7)}` });
        } else if (kind === 1) {
          const line = view.lines[below(view.lines.length)].id;
          session.apply({ do: 'set-amount', line, text: `${turn % 3}.5` });
          session.apply({ do: 'set-setting', name: 'tolerance', text: `${1 + (turn % 5)}` });
        } else {
          // A formula, its own materials and what they are made of, in one act.
          const { fragment } = session.linkOf(view.formula.id, 'https://maker.example/', false);
          session.apply({ do: 'delete-formula', formula: view.formula.id });
          for (const own of view.ownMaterials.slice(0, 3)) session.apply({ do: 'delete-material', material: own.id });
          session.apply({ do: 'keep-copy', link: fragment });
        }
        const after = shown(session);
        left = below(8);
        session.keep();
        left = below(3);
        // Whoever opens next may be ended while it puts things right.
        open().free();
        left = Infinity;
        const next = open();
        const found = shown(next);
        if (found === after) counts.new += 1;
        else if (found === before) counts.old += 1;
        else counts.neither += 1;
        session.free();
        next.free();
      }
      Storage.prototype.setItem = setItem;
      Storage.prototype.removeItem = removeItem;
      return counts;
    },
    [`v-${version}`, ...pieces],
  );
  console.log(`1000 sessions ended: ${seen.old} left the old state, ${seen.new} the new one`);
  expect(seen.neither).toBe(0);
  expect(seen.old).toBeGreaterThan(50);
  expect(seen.new).toBeGreaterThan(200);
}

test('a page that is really closed right after an edit has kept it', async ({ page, context }) => {
  test.setTimeout(90_000);
  await openStillroom(page);
  let last = page;
  for (let turn = 1; turn <= 12; turn += 1) {
    await goTo(last, 'formula');
    await amountOf(last, 'Squalane').fill(`4.${turn % 9}`);
    await last.close({ runBeforeUnload: turn % 2 === 0 });
    last = await context.newPage();
    await openStillroom(last);
    await goTo(last, 'formula');
    const found = await amountOf(last, 'Squalane').inputValue();
    // Closed at once, the edit may be the old one or the new one; never anything else, and never damaged.
    expect(Number(found)).toBeGreaterThanOrEqual(4);
    expect([`4.${turn % 9}`, `4.${(turn - 1) % 9}`].map(Number)).toContain(Number(found));
    await expect(last.locator('.alert.caution')).toHaveCount(0);
    await amountOf(last, 'Squalane').fill(`4.${turn % 9}`);
    await waitUntilKept(last);
  }
});

test('storage that is full is said, nothing is lost, and keeping goes on once there is room', async ({ page }) => {
  await openStillroom(page);
  await waitUntilKept(page);
  await page.evaluate(() => {
    // As much as fits, in ever smaller pieces: the browser's own limit.
    let piece = 'x'.repeat(1 << 20);
    for (let at = 0; piece.length > 0; at += 1) {
      try {
        localStorage.setItem(`ballast${at}`, piece);
      } catch {
        piece = piece.slice(0, piece.length >> 1);
      }
    }
  });
  await goTo(page, 'formula');
  await page.getByText('Method and notes').or(page.locator('.method summary')).first().click();
  const notes = page.locator('.method textarea').last();
  await notes.fill('a long note '.repeat(200));
  await expect(page.locator('.alert.stop')).toBeVisible();
  await expect(page.locator('.alert.stop')).toContainText(/room|full/i);
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage)) if (key.startsWith('ballast')) localStorage.removeItem(key);
  });
  await notes.fill('a short note');
  await waitUntilKept(page);
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await goTo(page, 'formula');
  await expect(page.locator('.method textarea').last()).toHaveValue('a short note');
});

test('storage that the browser cleared under an open page is filled again and said', async ({ page }) => {
  await openStillroom(page);
  await expect(page.locator('body[data-complete]')).toBeAttached({ timeout: 20_000 });
  await waitUntilKept(page);
  await page.evaluate(() => localStorage.clear());
  await goTo(page, 'formula');
  await amountOf(page, 'Squalane').fill('4.5');
  await expect(page.locator('.notice', { hasText: 'cleared' })).toBeVisible();
  await amountOf(page, 'Squalane').fill('4.6');
  await waitUntilKept(page);
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await goTo(page, 'formula');
  await expect(amountOf(page, 'Squalane')).toHaveValue('4.60');
});

test('storage that was cleared since the last visit is said', async ({ page }) => {
  await openStillroom(page);
  await expect(page.locator('body[data-complete]')).toBeAttached({ timeout: 20_000 });
  await goTo(page, 'formula');
  await amountOf(page, 'Squalane').fill('4.5');
  await waitUntilKept(page);
  await page.waitForFunction(async () => (await indexedDB.databases()).length > 0);
  await page.evaluate(() => localStorage.clear());
  await page.reload();
  await expect(page.locator('.notice', { hasText: 'The browser has cleared' })).toBeVisible({ timeout: 20_000 });
});

test('a browser that allows no storage is said, and the page works', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('denied', 'SecurityError');
      },
    });
  });
  await openStillroom(page);
  await expect(page.locator('.alert.stop')).toBeVisible();
  await goTo(page, 'formula');
  await amountOf(page, 'Squalane').fill('4.5');
  await expect(page.locator('.alert.stop')).toBeVisible();
});

test('two tabs that change the same formula overwrite nothing', async ({ page, context }) => {
  await openStillroom(page);
  await expect(page.locator('body[data-complete]')).toBeAttached({ timeout: 20_000 });
  await waitUntilKept(page);
  const other = await context.newPage();
  await openStillroom(other);
  await expect(other.locator('body[data-complete]')).toBeAttached({ timeout: 20_000 });
  await goTo(other, 'formula');
  await amountOf(other, 'Squalane').fill('4.5');
  await waitUntilKept(other);
  // A tab that has changed nothing itself follows.
  await goTo(page, 'formula');
  await expect(amountOf(page, 'Squalane')).toHaveValue('4.50');
  // The other tab writes while this one is busy and hears nothing: a write from this page itself raises no event here.
  const theirs = await page.evaluate(() => {
    const key = Object.keys(localStorage).find((each) => each.startsWith('stillroom.formula.')) ?? '';
    const record = JSON.parse(localStorage.getItem(key) ?? '');
    delete record.check;
    record.revision += 1;
    record.formula.notes = 'written in the other tab';
    localStorage.setItem(key, JSON.stringify(record));
    return localStorage.getItem(key);
  });
  await amountOf(page, 'Squalane').fill('6');
  await expect(page.getByRole('alert').filter({ hasText: 'another tab' })).toBeVisible();
  expect(
    await page.evaluate(() =>
      localStorage.getItem(Object.keys(localStorage).find((each) => each.startsWith('stillroom.formula.')) ?? ''),
    ),
  ).toBe(theirs);
  await page.getByRole('button', { name: /both/i }).click();
  await waitUntilKept(page);
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await goTo(page, 'shelf');
  await expect(page.locator('.card-name')).toHaveCount(2);
  await expect(page.locator('.card-name', { hasText: 'as in the other tab' })).toHaveCount(1);
});

test('a record of a later version is left alone and named', async ({ page }) => {
  await openStillroom(page);
  await waitUntilKept(page);
  await page.evaluate(() =>
    localStorage.setItem('stillroom.formula.00000000000000aa', '{"schema":9,"of":"a later version"}'),
  );
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await expect(page.locator('.alert.caution')).toContainText('later version');
  expect(await page.evaluate(() => localStorage.getItem('stillroom.formula.00000000000000aa'))).toBe(
    '{"schema":9,"of":"a later version"}',
  );
});
