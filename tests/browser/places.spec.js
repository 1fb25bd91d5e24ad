// @ts-check

// Where the page is: each place has an address, a title and a heading that has the focus on arrival; back and reload keep it.
// And what is fetched beyond the first view, and when.

import { expect, test } from '@playwright/test';
import { goTo, openStillroom, waitForTheWhole } from './bench-hands.js';
import { readBuild } from './built-site.js';

/** Each view with its title, its heading, and the place of the dock it lies in. */
const places = /** @type {const} */ ([
  ['shelf', 'Stillroom', 'Your shelf', 'Shelf'],
  ['formula', 'Formula · Stillroom', 'Formula', 'Formula'],
  ['findings', 'Findings · Stillroom', 'Findings', 'Formula'],
  ['jar', 'Jar · Stillroom', 'In the jar', 'Formula'],
  ['bench', 'Bench · Stillroom', 'Batch', 'Bench'],
  ['ph', 'The pH · Stillroom', 'The pH', 'Formula'],
  ['swap', 'With what you have · Stillroom', 'Make it with what you have', 'Formula'],
  ['label', 'Label · Stillroom', 'Label', 'Formula'],
  ['costs', 'Costs · Stillroom', 'Costs', 'Formula'],
  ['paste', 'Paste a recipe · Stillroom', 'Paste a recipe', 'Shelf'],
  ['examples', 'Examples · Stillroom', 'Four invented examples', 'Shelf'],
  ['about', 'About the numbers · Stillroom', 'About the numbers', 'Shelf'],
  ['batches', 'Batches · Stillroom', 'Batches', 'Journal'],
  ['materials', 'Materials · Stillroom', 'Materials', 'Stores'],
  ['extracts', 'Extracts · Stillroom', 'Extracts', 'Stores'],
  ['share', 'Share and keep · Stillroom', 'Share and keep', 'Shelf'],
  ['post', 'The post · Stillroom', 'The post', 'Shelf'],
]);

test('every place has its address, its title, and its heading has the focus on arrival; back and reload stay true @desk', async ({
  page,
}) => {
  test.setTimeout(120_000);
  await openStillroom(page);
  await expect(page.locator('body')).toBeFocused();
  for (const [place, title, heading, tab] of [...places.slice(1), places[0]]) {
    await goTo(page, place);
    await expect(page).toHaveTitle(title);
    const shown = page.locator(`.room[data-room="${place}"] h2`).filter({ visible: true }).first();
    await expect(shown).toHaveText(heading);
    await expect(shown).toBeFocused();
    await expect(page.locator('nav.dock [aria-current]')).toHaveText(tab);
  }
  for (const [place, title] of [...places].reverse().slice(0, -1)) {
    await page.goBack();
    await expect(page).toHaveTitle(title);
    await expect(page.locator(`.room[data-room="${place}"]`)).toBeVisible();
  }
  await page.reload();
  await page.waitForSelector('body[data-ready]');
  await expect(page).toHaveTitle('Formula · Stillroom');
  await expect(page.locator('.room[data-room="formula"] .lines').first()).toBeVisible();
});

test('the dock leads to five places, and within the formula one chooses among its views', async ({ page }) => {
  await openStillroom(page);
  const dock = page.getByRole('navigation', { name: 'Places' });
  await expect(dock.getByRole('link')).toHaveText(['Shelf', 'Formula', 'Bench', 'Stores', 'Journal']);
  await dock.getByRole('link', { name: 'Formula' }).click();
  const views = page.getByRole('navigation', { name: 'Formula' });
  await expect(views.getByRole('link')).toHaveText(['Lines', 'Jar', /^Findings\s*\d/, 'pH', 'Swap', 'Label', 'Costs'], {
    timeout: 20_000,
  });
  await views.getByRole('link', { name: 'Jar' }).click();
  await expect(page).toHaveURL(/#jar$/);
  await expect(page.locator('.room[data-room="jar"] .legend')).toBeVisible();
  await page.goBack();
  await expect(page.getByLabel('Name of the formula')).toBeVisible();
  await dock.getByRole('link', { name: 'Stores' }).click();
  await page.getByRole('navigation', { name: 'Stores' }).getByRole('link', { name: 'Extracts' }).click();
  await expect(page).toHaveURL(/#extracts$/);
});

test('only the room in sight is drawn, and what a hand is at stays as it is', async ({ page }) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  for (const room of [
    'formula',
    'jar',
    'bench',
    'findings',
    'ph',
    'swap',
    'label',
    'costs',
    'examples',
    'about',
    'materials',
    'extracts',
    'batches',
    'share',
    'post',
  ]) {
    await expect(page.locator(`.room[data-room="${room}"]`), room).toBeEmpty();
  }
  // A cure that has the focus is still that cure after another change was checked.
  await goTo(page, 'formula');
  await page.getByLabel('Amount of Allantoin', { exact: true }).fill('0.8');
  await goTo(page, 'findings');
  const cure = page.locator('.found .cure').first();
  await cure.focus();
  const same = await cure.evaluateHandle((element) => element);
  await page.getByLabel('Kept as cold as').evaluate((input) => {
    /** @type {HTMLInputElement} */ (input).value = '6';
    input.dispatchEvent(new Event('input', { bubbles: true }));
  });
  await expect(page.locator('.found')).toContainText('6 °C');
  expect(await same.evaluate((element) => element === document.activeElement)).toBe(true);
});

test('where the browser asks to save data nothing beyond the first view is fetched unasked, and all of it when somebody asks', async ({
  browser,
}) => {
  const context = await browser.newContext({
    baseURL: test.info().project.use.baseURL,
    viewport: { width: 390, height: 844 },
  });
  await context.addInitScript(() =>
    Object.defineProperty(Navigator.prototype, 'connection', { value: { saveData: true } }),
  );
  const { version } = await readBuild();
  /** @type {string[]} */
  const fetched = [];
  context.on('request', (request) => fetched.push(new URL(request.url()).pathname.slice(1)));
  const page = await context.newPage();
  await page.goto('./');
  await page.waitForSelector('body[data-ready]');
  await page.waitForLoadState('networkidle');
  const beyond = () =>
    fetched.filter((path) => /^sw\.js|split_|common\d*\.wasm|rooms\/\w+\/(?!vessel)\w+\.js/.test(path));
  expect(beyond()).toEqual([]);
  // A room that is entered is asked for, with what it needs of the seam.
  await goTo(page, 'bench');
  expect(beyond()).toEqual(
    expect.arrayContaining([`v-${version}/rooms/bench/room.js`, `v-${version}/seam/split_desk.wasm`]),
  );
  const pieces = () => beyond().filter((path) => path.endsWith('.wasm'));
  const ofDesk = pieces();
  // To look for a material asks for no more than what it is looked for in.
  await goTo(page, 'formula');
  await page
    .getByRole('button', { name: /^Add to/ })
    .first()
    .click();
  await expect(page.locator('dialog.picker .hit-name').first()).toBeVisible();
  await page.keyboard.press('Escape');
  await page.waitForLoadState('networkidle');
  expect(pieces()).toEqual(ofDesk);
  expect(ofDesk.filter((path) => /split_(?!desk)/.test(path))).toEqual([]);
  await goTo(page, 'bench');
  await page.locator('.scales summary').click();
  await expect(page.locator('.scales')).toContainText(/about \d{3,4} kB/);
  expect(await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length)).toBe(0);
  await page.getByRole('button', { name: /^Fetch all of it now/ }).click();
  await expect(page.locator('.scales')).toContainText('All of Stillroom is on this device', { timeout: 30_000 });
  await context.close();
});
