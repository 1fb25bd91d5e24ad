// @ts-check

// The weigh sheet: what to weigh of each line, phase by phase.

import { arrange, button, make, say, setText, show } from '../../dom/element.js';
import { letterOf } from '../../dom/letter.js';
import { byKey, keyed, texts } from '../../dom/list.js';
import { words as common } from '../../dom/words.js';
import { beginWeighing } from '../batches/begin.js';
import { explained } from '../terms/explained.js';
import { words as text } from './words.js';

/** @typedef {import('../../seam/stillroom.js').BatchView} BatchView */
/** @typedef {import('../../seam/stillroom.js').FormulaView} FormulaView */
/** @typedef {import('../../seam/stillroom.js').LineView} LineView */
/** @typedef {import('../../seam/stillroom.js').PhaseView} PhaseView */

/** @param {import('../../session.js').Session} session */
export function createSheet(session) {
  const warning = make('p', { class: 'finding caution', hidden: true });
  const smallest = make('p', { class: 'quiet' });
  const handling = make('div', { class: 'handling', role: 'note' });
  const body = make('div', { class: 'sheet-body' });
  const sum = make('span', { class: 'number', id: 'sheet-sum' });
  const title = make('p', { class: 'print-title' });
  const root = make(
    'div',
    { class: 'weigh-sheet sheet', hidden: true },
    make('h3', {}, text.sheet),
    title,
    warning,
    handling,
    body,
    make('div', { class: 'sheet-sum' }, make('span', {}, text.sum), sum),
    smallest,
    explained('rounding'),
    make(
      'div',
      { class: 'acts' },
      button(common.begin, () => void beginWeighing(session), { class: 'main-act' }),
      button(text.print, () => print()),
    ),
  );
  const lines = byKey(createWeighed);
  let unit = 'g';
  let of = '';
  return {
    root,
    /** @param {FormulaView} view */
    showFormula(view) {
      if (of !== (view.id ?? '')) {
        lines.keep([]);
        of = view.id ?? '';
      }
      unit = view.massUnit;
      setText(title, view.name);
      setText(sum, `${view.totalMass}\u00a0${unit}`, true);
      const filled = view.phases.filter((phase) => phase.lines.length > 0);
      keyed(body, filled, () =>
        createWeighedPhase(
          () => unit,
          (id) => lines.of(id).root,
        ),
      );
      for (const line of lines.all()) line.showUnit(unit);
    },
    /** @param {LineView[]} views */
    showLines(views) {
      for (const view of views) {
        const line = lines.of(view.id);
        line.showUnit(unit);
        line.show(view);
      }
    },
    /** @param {BatchView} view */
    showBatch(view) {
      show(root, view.hasSheet);
      say(warning, view.warning);
      texts(handling, 'p', view.handling, { class: 'finding stop' });
      setText(smallest, view.smallest);
    },
  };
}

/**
 * @param {() => string} unit
 * @param {(line: number) => Element} lineOf
 */
function createWeighedPhase(unit, lineOf) {
  const name = make('span', {});
  const about = make('small', { class: 'number' });
  const list = make('ul', { class: 'weighed' });
  const heading = make('h4', {}, name, about);
  const root = make('section', { class: 'phase' }, heading, list);
  return {
    root,
    /** @param {PhaseView} phase @param {number} at */
    show(phase, at) {
      heading.dataset.letter = letterOf(at);
      root.dataset.kind = phase.kind;
      setText(name, phase.name);
      const heat = phase.temperature
        ? `${phase.temperatureWord} ${phase.temperature}\u00a0${phase.temperatureUnit} · `
        : '';
      setText(about, `${heat}${phase.mass}\u00a0${unit()}`);
      arrange(list, phase.lines.map(lineOf));
    },
  };
}

/** @param {number} id */
function createWeighed(id) {
  const name = make('span', { class: 'weighed-name' });
  const about = make('small', {});
  const mass = make('span', { class: 'weighed-mass number' });
  const unit = make('small', {});
  const error = make('small', { class: 'error' });
  const root = make(
    'li',
    { 'data-weighed': id },
    make('span', {}, name, about),
    make('span', { class: 'weighed-number' }, mass, '\u00a0', unit),
    error,
  );
  return {
    root,
    /** @param {string} symbol */
    showUnit(symbol) {
      setText(unit, symbol);
    },
    /** @param {LineView} view */
    show(view) {
      setText(name, view.name);
      setText(about, [`${view.percent}\u00a0%`, view.scale, view.note].filter(Boolean).join(' · '));
      setText(mass, view.mass, true);
      setText(error, view.error ? `${text.rounding} ${view.error}` : '');
      root.classList.toggle('too-coarse', view.errorLarge);
    },
  };
}
