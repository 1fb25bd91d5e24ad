// @ts-check

// Help in place: words of the trade open their meaning where they stand, and a page tells how the numbers come about.

import { expect, test } from '@playwright/test';
import { goTo, openStillroom, waitForTheWhole } from './bench-hands.js';

test('a word of the trade opens its meaning in the room it stands in, fetched only then', async ({ page }) => {
  /** @type {string[]} */
  const asked = [];
  page.on('request', (request) => {
    if (!request.serviceWorker()) asked.push(request.url());
  });
  await openStillroom(page);
  for (const [room, term, meaning] of /** @type {const} */ ([
    ['formula', 'q.s.', 'fills the formula up to 100 %'],
    ['jar', 'constituent', 'whichever lines bring it'],
    ['bench', 'rounding', 'still sum to the batch'],
    ['findings', 'challenge test', 'No calculation replaces it'],
    ['extracts', 'menstruum', 'draws something out of a plant'],
    ['materials', 'INCI', 'on a label'],
    ['ph', 'pKa', 'given its proton away'],
    ['swap', 'HLB', 'leans to water'],
    ['costs', 'margin', 'makes a price of 16'],
    ['label', 'e-mark (℮)', '76/211/EEC'],
    ['post', 'Markdown', 'headings, lists and tables'],
  ])) {
    await goTo(page, room);
    if (room === 'formula') expect(asked.filter((url) => url.includes('/words/en/terms.js'))).toEqual([]);
    const fold = page.locator(`.room[data-room="${room}"] .explained`).filter({ visible: true }).last();
    const place = room === 'extracts' ? page.locator('.extract-plan .explained') : fold;
    await place.locator('summary').click();
    await expect(place.getByText(term, { exact: true }), room).toBeVisible();
    await expect(place, room).toContainText(meaning);
  }
});

test('the page about the numbers tells of each kind of number how it is worked out and what it rests on', async ({
  page,
}) => {
  await openStillroom(page);
  await waitForTheWhole(page);
  await page.getByRole('link', { name: 'About the numbers' }).click();
  await expect(page.getByRole('heading', { name: 'About the numbers' })).toBeFocused();
  const topics = page.locator('.about-numbers > details');
  // Eleven topics, how far a value may be trusted, and the sources of the data.
  await expect(topics).toHaveCount(13);
  const ph = topics.filter({ hasText: 'The pH' }).first();
  await expect(ph.getByText('Davies')).toBeHidden();
  await ph.locator('summary').click();
  await expect(ph).toContainText('Davies, Ion Association (1962)');
  await expect(ph.locator('.equation')).toHaveCount(2);
  const sources = topics.last();
  await sources.locator('summary').click();
  const count = await sources.locator('li').count();
  expect(count).toBeGreaterThan(50);
  await expect(sources.locator('summary')).toContainText(`${count} sources`);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(
    0,
  );
});
