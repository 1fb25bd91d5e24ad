// @ts-check

// A finding: what was found, its cures, and behind it the arithmetic, the sources and a picture.

import { button, draw, make, setText, show } from '../../dom/element.js';
import { Field } from '../../dom/field.js';
import { keyed, texts } from '../../dom/list.js';
import { words as common } from '../../dom/words.js';
import { drawChart } from './chart.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').FindingView} FindingView */

/**
 * @param {Session} session
 * @param {string} key
 * @param {Map<number, string>} names
 */
export function createFinding(session, key, names) {
  const tag = make('span', { class: 'tag', 'aria-hidden': 'true' });
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
  const keepReason = button(words.keepReason, () =>
    session.send({ do: 'set-aside-finding', key, text: reason.input.value }),
  );
  const asideForm = make('div', { hidden: true }, reason.root, keepReason);
  const setAside = button(words.setAside, () => {
    show(asideForm, true);
    show(setAside, false);
    reason.input.focus();
  });
  const details = make(
    'details',
    { ontoggle: () => session.send({ do: 'open-finding', key, open: details.open }) },
    make('summary', {}, words.why),
    meaning,
    workingTitle,
    working,
    picture,
    lines,
    sourcesTitle,
    sources,
    make('div', { class: 'acts' }, setAside),
    asideForm,
  );
  const root = make(
    'li',
    { 'data-finding': key },
    tag,
    make('div', { class: 'found-said' }, make('p', { class: 'found-kind' }, kind, ' ', family), text, cures, details),
  );

  return {
    root,
    forget() {
      reason.forget();
      // A finding that is gone is closed, so that it does not come back open.
      if (details.open) session.send({ do: 'open-finding', key, open: false });
    },
    /** @param {FindingView} view */
    show(view) {
      if (root.dataset.severity !== view.severity) tag.replaceChildren(drawTag(view.severity));
      root.dataset.severity = view.severity;
      setText(kind, common.grades[view.severity]);
      setText(family, view.family);
      setText(text, view.text);
      keyed(cures, view.cures, (_, cure) => createCure(session, key, cure));
      show(cures, view.cures.length > 0);
      const { open } = view;
      if (!open) return;
      setText(meaning, open.meaning);
      show(workingTitle, open.working.length > 0);
      texts(working, 'li', open.working);
      picture.replaceChildren(...(open.chart ? [drawChart(open.chart)] : []));
      const from = view.lines.map((line) => names.get(line)).filter((name) => name !== undefined);
      setText(lines, from.length ? words.lines({ names: from.join(', ') }) : '');
      show(sourcesTitle, open.sources.length > 0);
      sources.replaceChildren(
        ...open.sources.map((source) => make('li', {}, source.text, ' · ', make('b', {}, source.basis))),
      );
    },
  };
}

const TAG = 'M11.5 11h17L37 20.5V54a2.5 2.5 0 0 1-2.5 2.5h-29A2.5 2.5 0 0 1 3 54V20.5z';
const WAVE = 'q8.5 4 17 0t17 0';
const FOOT = 'a2.5 2.5 0 0 1-2.5 2.5h-29A2.5 2.5 0 0 1 3 54z';

/**
 * A tag that was dipped: full for a stop, half for a caution, not at all for a note.
 * @param {'stop' | 'caution' | 'note'} grade
 */
function drawTag(grade) {
  const parts = [
    draw('path', { class: 'string', d: 'M20 17C19 8 24 4 31 1.5' }),
    draw('path', { class: 'paper', d: TAG }),
  ];
  if (grade === 'stop') parts.push(draw('path', { class: 'dip', d: `M3 25${WAVE}v29${FOOT}` }));
  if (grade === 'caution') {
    parts.push(
      draw('path', { class: 'dip', d: `M3 43${WAVE}v11${FOOT}` }),
      draw('path', { class: 'edge', d: `M3 43${WAVE}` }),
    );
  }
  const mark = {
    stop: 'M13.5 35.5l13 13M26.5 35.5l-13 13',
    caution: 'M20 26.5V34M20 39h.01',
    note: 'M10 31h20M10 38h20M10 45h12',
  };
  return draw(
    'svg',
    { viewBox: '0 0 40 58', 'data-grade': grade },
    ...parts,
    draw('path', { class: 'edge', d: TAG }),
    draw('circle', { class: 'hole', cx: 20, cy: 18, r: 2.6 }),
    draw('path', { class: 'mark', d: mark[grade] }),
  );
}

/**
 * @param {Session} session
 * @param {string} finding
 * @param {number} cure
 */
function createCure(session, finding, cure) {
  let label = '';
  // One way out stands out: the first is the one a chemist would try.
  const apply = button('', () => session.send({ do: 'cure-finding', key: finding, cure, text: label }), {
    class: cure === 0 ? 'cure' : 'cure plain',
  });
  return {
    root: apply,
    /** @param {string} text */
    show(text) {
      label = text;
      setText(apply, text);
    },
  };
}
