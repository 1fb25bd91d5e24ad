// @ts-check

// Every text that a person reads comes from the message files: the files of one language are handed over in other letters,
// and whatever is still in Latin ones on any screen did not come from them.

import { expect, test } from '@playwright/test';
import { readFile, readdir } from 'node:fs/promises';
import { waitForTheWhole } from './bench-hands.js';

/** Another alphabet, letter by letter. @param {string} text */
const inOtherLetters = (text) =>
  // Of a table: what a variant is chosen by stays as it is.
  text.replace(/[\x02\x04][^\x02-\x05]*\x03|\p{Script=Latin}/gu, (letter) => {
    if (letter.length > 1) return letter;
    const plain = letter.normalize('NFD').codePointAt(0) ?? 0;
    return String.fromCodePoint((letter === letter.toLowerCase() ? 0x430 : 0x410) + (plain % 32));
  });

/** A script of words: what stands between its quotes, but for names of properties and what is filled in. @param {string} script */
const wordsInOtherLetters = (script) =>
  script
    .split('\n')
    .map((line) => {
      const [, key = '', rest = ''] = /^(\s*(?:'[\w-]+'|[\w-]+)?:?)(.*)$/.exec(line) ?? [];
      return (
        key +
        rest.replace(/'(?:[^'\\]|\\.)*'|`(?:[^`\\]|\\.)*`/g, (quoted) =>
          quoted
            .split(/(\$\{[^}]*\}|\\.)/)
            .map((part, at) => (at % 2 ? part : inOtherLetters(part)))
            .join(''),
        )
      );
    })
    .join('\n');

/** Names that are the same in every language: those of the inventory of ingredients, those of germs, and what was published. */
const anywhere = await namesOfData();

async function namesOfData() {
  const data = new URL('../../crates/catalogue/data/', import.meta.url);
  const column = async (/** @type {string} */ file, /** @type {number[]} */ columns) => {
    const rows = (await readFile(new URL(file, data), 'utf8')).split('\n').slice(1);
    return rows.flatMap((row) => {
      const cells = [...row.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
        ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? '',
      );
      return columns.map((at) => cells[at] ?? '');
    });
  };
  const core = new URL('../../crates/core/src/', import.meta.url);
  const scripts = (await readdir(core, { recursive: true })).filter((path) => path.endsWith('.rs'));
  const code = (await Promise.all(scripts.map((path) => readFile(new URL(path, core), 'utf8')))).join('\n');
  const cited =
    /(?:Citation::(?:recalled|published)\(|const [A-Z_0-9]+: &str =|source:)\s*"([^"]+)"|organism\("([^"]+)"/g;
  const names = [
    ...(await column('constituents.csv', [1])),
    ...(await column('sources.csv', [1])),
    ...[...code.matchAll(cited)].map(([, source, germ]) => source ?? germ ?? ''),
  ];
  return names.filter((name) => name.length > 2).sort((one, other) => other.length - one.length);
}

/** What is left of a text without such names, and without units, places in a source and editions. @param {string} text */
function untoldPartOf(text) {
  // What begins as a citation is one: a page or a table of the source may follow.
  if (anywhere.some((name) => name.length > 20 && text.trim().startsWith(name))) return '';
  const left = anywhere.reduce((left, name) => left.replaceAll(name, ' '), text);
  return left
    .replace(
      /\b(?:kg|mg|mL|mm|mol|mPa·s|min|oz|fl oz|lb|Bx|Merck Index|SR\d*|Stillroom|English|Deutsch|Français)(?![\p{L}])/gu,
      ' ',
    )
    .replace(/\((?:recalled )?\d{4}\)/g, ' ')
    .trim();
}

const rooms = [
  'shelf',
  'formula',
  'jar',
  'findings',
  'ph',
  'swap',
  'label',
  'bench',
  'batches',
  'materials',
  'extracts',
  'paste',
  'examples',
  'share',
  'about',
];

test('whatever is read on any screen comes from the message files', async ({ browser }) => {
  test.setTimeout(180_000);
  const context = await browser.newContext({
    locale: 'de-DE',
    viewport: { width: 390, height: 844 },
    serviceWorkers: 'block',
  });
  await context.route(/\/words\/de\/\w+\.js$/, async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, body: wordsInOtherLetters(await answer.text()) });
  });
  await context.route(/\/texts\/de-\w+\.txt$/, async (route) => {
    const answer = await route.fetch();
    const keyed = /-(names|words)\./.test(route.request().url());
    const lines = (await answer.text()).split('\n').map((line) => {
      const [first = '', ...others] = keyed ? line.split('\t') : ['', line];
      return keyed ? [first, ...others.map(inOtherLetters)].join('\t') : inOtherLetters(others.join('\t'));
    });
    await route.fulfill({ response: answer, body: lines.join('\n') });
  });
  const page = await context.newPage();
  await page.goto('./');
  await page.waitForSelector('body[data-ready]');
  await waitForTheWhole(page);
  /** @type {Map<string, string>} */
  const untold = new Map();
  for (const room of rooms) {
    await page.evaluate((room) => {
      location.hash = room;
    }, room);
    const place = page.locator(`section[data-room="${room}"]`);
    await expect(place.locator('.opening')).toHaveCount(0);
    await page.waitForTimeout(400);
    await place.evaluate((place) => {
      for (const summary of place.querySelectorAll('details:not([open]) > summary')) {
        if (summary instanceof HTMLElement) summary.click();
      }
    });
    await page.waitForTimeout(200);
    for (const text of await page.locator('body').evaluate(textsOf)) {
      const left = untoldPartOf(text);
      if (/\p{Script=Latin}{2}/u.test(left) && !untold.has(left)) untold.set(left, room);
    }
  }
  expect([...untold]).toEqual([]);
  await context.close();
});

/** Texts and names with Latin letters in them. @param {Element} place */
function textsOf(place) {
  const found = new Set();
  const walk = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    // The drawn label breaks its names into lines; the list beside it has them whole.
    if (!node.parentElement?.closest('[data-room="label"] svg')) found.add(node.textContent ?? '');
  }
  for (const element of place.querySelectorAll('[aria-label], [title], [placeholder]'))
    for (const name of ['aria-label', 'title', 'placeholder']) found.add(element.getAttribute(name) ?? '');
  return [...found].filter((text) => /\p{Script=Latin}{2}/u.test(text));
}
