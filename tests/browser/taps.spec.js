// @ts-check

// How many taps and letters the main jobs cost. The page's own events are counted, so that nothing is forgotten: a tap is a
// finger or a mouse that goes down, a letter a key that writes, a key one that does not.

import { expect, test } from '@playwright/test';
import { amountOf, goTo, openStillroom } from './bench-hands.js';

/** @typedef {import('@playwright/test').Page} Page */
/** @typedef {import('@playwright/test').Locator} Locator */

/** Twelve lines as hands type them: enough of the name to find it first, and the amount; phase by phase. */
const TYPED = /** @type {const} */ ([
  [
    ['distilled', '67.4', 'Water, distilled'],
    ['glycerin', '4', 'Glycerin, vegetable'],
    ['xanthan', '0.3', 'Xanthan gum'],
  ],
  [
    ['almond', '12', 'Sweet almond oil'],
    ['shea', '4', 'Shea butter'],
    ['e-wax', '6', 'Cetearyl alcohol and polysorbate 60'],
    ['cetyl', '2', 'Cetyl alcohol'],
  ],
  [
    ['vit e', '0.5', 'Tocopherol, mixed'],
    ['panthenol', '2', 'Panthenol, DL powder'],
    ['lavender eo', '0.3', 'Lavender essential oil'],
    ['phenoxy', '1', 'Phenoxyethanol'],
    ['k sorbate', '0.5', 'Potassium sorbate'],
  ],
]);
const LINES = TYPED.flat();

/**
 * Counts what hands do on a page, from its next load on.
 * @param {Page} page
 */
async function countHands(page) {
  const counts = { taps: 0, letters: 0, keys: 0, scrolled: 0 };
  await page.exposeFunction('counted', (/** @type {'taps' | 'letters' | 'keys'} */ what) => {
    counts[what] += 1;
  });
  await page.addInitScript(() => {
    const counted = Reflect.get(window, 'counted');
    const note = (/** @type {Event} */ event, /** @type {string} */ what) => {
      if (event.isTrusted) counted(what);
    };
    addEventListener('pointerdown', (event) => note(event, 'taps'), true);
    addEventListener(
      'keydown',
      (event) => {
        if (!['Control', 'Shift'].includes(event.key)) note(event, event.key.length === 1 ? 'letters' : 'keys');
      },
      true,
    );
  });
  return {
    counts,
    /** Taps on something, and counts how far the page had to be scrolled before. @param {Locator} target */
    async tap(target) {
      await expect(target).toBeVisible();
      const box = await target.boundingBox();
      const height = page.viewportSize()?.height ?? 0;
      if (!box) throw new Error('nothing is there to be tapped');
      counts.scrolled += Math.round(Math.max(0, box.y + box.height - height, -box.y));
      const touch = await page.evaluate(() => matchMedia('(pointer: coarse)').matches);
      if (touch) await target.tap();
      else await target.click();
    },
    /** To choose from a list takes one tap to open it, and one on the choice. @param {Locator} list @param {string} label */
    async choose(list, label) {
      await this.tap(list);
      await page.keyboard.press('Escape');
      await list.selectOption({ label });
      counts.taps += 1;
    },
    /** @param {string} text */
    async type(text) {
      await page.keyboard.type(text);
    },
    /** Prints the counts beside those of before. @param {string} what @param {string} before */
    print(what, before) {
      const { taps, letters, keys, scrolled } = counts;
      console.log(
        `${what}: ${taps} taps, ${letters} letters, ${keys} other keys, ${scrolled} px scrolled (before: ${before})`,
      );
    },
  };
}

/** What the page shows in the end is what was meant. @param {Page} page */
async function expectTwelveLines(page) {
  await expect(page.locator('.lines > *')).toHaveCount(LINES.length);
  for (const [, amount, name] of LINES) expect(Number(await amountOf(page, name).inputValue())).toBe(Number(amount));
  await expect(page.locator('.phases + .total')).toContainText('100.00');
  const phases = page.locator('.phase');
  for (const [at, lines] of TYPED.entries())
    await expect(phases.nth(at).locator('.line-name')).toHaveText(lines.map(([, , name]) => name));
}

const picker = (/** @type {Page} */ page) => page.locator('dialog.picker');

test.describe('by keyboard', () => {
  test.use({ viewport: { width: 1280, height: 800 }, isMobile: false, hasTouch: false });

  test('twelve lines are typed with the letters of their names and amounts, and no tap but the first', async ({
    page,
  }) => {
    const hands = await countHands(page);
    await openStillroom(page);
    await hands.tap(page.getByRole('button', { name: /^Start a formula/ }));
    await expect(page.getByLabel('Name of the formula')).toBeFocused();
    await hands.type('Easy lotion');
    const name = hands.counts.letters;
    await page.keyboard.press('Enter');
    for (const lines of TYPED) {
      for (const [sought, amount, material] of lines) {
        await expect(picker(page).getByRole('searchbox')).toBeFocused();
        await hands.type(sought);
        await expect(picker(page).locator('.hit-name').first()).toHaveText(material);
        await page.keyboard.press('Enter');
        await expect(amountOf(page, material)).toBeFocused();
        await hands.type(amount);
        await page.keyboard.press('Enter');
      }
      // Nothing typed: on to the next phase, and at last out.
      await expect(picker(page).getByRole('searchbox')).toBeFocused();
      await page.keyboard.press('Enter');
    }
    await expect(picker(page)).toBeHidden();
    hands.print('a formula of 12 lines typed by keyboard', '26 taps, 144 letters');
    await expectTwelveLines(page);
    const typed = LINES.reduce((sum, [sought, amount]) => sum + sought.length + amount.length, 0);
    expect(hands.counts.letters - name, 'the letters typed and no others').toBe(typed);
    expect(hands.counts.letters).toBeLessThan(144);
    expect(hands.counts.taps).toBeLessThanOrEqual(LINES.length);
    expect(hands.counts.taps).toBe(1);
    expect(hands.counts.keys, 'Enter after the name, twice a line and once a phase').toBe(
      1 + 2 * LINES.length + TYPED.length,
    );
  });
});

test('twelve lines are typed by touch with two taps each', async ({ page }) => {
  const hands = await countHands(page);
  await openStillroom(page);
  await hands.tap(page.getByRole('button', { name: /^Start a formula/ }));
  await expect(page.getByLabel('Name of the formula')).toBeFocused();
  const first = hands.counts.taps;
  for (const [at, lines] of TYPED.entries()) {
    for (const [sought, amount, material] of lines) {
      // The keys of a phone for numbers have no Enter: the next material is asked for by a tap.
      await hands.tap(page.locator('.phase').nth(at).locator('.add'));
      await hands.type(sought);
      await hands.tap(picker(page).locator('.hit', { has: page.getByText(material, { exact: true }) }));
      await expect(amountOf(page, material)).toBeFocused();
      await hands.type(amount);
    }
  }
  hands.print('a formula of 12 lines typed by touch', '26 taps, 144 letters');
  await expectTwelveLines(page);
  expect(hands.counts.taps - first).toBeLessThanOrEqual(2 * LINES.length);
  expect(hands.counts.letters).toBeLessThan(144);
});

test('twelve lines are pasted with two taps and one paste', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const hands = await countHands(page);
  await openStillroom(page);
  const text = LINES.map(([, amount, name]) => `${name} ${amount} %`).join('\n');
  await page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
  await hands.tap(page.getByRole('button', { name: 'Paste a recipe' }));
  const area = page.getByLabel('One material to a line');
  await expect(area).toBeVisible({ timeout: 20_000 });
  await expect(area).toBeFocused();
  await page.keyboard.press('Control+v');
  await expect(page.getByRole('status').filter({ hasText: '12 of 12 lines found' })).toBeVisible();
  await hands.tap(page.getByRole('button', { name: 'Make this a formula' }));
  await expect(page.locator('.lines > *')).toHaveCount(LINES.length);
  hands.print('the same pasted, the V being the paste', 'not possible');
  for (const [, amount, name] of LINES) expect(Number(await amountOf(page, name).inputValue())).toBe(Number(amount));
  expect(hands.counts.taps).toBe(2);
  expect(hands.counts.letters, 'no letter but the V that pastes').toBeLessThanOrEqual(1);
});

test('from the first visit to the first weighing of the example', async ({ page }) => {
  const hands = await countHands(page);
  await openStillroom(page);
  await hands.tap(page.getByRole('button', { name: /^Cucumber and oat gel cream/ }));
  await hands.tap(page.getByRole('button', { name: /^Begin weighing/ }));
  const weighing = page.locator('.run').getByLabel('What the scale shows').first();
  await expect(page.locator('.run')).toBeVisible({ timeout: 20_000 });
  for (let count = 0; count < 6 && !(await weighing.isVisible()); count += 1)
    await hands.tap(page.locator('.run-next'));
  await expect(weighing).toBeVisible();
  hands.print('from the example to its first weighing', '5 taps, 1,500 px scrolled');
  expect(hands.counts.taps).toBeLessThan(5);
  expect(hands.counts.scrolled).toBe(0);
});

test('a glycerite is planned, verified and used', async ({ page }) => {
  const hands = await countHands(page);
  await page.goto('./#extracts');
  await page.waitForSelector('body[data-ready]');
  const field = (/** @type {string} */ name) => page.locator(`[data-field="extract.${name}"]`);
  const step = (/** @type {string} */ name) => page.getByRole('radio', { name, exact: true });
  await hands.tap(page.getByRole('button', { name: 'New glycerite' }));
  await hands.type('Cucumber, spring');
  await hands.choose(field('plant'), 'cucumber, fruit with peel, fresh');
  await hands.tap(field('plant-mass'));
  await hands.type('300');
  await hands.tap(field('glycerin'));
  await hands.type('500');
  await hands.tap(step('Measure and use'));
  await hands.tap(field('optical-value'));
  await hands.type('49');
  await expect(page.locator('.offer-lines').filter({ hasText: 'lies within that' })).toBeVisible();
  await hands.tap(page.getByRole('button', { name: /^Put it among the materials and add 12\s% to/ }));
  hands.print('a glycerite planned, verified and used', '9 taps on a page of 4,400 px');
  await goTo(page, 'formula');
  await expect(page.locator('.line-name', { hasText: 'Cucumber, spring' })).toBeVisible();
  expect(hands.counts.taps).toBeLessThan(9);
  expect(hands.counts.scrolled, 'less than a screen').toBeLessThan(844);
});
