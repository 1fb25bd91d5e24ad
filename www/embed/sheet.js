// @ts-check

// A shared formula as a weigh sheet in the reader's own batch and units. Whatever the link holds goes in as text.

import { button, freshId, make } from '../element.js';
import { words } from './words-embed.js';

/** @typedef {import('../seam/stillroom.js').ReadingView} ReadingView */
/** @typedef {import('../seam/stillroom.js').ReadingOptions} ReadingOptions */

/**
 * @typedef {object} SheetOptions
 * @property {(options: ReadingOptions) => ReadingView | undefined} read works the formula out
 * @property {string} [batch] batch to begin with, as typed
 * @property {string} [unit] unit of mass to begin with; without one the reader's settings count and no unit is asked for
 * @property {'point' | 'comma'} [mark] decimal mark to begin with
 * @property {(options: ReadingOptions) => boolean | void} [print] `false` where the page around does not let it be
 * @property {string} [bench] address that opens the formula at the reader's own bench
 * @property {'h1' | 'h2' | 'h3'} [heading]
 */

/**
 * Draws the sheet.
 * @param {SheetOptions} options
 */
export function createSheet(options) {
  const level = Number((options.heading ?? 'h2').slice(1));
  const heading = (/** @type {number} */ deeper) => /** @type {'h2'} */ (`h${level + deeper}`);
  let batch = options.batch;
  let unit = options.unit;
  let mark = options.mark;

  const batchField = make('input', { id: freshId(), type: 'text', inputmode: 'decimal', autocomplete: 'off', maxlength: 40, size: 10 });
  const message = make('p', { class: 'message', id: freshId(), hidden: true });
  batchField.setAttribute('aria-describedby', message.id);
  batchField.addEventListener('input', () => {
    batch = batchField.value;
    show();
  });
  const unitChoice = choice(words.units, unit ?? 'g', (chosen) => {
    unit = chosen;
    // A batch typed as a bare number would be another batch in another unit: the maker's comes back.
    batch = undefined;
    show();
  });
  const markChoice = choice(words.marks, mark ?? 'point', (chosen) => {
    mark = chosen === 'comma' ? 'comma' : 'point';
    batch = undefined;
    show();
  });

  const name = make(heading(0), { class: 'sheet-name', dir: 'auto' });
  const about = make('p', { class: 'sheet-about' });
  const problems = make('div', { class: 'sheet-problems', role: 'status' });
  const phases = make('div', { class: 'sheet-phases' });
  const more = make('div', { class: 'sheet-more' });
  const controls = make('div', { class: 'sheet-controls' }, labelled(words.batch, batchField, message));
  if (unit !== undefined) controls.append(labelled(words.unit, unitChoice), labelled(words.mark, markChoice));
  const acts = make('div', { class: 'sheet-acts' });
  const refused = make('p', { class: 'message', role: 'alert' });
  if (options.print) {
    acts.append(button(words.print, () => {
      refused.textContent = options.print?.(asked()) === false ? words.cannotPrint : '';
    }));
  }
  if (options.bench) {
    acts.append(make('a', { class: 'sheet-open', href: options.bench, target: '_blank', rel: 'noopener noreferrer' }, words.open));
  }
  const root = make('article', { class: 'shared-sheet' }, name, about, controls, problems, phases, more, cautions(heading(1)), acts, refused);

  /** @returns {ReadingOptions} */
  function asked() {
    return { decimalMark: mark ?? 'point', batch, massUnit: unit };
  }

  let isFirst = true;

  /** Works the formula out as the reader asks and draws it. Returns the view, also of a link that cannot be read. */
  function show() {
    const view = options.read(asked());
    if (!view) return view;
    if (view.error !== undefined) {
      root.replaceChildren(make('p', { class: 'message', role: 'alert' }, view.error));
      return view;
    }
    const { formula, lines = [], batch: batchView, answer, jar, constituents = [], constituentOrder = [] } = view.update;
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
    problems.replaceChildren(
      ...[...(formula?.problems ?? []).map((problem) => problem.text), ...(jar?.unresolved ?? []), batchView?.warning ?? '']
        .filter(Boolean)
        .map((text) => make('p', { class: 'message', dir: 'auto' }, text)),
    );
    const byId = new Map(lines.map((line) => [line.id, line]));
    phases.replaceChildren(
      table(
        [words.material, words.percent, formula?.massUnit ?? ''],
        (formula?.phases ?? []).map((phase) => ({
          title: [phase.name, phase.temperature ? `${phase.temperatureWord} ${phase.temperature}\u00a0°C` : ''],
          rows: phase.lines.flatMap((id) => byId.get(id) ?? []).map((line) => ({
            name: line.name,
            remarks: [line.brings, line.note, line.problem],
            numbers: [line.percent, line.mass],
          })),
        })),
        [words.total, formula?.total ?? '', formula?.totalMass ?? ''],
      ),
    );
    more.replaceChildren();
    if (view.steps.length > 0) {
      more.append(make(heading(1), {}, words.method), make('ol', {}, ...view.steps.map((step) => make('li', { dir: 'auto' }, step))));
    }
    if (formula?.notes) more.append(make(heading(1), {}, words.notes), make('p', { class: 'sheet-notes', dir: 'auto' }, formula.notes));
    if (view.materials.length > 0) {
      more.append(make(heading(1), {}, words.own), make('ul', {}, ...view.materials.map((own) => make('li', { dir: 'auto' }, own))));
    }
    const byKey = new Map(constituents.map((constituent) => [constituent.key, constituent]));
    const inside = constituentOrder.flatMap((key) => byKey.get(key) ?? []);
    more.append(
      make(
        'details',
        {},
        make('summary', {}, words.inside),
        table([words.inci, words.percent], [{ title: [], rows: inside.map((each) => ({ name: each.inci, remarks: [], numbers: [each.percent] })) }]),
      ),
    );
    return view;
  }

  return { root, show };
}

/**
 * @typedef {object} Group
 * @property {string[]} title name and what is said of it; none for a table of one group
 * @property {{ name: string, remarks: string[], numbers: string[] }[]} rows
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
        ? make('tr', { class: 'group' }, make('th', { scope: 'rowgroup', colspan: heads.length, dir: 'auto' }, title[0] ?? '', make('small', {}, title[1] ?? '')))
        : undefined,
      ...rows.map((row) =>
        make(
          'tr',
          {},
          make('th', { scope: 'row', dir: 'auto' }, row.name, ...row.remarks.filter(Boolean).map((remark) => make('small', { dir: 'auto' }, remark))),
          ...row.numbers.map(number),
        ),
      ),
    ),
  );
  const head = make('thead', {}, make('tr', {}, ...heads.map((text, at) => make('th', at > 0 ? { scope: 'col', class: 'number' } : { scope: 'col' }, text))));
  const foot = sums && make('tfoot', {}, make('tr', {}, make('th', { scope: 'row' }, sums[0] ?? ''), ...sums.slice(1).map(number)));
  return make('table', {}, head, ...bodies, foot);
}

/**
 * @param {string} label
 * @param {HTMLElement} field
 * @param {...HTMLElement} more
 */
function labelled(label, field, ...more) {
  return make('div', { class: 'sheet-field' }, make('label', { for: field.id }, label), field, ...more);
}

/**
 * @param {Record<string, string>} choices
 * @param {string} chosen
 * @param {(chosen: string) => void} onChoice
 */
function choice(choices, chosen, onChoice) {
  const select = make('select', { id: freshId() }, ...Object.entries(choices).map(([value, label]) => make('option', { value }, label)));
  select.value = chosen;
  select.addEventListener('change', () => onChoice(select.value));
  return select;
}

/** @param {'h2'} heading */
function cautions(heading) {
  return make('aside', { class: 'sheet-cautions' }, make(heading, {}, words.cautions), ...words.caution.map((text) => make('p', {}, text)));
}
