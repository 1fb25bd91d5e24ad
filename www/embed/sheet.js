// @ts-check

// A shared formula as a weigh sheet in the reader's own batch and units. Whatever the link holds goes in as text.

import { chooser } from '../dom/choice.js';
import { button, freshId, make } from '../dom/element.js';
import { drawWithout, lackKey } from './lacking.js';

/** @typedef {import('../seam/stillroom.js').ReadingView} ReadingView */
/** @typedef {import('../seam/stillroom.js').ReadingOptions} ReadingOptions */
/** @typedef {import('../seam/stillroom.js').Update} Update */
/** @typedef {import('../seam/stillroom.js').Lacks} Lacks */
/** @typedef {import('../seam/stillroom.js').ReaderView} ReaderView */

/** @typedef {import('../words.js').EmbedWords} EmbedWords */

/** What the sheet says: whoever draws it knows where the texts lie. @type {EmbedWords} */
let words;

/**
 * @typedef {object} SheetOptions
 * @property {EmbedWords} words what it says, in the language of the page
 * @property {(options: ReadingOptions) => ReadingView | undefined} read works the formula out
 * @property {string} [batch] batch to begin with, as typed
 * @property {string} [unit] unit of mass to begin with; without one the reader's settings count and no unit is asked for
 * @property {string} [temperature] unit of temperature to begin with; asked for where the unit of mass is
 * @property {'point' | 'comma'} [mark] decimal mark to begin with
 * @property {(options: ReadingOptions, without: string) => boolean | void} [print] `false` where the page around does not let
 *   it be; hears what the reader lacks, as `without` takes it
 * @property {{ fetch: () => Promise<void>, read: (options: ReadingOptions, lacks: Lacks) => ReaderView | undefined }} [lacking]
 *   works out what a reader can take instead of a line
 * @property {string} [without] what the reader lacks to begin with: `LINE:WAY` by commas
 * @property {string} [bench] address that opens the formula at the reader's own bench
 * @property {'h1' | 'h2' | 'h3'} [heading]
 */

/**
 * Draws the sheet.
 * @param {SheetOptions} options
 */
export function createSheet(options) {
  words = options.words;
  const level = Number((options.heading ?? 'h2').slice(1));
  const heading = (/** @type {number} */ deeper) => /** @type {'h2'} */ (`h${level + deeper}`);
  let batch = options.batch;
  let unit = options.unit;
  let temperature = options.temperature;
  let mark = options.mark;

  const batchField = make('input', {
    id: freshId(),
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    maxlength: 40,
    size: 10,
  });
  const message = make('p', { class: 'message', id: freshId(), hidden: true });
  batchField.setAttribute('aria-describedby', message.id);
  batchField.addEventListener('input', () => {
    batch = batchField.value;
    show();
  });
  const unitChoice = chooser({
    label: words.unit,
    choices: words.units,
    class: 'sheet-field',
    onChoice: (chosen) => {
      unit = chosen;
      // A batch typed as a bare number would be another batch in another unit: the maker's comes back.
      batch = undefined;
      show();
    },
  });
  const temperatureChoice = chooser({
    label: words.temperatures,
    choices: { '°C': words.degrees.c, '°F': words.degrees.f },
    class: 'sheet-field',
    onChoice: (chosen) => {
      temperature = chosen;
      show();
    },
  });
  const markChoice = chooser({
    label: words.mark,
    choices: words.marks,
    class: 'sheet-field',
    onChoice: (chosen) => {
      mark = chosen;
      batch = undefined;
      show();
    },
  });
  unitChoice.show(unit ?? 'g');
  temperatureChoice.show(temperature ?? '°C');
  markChoice.show(mark ?? 'point');

  const name = make(heading(0), { class: 'sheet-name', dir: 'auto' });
  const about = make('p', { class: 'sheet-about' });
  const problems = make('div', { class: 'sheet-problems', role: 'status' });
  const phases = make('div', { class: 'sheet-phases' });
  const whose = make('p', { class: 'sheet-whose', role: 'status', hidden: true });
  const without = make('div');
  const inside = make('div');
  const told = make('div');
  const more = make(
    'div',
    { class: 'sheet-more' },
    told,
    make('details', {}, make('summary', {}, words.inside), inside),
  );
  const controls = make(
    'div',
    { class: 'sheet-controls' },
    make('div', { class: 'sheet-field' }, make('label', { for: batchField.id }, words.batch), batchField, message),
  );
  if (unit !== undefined) controls.append(unitChoice.root, temperatureChoice.root, markChoice.root);
  const acts = make('div', { class: 'sheet-acts' });
  const refused = make('p', { class: 'message', role: 'alert' });
  if (options.print) {
    acts.append(
      button(words.print, () => {
        refused.textContent = options.print?.(asked(), writtenLacks()) === false ? words.cannotPrint : '';
      }),
    );
  }
  if (options.bench) {
    acts.append(
      make('a', { class: 'sheet-open', href: options.bench, target: '_blank', rel: 'noopener noreferrer' }, words.open),
    );
  }
  const root = make(
    'article',
    { class: 'shared-sheet' },
    name,
    about,
    controls,
    problems,
    whose,
    without,
    phases,
    more,
    cautions(heading(1)),
    acts,
    refused,
  );

  /** @returns {ReadingOptions} */
  function asked() {
    return { decimalMark: mark ?? 'point', batch, massUnit: unit, temperatureUnit: temperature };
  }

  let isFirst = true;
  /** Lines the reader lacks, each with the way that was chosen. @type {Map<number, string | undefined>} */
  const lacks = new Map();
  for (const each of (options.without ?? '').split(',').filter(Boolean)) {
    const [line, ...way] = each.split(':');
    if (/^\d+$/.test(line ?? '')) lacks.set(Number(line), way.join(':') || undefined);
  }
  /** Lines of the author's. @type {Set<number>} */
  let originals = new Set();
  /** Whether what works that out is there. */
  let canSwap = false;

  const writtenLacks = () => [...lacks].map(([line, way]) => `${line}:${way ?? ''}`).join(',');

  /** @param {number} line */
  async function lack(line) {
    lacks.set(line, undefined);
    await settle();
    const box = without.querySelector(`[data-line="${line}"] select, [data-line="${line}"] button`);
    if (box instanceof HTMLElement) box.focus();
  }

  /** @param {number} line */
  function has(line) {
    lacks.delete(line);
    show();
    const key = phases.querySelector(`[data-lack="${line}"]`);
    if (key instanceof HTMLElement) key.focus();
  }

  /** Draws the sheet without what the reader lacks, once what works that out is there. */
  async function settle() {
    if (lacks.size === 0 || !options.lacking) return;
    if (!canSwap) {
      whose.textContent = words.looking;
      whose.hidden = false;
      try {
        await options.lacking.fetch();
      } catch (problem) {
        console.warn(problem);
        lacks.clear();
        whose.textContent = words.lackFailed;
        return;
      }
      canSwap = true;
    }
    show();
  }

  /** Works the formula out as the reader asks and draws it. Returns the view, also of a link that cannot be read. */
  function show() {
    const lines = [...lacks].map(([line, way]) => ({ line, way }));
    const own = canSwap && lines.length > 0 ? options.lacking?.read(asked(), { lines }) : undefined;
    const view = own?.reading ?? options.read(asked());
    if (!view) return view;
    if (view.error !== undefined) {
      root.replaceChildren(make('p', { class: 'message', role: 'alert' }, view.error));
      return view;
    }
    const { formula, batch: batchView, answer, jar } = view.update;
    message.textContent = answer?.error ?? batchView?.problem ?? '';
    message.hidden = message.textContent === '';
    batchField.setAttribute('aria-invalid', String(answer?.error !== undefined));
    // What is being typed is left alone.
    if (isFirst || batch === undefined) {
      batchField.value = batchView ? `${batchView.mass} ${formula?.massUnit ?? ''}` : '';
      isFirst = false;
    }
    name.textContent = formula?.name ?? '';
    about.textContent = view.about;
    const troubles = [...(formula?.problems ?? []).map((problem) => problem.text), ...(jar?.unresolved ?? [])];
    problems.replaceChildren(
      ...[...troubles, batchView?.warning ?? '']
        .filter(Boolean)
        .map((text) => make('p', { class: 'message', dir: 'auto' }, text)),
    );
    whose.textContent = own?.whose ?? '';
    whose.hidden = whose.textContent === '';
    const change = (/** @type {number} */ line, /** @type {string} */ way) => {
      lacks.set(line, way);
      show();
      const select = without.querySelector(`[data-line="${line}"] select`);
      if (select instanceof HTMLElement) select.focus();
    };
    without.replaceChildren(...(own ? drawWithout(words, own, heading(1), change, has) : []));
    const { lines: weighed = [] } = view.update;
    if (!own) originals = new Set(weighed.map(({ id }) => id));
    phases.replaceChildren(drawLines(view.update, (id) => (options.lacking && originals.has(id) ? lack : undefined)));
    told.replaceChildren(...tellMore(view, heading(1)));
    inside.replaceChildren(drawConstituents(view.update));
    return view;
  }

  return { root, show, settle };
}

/**
 * What to weigh, phase by phase.
 * @param {Update} update
 * @param {(line: number) => ((line: number) => void) | undefined} lackOf what to do where somebody has not got a line
 */
function drawLines({ formula, lines = [] }, lackOf) {
  const byId = new Map(lines.map((line) => [line.id, line]));
  const groups = (formula?.phases ?? []).map((phase) => ({
    title: [
      phase.name,
      phase.temperature ? `${phase.temperatureWord} ${phase.temperature}\u00a0${phase.temperatureUnit}` : '',
    ],
    rows: phase.lines
      .flatMap((id) => byId.get(id) ?? [])
      .map((line) => ({
        name: line.name,
        remarks: [line.brings, line.note, line.problem],
        numbers: [line.percent, line.mass],
        key: lackKey(words, line, lackOf(line.id)),
      })),
  }));
  const sums = [words.total, formula?.total ?? '', formula?.totalMass ?? ''];
  return table([words.material, words.percent, formula?.massUnit ?? ''], groups, sums);
}

/**
 * The method, the notes, and what the maker made themselves.
 * @param {ReadingView} view
 * @param {'h2'} heading
 * @returns {HTMLElement[]}
 */
function tellMore({ update, steps, materials }, heading) {
  const parts = [];
  const list = (/** @type {'ol' | 'ul'} */ tag, /** @type {string[]} */ items) =>
    make(tag, {}, ...items.map((item) => make('li', { dir: 'auto' }, item)));
  if (steps.length > 0) parts.push(make(heading, {}, words.method), list('ol', steps));
  const notes = update.formula?.notes;
  if (notes) parts.push(make(heading, {}, words.notes), make('p', { class: 'sheet-notes', dir: 'auto' }, notes));
  if (materials.length > 0) parts.push(make(heading, {}, words.own), list('ul', materials));
  return parts;
}

/** @param {Update} update */
function drawConstituents({ constituents = [], constituentOrder = [] }) {
  const byKey = new Map(constituents.map((constituent) => [constituent.key, constituent]));
  const rows = constituentOrder
    .flatMap((key) => byKey.get(key) ?? [])
    .map((each) => ({ name: each.inci, remarks: [], numbers: [each.percent] }));
  return table([words.inci, words.percent], [{ title: [], rows }]);
}

/**
 * @typedef {object} Group
 * @property {string[]} title name and what is said of it; none for a table of one group
 * @property {{ name: string, remarks: string[], numbers: string[], key?: HTMLElement | undefined }[]} rows
 */

/**
 * @param {string[]} heads
 * @param {Group[]} groups
 * @param {string[]} [sums]
 */
function table(heads, groups, sums) {
  const number = (/** @type {string} */ text) => make('td', { class: 'number' }, text);
  const bodies = groups.map(({ title, rows }) =>
    make(
      'tbody',
      {},
      title.length > 0
        ? make(
            'tr',
            { class: 'group' },
            make(
              'th',
              { scope: 'rowgroup', colspan: heads.length, dir: 'auto' },
              title[0] ?? '',
              make('small', {}, title[1] ?? ''),
            ),
          )
        : undefined,
      ...rows.map((row) =>
        make(
          'tr',
          {},
          make(
            'th',
            { scope: 'row', dir: 'auto' },
            row.name,
            ...row.remarks.filter(Boolean).map((remark) => make('small', { dir: 'auto' }, remark)),
            row.key,
          ),
          ...row.numbers.map(number),
        ),
      ),
    ),
  );
  const head = make(
    'thead',
    {},
    make(
      'tr',
      {},
      ...heads.map((text, at) => make('th', at > 0 ? { scope: 'col', class: 'number' } : { scope: 'col' }, text)),
    ),
  );
  const foot =
    sums &&
    make('tfoot', {}, make('tr', {}, make('th', { scope: 'row' }, sums[0] ?? ''), ...sums.slice(1).map(number)));
  return make('table', {}, head, ...bodies, foot);
}

/** @param {'h2'} heading */
function cautions(heading) {
  return make(
    'aside',
    { class: 'sheet-cautions' },
    make(heading, {}, words.cautions),
    ...Object.values(words.caution).map((text) => make('p', {}, text)),
  );
}
