// @ts-check

// Files that do not arrive: each file of the build is taken away by name, and whoever misses it is told, with a way to try
// again. New files are covered by being built.

import { chromium, expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { goTo, openStillroom, waitForTheWhole, waitUntilKept } from './bench-hands.js';
import { readBuild } from './built-site.js';

/** @typedef {import('@playwright/test').Page} Page */
/** @typedef {import('@playwright/test').BrowserContext} BrowserContext */

const { files, version } = await readBuild();
const example = (
  await readFile(new URL('../../crates/exchange/golden/link-1-example.txt', import.meta.url), 'utf8')
).trim();
const assets = `v-${version}/`;

/** How much faster than the clock animations run here, so that a sentence said after twelve seconds is waited for briefly. */
const FASTER = 40;

/** Which page asks for a file, by its folder; the rest belongs to the page itself. */
const belongs = (/** @type {string} */ url) => {
  if (/^(icons\/|manifest)/.test(url)) return 'system';
  if (url.startsWith('schema/') || url.endsWith('notices.html')) return 'document';
  if (url.startsWith('embed/') || url.startsWith(`${assets}embed/`)) return 'embed';
  return 'page';
};

/** The language these pages are in. */
const SPOKEN = 'en';
/** The rooms that are fetched later, each with what stands in it once it is there. */
const rooms = /** @type {const} */ ([
  ['formula', '.lines'],
  ['jar', '.legend'],
  ['bench', '.weigh-sheet'],
  ['materials', 'input[type="search"]'],
  ['extracts', '#extracts-title'],
  ['ph', '#ph-title'],
  ['swap', '#swap-title'],
  ['label', '#label-title'],
  ['costs', '#costs-title'],
  ['batches', '.begin-batch, .batch-cards'],
  ['findings', '.findings-summary'],
  ['share', '#share-title'],
  ['post', '#post-title'],
  ['examples', '.example-list'],
  ['about', '#about-title'],
]);

/**
 * A context without a service worker, in which a file, or any of several, is not to be had.
 * @param {import('@playwright/test').Browser} browser
 * @param {string | RegExp} url
 */
async function without(browser, url) {
  const context = await browser.newContext({
    baseURL: test.info().project.use.baseURL,
    serviceWorkers: 'block',
    viewport: { width: 390, height: 844 },
  });
  let asked = 0;
  let gone = true;
  await context.route(typeof url === 'string' ? `**/${url}` : url, (route) => {
    if (!gone) return route.continue();
    asked += 1;
    return route.abort('connectionfailed');
  });
  return { context, asked: () => asked, bringBack: () => (gone = false) };
}

/** @param {BrowserContext} context @param {string} address */
async function open(context, address) {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Animation.enable');
  await page.goto(address);
  // Only once nothing is on its way any more: a slow machine is no failure.
  await page.waitForLoadState('networkidle');
  await session.send('Animation.setPlaybackRate', { playbackRate: FASTER });
  return page;
}

/**
 * Does something for each file, a few at a time: most of it is waiting.
 * @param {string[]} urls
 * @param {(url: string) => Promise<void>} act
 */
async function forEachFile(urls, act) {
  const left = [...urls];
  const work = async () => {
    for (let url = left.shift(); url; url = left.shift()) await act(url);
  };
  await Promise.all([work(), work(), work()]);
}

/** The browser asks to save data. @param {BrowserContext} context */
const fetchNothingUnasked = (context) =>
  context.addInitScript(() => Object.defineProperty(Navigator.prototype, 'connection', { value: { saveData: true } }));

/**
 * Which rooms ask for each file: each room is entered by itself in a page that fetches nothing unasked.
 * @param {import('@playwright/test').Browser} browser
 * @returns {Promise<Map<string, string[]>>}
 */
async function whichRoomsAskFor(browser) {
  /** @type {Map<string, string[]>} */
  const wanted = new Map();
  await forEachFile(
    rooms.map(([room]) => room),
    async (room) => {
      const content = rooms.find(([name]) => name === room)?.[1];
      const { context } = await without(browser, /\/nothing-of-this-name$/);
      await fetchNothingUnasked(context);
      const page = await open(context, './');
      await page.waitForSelector('body[data-ready]');
      const base = page.url();
      page.on('request', (request) => {
        const url = request.url().replace(base, '');
        wanted.set(url, [...(wanted.get(url) ?? []), room]);
      });
      await goTo(page, room);
      await expect(
        page.locator(`.room[data-room="${room}"] :is(${content})`).filter({ visible: true }).first(),
      ).toBeVisible();
      await context.close();
    },
  );
  return wanted;
}

/** What says that something is missing, wherever it stands in sight. @param {Page} page */
const missing = (page) =>
  page
    .locator('.late, .bare, .alert, .room')
    .filter({ visible: true })
    .filter({ hasText: /did not arrive|may not have arrived|could not be fetched/ })
    .last();

/** A link or a button that tries again. @param {Page} page */
const tryAgain = (page) =>
  page
    .getByRole('button', { name: /^(Try again|Reload)$/ })
    .or(page.getByRole('link', { name: /load it again/ }))
    .filter({ visible: true })
    .first();

test('whatever file of the page does not arrive, it is said where it is missed, and comes at another try', async ({
  browser,
}) => {
  // A hundred visits through every room: on two slow cores, beside other tests, that is long.
  test.setTimeout(900_000);
  const ours = files.map((file) => file.url).filter((url) => belongs(url) === 'page' && url !== 'index.html');
  expect(ours.length).toBeGreaterThan(30);
  /** @type {Record<string, string[]>} */
  const said = {};
  /** Where another try was made already: what says it there is the same for the next file. */
  const tried = new Set(['paper']);
  // What other languages say is missed by nobody, for nobody asks for it: one visit through all rooms shows that.
  const ofOtherLanguages = new RegExp(`/(words|texts)/(?!${SPOKEN}[-/])`);
  expect(ours.filter((url) => ofOtherLanguages.test(url)).length).toBeGreaterThan(20);
  const elsewhere = await without(browser, ofOtherLanguages);
  const visit = await open(elsewhere.context, './');
  for (const [room, content] of rooms) {
    await visit.evaluate((name) => {
      location.hash = name;
    }, room);
    await expect(
      visit.locator(`.room[data-room="${room}"] :is(${content})`).filter({ visible: true }).first(),
    ).toBeVisible({
      timeout: 20_000,
    });
  }
  expect(elsewhere.asked(), 'another language is asked for').toBe(0);
  await elsewhere.context.close();
  const needed = ours.filter((url) => !ofOtherLanguages.test(url));
  const wanted = await whichRoomsAskFor(browser);
  // A control: some files are wanted by one room, others by many.
  expect(wanted.get(`${assets}rooms/batches/room.js`)).toEqual(['batches']);
  expect(wanted.get(`${assets}seam/split_whole.wasm`)?.length).toBeGreaterThan(8);
  await forEachFile(needed, async (url) => {
    await test.step(url, async () => {
      const { context, asked, bringBack } = await without(browser, url);
      // What one room alone asks for is missed there, whether or not all the rest was fetched before; that takes long.
      if (wanted.get(url)?.length === 1) await fetchNothingUnasked(context);
      const page = await open(context, './');
      const ready = page.locator('body[data-ready]');
      await expect(ready.or(missing(page)).first(), `${url}: the page opens or says why not`).toBeVisible({
        timeout: 20_000,
      });
      const where = [];
      if (await ready.isVisible()) {
        // A room that does not ask for it cannot miss it; what none asked for could be missed by any. Paper shows the last.
        const those = wanted.get(url);
        for (const [room, content] of rooms) {
          if (those && !those.includes(room) && room !== rooms.at(-1)?.[0]) continue;
          await page.evaluate((name) => {
            location.hash = name;
          }, room);
          const there = page.locator(`.room[data-room="${room}"] :is(${content})`).filter({ visible: true }).first();
          await expect(there.or(missing(page)).first(), `${url}: ${room} is there or says why not`).toBeVisible({
            timeout: 20_000,
          });
          if (await missing(page).isVisible()) where.push(room);
        }
        // On paper, too.
        await page.emulateMedia({ media: 'print' });
        if (await missing(page).isVisible()) where.push('paper');
        await page.emulateMedia({ media: null });
      } else {
        where.push('opening');
      }
      if (where.length === 0) {
        // Nothing needs it now: then nothing asked for it.
        expect(asked(), `${url} was asked for, did not arrive, and nobody was told`).toBe(0);
      }
      if (where.length > 0 && !tried.has(where.join())) {
        tried.add(where.join());
        if (where[0] !== 'opening') {
          await page.evaluate(
            (name) => {
              location.hash = name;
            },
            where.filter((place) => place !== 'paper').at(-1) ?? '',
          );
        }
        const sentence = await missing(page).innerText();
        expect(sentence, `${url}: how to try again is said`).toMatch(/again/);
        bringBack();
        if (await tryAgain(page).isVisible()) await tryAgain(page).click();
        else await page.reload();
        await expect(ready, `${url}: it opens once the file is there`).toBeVisible({ timeout: 20_000 });
        await expect(missing(page), `${url}: nothing is missing any more`).toBeHidden({ timeout: 20_000 });
      }
      said[url.replace(assets, '')] = where;
      await context.close();
    });
  });
  // A control: what the page cannot do without is among them.
  expect(said['main.js']).toEqual(['opening']);
  expect(said['seam/stillroom_bg.wasm']).toEqual(['opening']);
  expect(said['rooms/batches/room.js']).toEqual(['batches']);
  expect(said['rooms/formula/room.js']).toEqual(['formula']);
  expect(said['style/print.css']).toEqual(['paper']);
  expect(tried.size).toBeGreaterThan(4);
});

test('whoever opens a shared link is told when what reads it does not arrive, and never shown the shelf instead', async ({
  browser,
}) => {
  test.setTimeout(240_000);
  // Of the files the page opens with, the test before has seen to.
  const ours = files
    .map((file) => file.url)
    .filter((url) => /\/(rooms\/share|dom)\//.test(url) || /seam\/(split|common)/.test(url));
  let told = 0;
  await forEachFile(ours, async (url) => {
    const { context, bringBack } = await without(browser, url);
    const page = await open(context, `./#${example}`);
    const reading = page.getByRole('heading', { name: 'A formula that was shared with you' });
    await expect(reading.or(missing(page)).first(), url).toBeVisible({ timeout: 20_000 });
    await expect(page.locator('.card-name').first(), `${url}: the shelf is not what was asked for`).toBeHidden();
    if (!(await reading.isVisible())) {
      told += 1;
      expect(await missing(page).innerText(), url).toMatch(/again/);
      if (told > 3) return context.close();
      bringBack();
      await page.reload();
      await expect(reading, `${url}: the link opens once the file is there`).toBeVisible({ timeout: 20_000 });
    }
    await context.close();
  });
  expect(told).toBeGreaterThan(5);
});

test('the sentence of a first file that is missing needs no script at all', async ({ browser }) => {
  const { context } = await without(browser, 'v-*/main.js');
  const page = await context.newPage();
  await page.goto('./');
  const late = page.locator('.late');
  // Not before its time: a slow network is no failure.
  const visibilityAt = (/** @type {number} */ milliseconds) =>
    late.evaluate((element, at) => {
      const [waiting] = element.getAnimations();
      waiting.pause();
      waiting.currentTime = at;
      return getComputedStyle(element).visibility;
    }, milliseconds);
  expect(await visibilityAt(11_900)).toBe('hidden');
  expect(await visibilityAt(12_100)).toBe('visible');
  await expect(late.getByRole('link', { name: 'load it again' })).toHaveAttribute('href', './');
  await context.close();
});

test('without scripts the page says what it needs, and not that something did not arrive', async () => {
  // As a person switches it off: a browser of its own that runs none.
  const { executablePath, args = [] } = test.info().project.use.launchOptions ?? {};
  const browser = await chromium.launch({ executablePath, args: [...args, '--blink-settings=scriptEnabled=false'] });
  const page = await browser.newPage({ baseURL: test.info().project.use.baseURL });
  await page.goto('./');
  // Nothing of Playwright's own runs in such a page either: the browser itself is asked what is laid out.
  const session = await page.context().newCDPSession(page);
  await session.send('Animation.enable');
  await session.send('Animation.setPlaybackRate', { playbackRate: FASTER });
  await new Promise((resolve) => setTimeout(resolve, 1500));
  const { root } = await session.send('DOM.getDocument');
  const isLaidOut = async (/** @type {string} */ selector) => {
    const { nodeId } = await session.send('DOM.querySelector', { nodeId: root.nodeId, selector });
    expect(nodeId, `${selector} is in the page`).toBeGreaterThan(0);
    return session.send('DOM.getBoxModel', { nodeId }).then(
      ({ model }) => model.height > 0,
      () => false,
    );
  };
  expect(await isLaidOut('#opening > p'), 'a control').toBe(true);
  expect(await isLaidOut('noscript p')).toBe(true);
  expect(await isLaidOut('.late')).toBe(false);
  await browser.close();
});

test('a frame or an element whose files do not arrive says so, or leaves the link of its page', async ({ browser }) => {
  test.setTimeout(120_000);
  const ours = files
    .map((file) => file.url)
    .filter((url) => belongs(url) === 'embed' || /seam\/(split_share|common)/.test(url));
  expect(ours.length).toBeGreaterThan(8);
  await forEachFile(
    ours.filter((each) => each !== 'embed/frame.html'),
    async (url) => {
      const { context, asked } = await without(browser, url);
      const page = await open(context, `./embed/frame.html#${example}`);
      const sheet = page.locator('.shared-sheet');
      const sentence = page
        .getByText(/has not arrived|may not have arrived|could not be fetched/)
        .filter({ visible: true });
      await expect(sheet.or(sentence).first(), url).toBeVisible({ timeout: 20_000 });
      if (!(await sentence.isVisible()) && !/\.css$/.test(url))
        expect(asked(), `${url} was asked for and nobody was told`).toBe(0);
      await context.close();
    },
  );
  // The page about embedding works in place of its addresses.
  const { context } = await without(browser, 'v-*/embed/docs.js');
  const page = await open(context, './embed/index.html');
  await expect(page.getByText('A script of this page has not arrived')).toBeVisible();
  await context.close();
});

test('what the maker should know of other people’s work is a page of the build, and reached from the shelf', async ({
  page,
}) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await goTo(page, 'shelf');
  await page.getByRole('link', { name: 'What Stillroom is made of' }).click();
  await expect(page.getByRole('heading', { name: 'What Stillroom is made of' })).toBeVisible();
  await expect(page.locator('body')).toContainText('serde');
  await expect(page.locator('body')).toContainText('Permission is hereby granted');
  expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
});

test('a command that is none is refused and said, and the page goes on; a trap ends it', async ({ page }) => {
  await page.goto('./icons/icon.svg');
  const seen = await page.evaluate(async (folder) => {
    const { Session } = await import(`${location.origin}/${folder}session.js`);
    const seam = await import(`${location.origin}/${folder}seam/stillroom.js`);
    await seam.default();
    await new Promise((came) => seam.fetchPiece('desk', came));
    const open = () => new seam.Stillroom({ decimalMark: 'point', keepNothing: true });
    const log = { write: async () => {} };
    /** @type {boolean[]} */
    const troubles = [];
    const session = new Session(open(), log, (/** @type {unknown} */ _, /** @type {boolean} */ broken) =>
      troubles.push(broken),
    );
    session.send({ do: 'no such thing' });
    session.send({ do: 'set-amount', line: 'x', text: 7 });
    const after = session.send({ do: 'set-notes', text: 'it goes on' });
    const goesOn = after.formula?.notes;

    // Of a seam that traps, or runs out of stack, nothing more is asked.
    const ends = [new WebAssembly.RuntimeError('unreachable'), new RangeError('stack'), 'a word'].map((problem) => {
      const trapped = /** @type {any} */ (open());
      const asked = { count: 0 };
      trapped.apply = () => {
        asked.count += 1;
        throw problem;
      };
      /** @type {boolean[]} */
      const told = [];
      const other = new Session(trapped, log, (/** @type {unknown} */ _, /** @type {boolean} */ broken) =>
        told.push(broken),
      );
      other.send({ do: 'undo' });
      other.send({ do: 'undo' });
      return [told, asked.count];
    });
    // One that cannot even say how things stand is broken, too.
    const mute = /** @type {any} */ (open());
    mute.apply = mute.showEverything = () => {
      throw new Error('no');
    };
    /** @type {boolean[]} */
    const told = [];
    new Session(mute, log, (/** @type {unknown} */ _, /** @type {boolean} */ broken) => told.push(broken)).send({
      do: 'undo',
    });
    return { troubles, goesOn, ends, mute: told };
  }, assets);
  expect(seen.troubles).toEqual([false, false]);
  expect(seen.goesOn).toBe('it goes on');
  expect(seen.ends).toEqual([
    [[true], 1],
    [[true], 1],
    [[true], 1],
  ]);
  expect(seen.mute).toEqual([false, true]);
});

test('storage cleared in another tab is noticed at once and filled again', async ({ page, context }) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await waitUntilKept(page);
  const before = await page.evaluate(() =>
    Object.keys(localStorage)
      .filter((key) => key.startsWith('stillroom.'))
      .sort(),
  );
  expect(before.length).toBeGreaterThan(2);
  const other = await context.newPage();
  await other.goto('./icons/icon.svg');
  await other.evaluate(() => localStorage.clear());
  await expect(page.locator('.notice', { hasText: 'cleared' }).first()).toBeVisible();
  await waitUntilKept(page);
  await expect
    .poll(() =>
      page.evaluate(() =>
        Object.keys(localStorage)
          .filter((key) => key.startsWith('stillroom.'))
          .sort(),
      ),
    )
    .toEqual(before);
});
