// @ts-check

// What the checks found: most serious first, each with its cures, its arithmetic, its sources and a picture.

import { arrange, button, draw, make, setText, show } from '../element.js';
import { Field } from '../field.js';
import { inSight } from '../rooms/rooms.js';
import { dress } from './look.js';
import { words } from './words-findings.js';

/** @typedef {import('../seam/stillroom.js').FindingsView} FindingsView */
/** @typedef {import('../seam/stillroom.js').FindingView} FindingView */
/** @typedef {import('../seam/stillroom.js').ChartView} ChartView */
/** @typedef {import('../session.js').Session} Session */

/**
 * @param {Session} session
 * @param {HTMLElement} root the room, which is there already
 */
export function createFindings(session, root) {
  dress([root], 'findings');
  const summary = make('p', { class: 'findings-summary', role: 'status' });
  const list = make('ul', { class: 'found' });
  const aside = make('div', { hidden: true });
  const suspended = make('div', { hidden: true });
  const cold = new Field({
    field: 'findings.cold',
    label: words.cold,
    unit: '°C',
    onText: (text) => session.send({ do: 'set-cold-storage', text }),
  });
  root.append(summary, list, make('div', { class: 'findings-foot' }, suspended, aside, cold.root, make('p', { class: 'quiet' }, words.proof)));

  /** @type {Map<string, ReturnType<typeof createFinding>>} */
  const entries = new Map();
  /** What is weighed in each line, by its number. @type {Map<number, string>} */
  const names = new Map();

  session.listen((update) => {
    for (const line of update.lines ?? []) names.set(line.id, line.name);
    if (update.findings) showFindings(update.findings);
    if (update.findings || update.formula || update.lines) markLines(update.findings);
  }, () => inSight('findings'));

  /** @type {FindingView[]} */
  let items = [];

  /** @param {FindingsView} view */
  function showFindings(view) {
    setText(summary, view.summary);
    list.classList.toggle('waiting', view.waiting);
    cold.show(view.coldStorage);
    showAside(view);
    // While the amounts make no whole nothing is checked: what was found stays in sight, and faint.
    if (view.waiting) return;
    items = view.items;
    for (const link of document.querySelectorAll('a[data-to="findings"]')) {
      if (view.worst === 'stop' || view.worst === 'caution') /** @type {HTMLElement} */ (link).dataset.worst = view.worst;
      else delete (/** @type {HTMLElement} */ (link).dataset.worst);
    }
    const keys = new Set(view.items.map((item) => item.key));
    for (const [key, entry] of entries) {
      if (keys.has(key)) continue;
      entry.forget();
      entries.delete(key);
    }
    arrange(
      list,
      view.items.map((item) => {
        let entry = entries.get(item.key);
        if (!entry) {
          entry = createFinding(session, item.key, names);
          entries.set(item.key, entry);
        }
        entry.show(item);
        return entry.root;
      }),
    );
  }

  /** @param {FindingsView} view */
  function showAside(view) {
    show(aside, view.setAside.length > 0);
    aside.replaceChildren(
      make('h4', {}, words.asideTitle),
      make('ul', { class: 'aside-list' }, ...view.setAside.map((each) =>
        make('li', {},
          make('span', {}, each.text || words.notFound, ' ', make('q', {}, each.reason)),
          button(words.takeBack, () => session.send({ do: 'take-finding-back', key: each.key }))))),
    );
    show(suspended, view.suspended.length > 0);
    suspended.replaceChildren(
      make('h4', {}, words.suspendedTitle),
      make('ul', { class: 'aside-list' }, ...view.suspended.map((each) =>
        make('li', {}, make('span', {}, each.name),
          button(words.dissolves, () => session.send({ do: 'set-suspended', line: each.line, suspended: false }))))),
    );
  }

  /** Marks the lines behind stops and cautions in the formula. @param {FindingsView | undefined} view */
  function markLines(view) {
    if (view?.waiting) return;
    /** @type {Map<string, string>} */
    const worst = new Map();
    for (const item of items) {
      if (item.severity === 'note') continue;
      for (const line of item.lines) if (worst.get(String(line)) !== 'stop') worst.set(String(line), item.severity);
    }
    for (const line of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('.line[data-line]'))) {
      const severity = worst.get(line.dataset.line ?? '');
      if (severity) line.dataset.worst = severity;
      else delete line.dataset.worst;
    }
  }
}

/**
 * @param {Session} session
 * @param {string} key
 * @param {Map<number, string>} names
 */
function createFinding(session, key, names) {
  const kind = make('b', {});
  const family = make('span', {});
  const text = make('p', { class: 'found-text' });
  const cures = make('div', { class: 'acts' });
  const meaning = make('p', {});
  const workingTitle = make('h4', {}, words.working);
  const working = make('ol', { class: 'working' });
  const picture = make('div', {});
  const sourcesTitle = make('h4', {}, words.sources);
  const sources = make('ul', { class: 'from' });
  const lines = make('p', { class: 'found-lines' });
  const reason = new Field({ field: `finding.reason:${key}`, label: words.reason, keyboard: 'text', onText: () => {} });
  const keepReason = button(words.keepReason, () => session.send({ do: 'set-aside-finding', key, text: reason.input.value }));
  const asideForm = make('div', { hidden: true }, reason.root, keepReason);
  const setAside = button(words.setAside, () => {
    show(asideForm, true);
    show(setAside, false);
    reason.input.focus();
  });
  const details = make('details', { ontoggle: () => session.send({ do: 'open-finding', key, open: details.open }) },
    make('summary', {}, words.why), meaning, workingTitle, working, picture, lines, sourcesTitle, sources,
    make('div', { class: 'acts' }, setAside), asideForm);
  const root = make('li', { 'data-finding': key }, make('div', { class: 'found-kind' }, kind, family), text, cures, details);

  return {
    root,
    forget() {
      reason.forget();
      // A finding that is gone is closed, so that it does not come back open.
      if (details.open) session.send({ do: 'open-finding', key, open: false });
    },
    /** @param {FindingView} view */
    show(view) {
      root.dataset.severity = view.severity;
      setText(kind, words.severities[view.severity]);
      setText(family, view.family);
      setText(text, view.text);
      const shown = [...cures.children].map((cure) => cure.textContent);
      if (shown.length !== view.cures.length || view.cures.some((cure, at) => cure !== shown[at])) {
        cures.replaceChildren(...view.cures.map((cure, at) =>
          button(cure, () => session.send({ do: 'cure-finding', key, cure: at, text: cure }), { class: 'cure' })));
      }
      show(cures, view.cures.length > 0);
      const { open } = view;
      if (!open) return;
      setText(meaning, open.meaning);
      show(workingTitle, open.working.length > 0);
      working.replaceChildren(...open.working.map((step) => make('li', {}, step)));
      picture.replaceChildren(...(open.chart ? [drawChart(open.chart)] : []));
      const from = view.lines.map((line) => names.get(line)).filter((name) => name !== undefined);
      setText(lines, from.length ? `${words.lines}: ${from.join(', ')}` : '');
      show(sourcesTitle, open.sources.length > 0);
      sources.replaceChildren(...open.sources.map((source) => make('li', {}, source.text, ' · ', make('b', {}, source.basis))));
    },
  };
}

/** Size of a picture, and its margins. */
const WIDE = 360;
const HIGH = 220;
const LEFT = 48;
const RIGHT = 14;
const TOP = 22;
const BOTTOM = 40;

/** @param {ChartView} chart */
function drawChart(chart) {
  const flat = chart.up === '';
  const high = flat ? 120 : HIGH;
  const left = flat ? RIGHT : LEFT;
  /** @param {number} share */
  const x = (share) => left + share * (WIDE - left - RIGHT);
  /** @param {number} share */
  const y = (share) => high - BOTTOM - share * (high - TOP - BOTTOM);
  const picture = draw('svg', { class: 'picture', viewBox: `0 0 ${WIDE} ${high}`, role: 'img', 'aria-label': chart.description });
  /** @param {number} at @param {number} up @param {string} content @param {Record<string, string>} [more] */
  const write = (at, up, content, more = {}) => {
    const text = draw('text', { x: at, y: up, ...more });
    text.textContent = content;
    picture.append(text);
  };
  if (chart.band) {
    const [from, to] = chart.band;
    picture.append(draw('rect', { class: 'band', x: x(from), y: TOP, width: x(to) - x(from), height: high - TOP - BOTTOM }));
  }
  for (const tick of chart.upTicks) {
    picture.append(draw('line', { class: 'grid', x1: x(0), x2: x(1), y1: y(tick.at), y2: y(tick.at) }));
    write(left - 5, y(tick.at) + 4, tick.text, { 'text-anchor': 'end' });
  }
  for (const tick of chart.acrossTicks) {
    picture.append(draw('line', { class: 'grid', x1: x(tick.at), x2: x(tick.at), y1: TOP, y2: y(0) }));
    write(x(tick.at), y(0) + 15, tick.text, { 'text-anchor': 'middle' });
  }
  picture.append(draw('polyline', { class: 'edge', points: `${x(0)},${TOP} ${x(0)},${y(0)} ${x(1)},${y(0)}` }));
  write(x(0), 12, chart.up);
  write(x(1), high - 6, chart.across, { 'text-anchor': 'end' });
  if (chart.curve.length) {
    picture.append(draw('polyline', { class: 'curve', points: chart.curve.map(([a, b]) => `${x(a)},${y(b)}`).join(' ') }));
  }
  let row = 0;
  for (const mark of chart.marks) {
    const turn = { 'text-anchor': mark.x > 0.6 ? 'end' : 'start' };
    const at = x(mark.x) + (mark.x > 0.6 ? -7 : 7);
    if (mark.y === undefined) {
      picture.append(draw('line', { class: 'across', x1: x(mark.x), x2: x(mark.x), y1: TOP, y2: y(0) }));
      write(at, y(0) - 6 - 14 * row, mark.text, { class: 'told', ...turn });
      row += 1;
    } else {
      picture.append(draw('circle', { class: 'point', cx: x(mark.x), cy: y(mark.y), r: 6 }));
      write(at, Math.max(y(mark.y) - 8, TOP + 10), mark.text, { class: 'told', ...turn });
    }
  }
  return picture;
}
