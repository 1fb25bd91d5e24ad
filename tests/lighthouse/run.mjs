// @ts-check

// What Lighthouse says of the built site on its settings for a phone: three visits, the middle one of each number, and whatever
// keeps accessibility and best practices below 100. `cargo xtask bench lighthouse` serves the site and says where.

import { launch } from 'chrome-launcher';
import lighthouse from 'lighthouse';

const { STILLROOM_ADDRESS = '', CHROME_PATH = '/usr/bin/chromium' } = process.env;
const VISITS = 3;
const CATEGORIES = /** @type {const} */ (['performance', 'accessibility', 'best-practices']);
/** Times of the visit, by the names of their audits. */
const TIMES = /** @type {const} */ ([
  ['first-contentful-paint', 'first paint with content'],
  ['largest-contentful-paint', 'largest paint'],
  ['interactive', 'interactive'],
  ['speed-index', 'speed index'],
  ['total-blocking-time', 'blocked in all'],
]);

/** @typedef {NonNullable<Awaited<ReturnType<typeof visit>>>} Report */

async function visit() {
  const chrome = await launch({
    chromePath: CHROME_PATH,
    chromeFlags: ['--headless=new', '--no-sandbox', '--disable-gpu', '--disable-quic'],
  });
  try {
    const result = await lighthouse(STILLROOM_ADDRESS, { port: chrome.port, onlyCategories: [...CATEGORIES] });
    if (!result) throw new Error('Lighthouse gave no result');
    if (result.lhr.runtimeError) throw new Error(result.lhr.runtimeError.message);
    return result.lhr;
  } finally {
    chrome.kill();
  }
}

/** @param {number[]} numbers */
const middle = (numbers) => numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];

/** @type {Report[]} */
const reports = [];
for (let count = 0; count < VISITS; count += 1) reports.push(await visit());

for (const category of CATEGORIES) {
  const scores = reports.map((report) => Math.round((report.categories[category].score ?? 0) * 100));
  console.log(`${category.padEnd(26)} ${String(middle(scores)).padStart(6)}      (${scores.join(', ')})`);
}
for (const [audit, name] of TIMES) {
  const times = reports.map((report) => Math.round(report.audits[audit].numericValue ?? Number.NaN));
  console.log(`${name.padEnd(26)} ${String(middle(times)).padStart(6)} ms   (${times.join(', ')})`);
}

const [report] = reports;
for (const category of CATEGORIES) {
  for (const { id, weight } of report.categories[category].auditRefs) {
    const { score, title, displayValue, details } = report.audits[id];
    // What has no weight counts for nothing, save that it says what would make the page faster.
    if (score === null || score >= (category === 'performance' ? 0.9 : 1)) continue;
    if (weight === 0 && category !== 'performance') continue;
    console.log(`  ${category}: ${title}${displayValue ? `: ${displayValue}` : ''}`);
    const items = details && 'items' in details && Array.isArray(details.items) ? details.items : [];
    if (category !== 'performance')
      for (const item of items.slice(0, 5)) console.log(`    ${JSON.stringify(item).slice(0, 400)}`);
  }
}
// What held the page up, longest first: the tasks that blocking is made of.
const tasks = report.audits['long-tasks']?.details;
for (const item of tasks && 'items' in tasks && Array.isArray(tasks.items) ? tasks.items : []) {
  console.log(`  task of ${Math.round(Number(item['duration']))} ms: ${item['url']}`);
}
