// @ts-check

// The formula: its head, what keeps it from being one, its phases and their lines.

import { arrange, button, make, setText, show } from '../../dom/element.js';
import { chooser } from '../../dom/choice.js';
import { byKey, keyed } from '../../dom/list.js';
import { words as trade } from '../../dom/words.js';
import { go, standing } from '../../router.js';
import { explained } from '../terms/explained.js';
import { createBar } from './bar.js';
import { createHead, createMethod } from './head.js';
import { createLine } from './line.js';
import { createPhase } from './phase.js';
import { makeSortable } from './sorting.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').FormulaView} FormulaView */
/** @typedef {import('../../seam/stillroom.js').FindingView} FindingView */
/** @typedef {FormulaView['problems'][number]} Problem */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const phases = createPhases(session);
  const head = createHead(session, phases.begin);
  const problems = make('div', { class: 'problems' });
  const total = createTotal();
  const addPhase = chooser({
    label: text.addPhase,
    labelHidden: true,
    choices: { '': text.addPhase, ...trade.phaseKinds },
    onChoice: (kind) => {
      if (kind) session.send({ do: 'add-phase', kind });
      addPhase.show('');
    },
  });
  const method = createMethod(session);
  const bar = createBar(session);
  const none = make(
    'div',
    { class: 'quiet', hidden: true },
    make('p', {}, text.none),
    button(text.toShelf, () => go('shelf')),
  );
  const formula = make(
    'div',
    {},
    head.root,
    make(
      'div',
      { class: 'sheet lines-tray' },
      make(
        'div',
        { class: 'lines-holder' },
        problems,
        total.columns,
        phases.root,
        total.root,
        addPhase.root,
        method.root,
        explained('qs', 'phase', 'cool-down', 'leave-on', 'target-ph', 'blend'),
      ),
      bar.root,
    ),
  );
  place.setAttribute('aria-labelledby', 'formula-title');
  place.append(make('h2', { id: 'formula-title', class: 'unseen' }, text.title), none, formula);

  session.listen(
    (update) => {
      if (update.formula) {
        const view = update.formula;
        show(none, view.id === undefined);
        show(formula, view.id !== undefined);
        head.show(view);
        method.show(view);
        keyed(
          problems,
          view.problems,
          (problem) => createProblem(session, problem.code),
          ({ code, cures }, at) => `${code} ${at} ${cures.length}`,
        );
        total.show(view);
        phases.showFormula(view);
      }
      phases.showLines(update.lines ?? []);
      if (update.batch) bar.show(update.batch);
      if (update.findings) {
        // While the amounts make no whole nothing is checked: what was found before marks no line.
        const { waiting, items, worst } = update.findings;
        phases.mark(waiting ? [] : items);
        bar.mark(waiting ? '' : worst);
      }
    },
    () => standing('formula'),
  );
}

/** The heads of the columns, and what all lines make. */
function createTotal() {
  const amountHead = make('span', { class: 'number' });
  const massHead = make('span', { class: 'number' });
  const typed = make('span', { class: 'number' });
  const mass = make('span', { class: 'number' });
  return {
    columns: make(
      'div',
      { class: 'columns', 'aria-hidden': 'true' },
      make('span', {}, text.material),
      amountHead,
      massHead,
    ),
    root: make('div', { class: 'total' }, make('span', {}, text.total), typed, mass),
    /** @param {FormulaView} view */
    show(view) {
      setText(amountHead, view.amountUnit);
      setText(massHead, `${text.mass}, ${view.massUnit}`);
      const inGrams = view.writtenIn === 'grams';
      setText(typed, inGrams ? `${view.totalTyped}\u00a0${view.massUnit}` : `${view.total}\u00a0%`, true);
      setText(mass, view.totalMass ? `${view.totalMass}\u00a0${view.massUnit}` : '–', true);
      typed.classList.toggle('wrong', !view.sound);
    },
  };
}

/**
 * The phases with their lines.
 * @param {Session} session
 */
function createPhases(session) {
  const root = make('div', { class: 'phases' });
  /** @type {FormulaView | undefined} */
  let now;
  let of = '';
  /** @param {number} id @returns {{ name: string, ask: () => void } | undefined} */
  const after = (id) => {
    const all = now?.phases ?? [];
    const next = all[all.findIndex((phase) => phase.id === id) + 1];
    return next && { name: next.name, ask: phases.of(next.id).ask };
  };
  /** @type {ReturnType<typeof byKey<number, ReturnType<typeof createPhase>>>} */
  const phases = byKey((id) =>
    createPhase(
      session,
      id,
      () => now,
      () => after(id),
    ),
  );
  const goesOn = (/** @type {number} */ line) => (now?.phases ?? []).some(({ id }) => phases.of(id).goesOn(line));
  const lines = byKey((/** @type {number} */ id) => createLine(session, id, () => goesOn(id)));
  /** How serious the worst is that was found of a line. @type {Map<number, string>} */
  const worst = new Map();
  makeSortable(root, { onMove: (line, phase, position) => session.send({ do: 'move-line', line, phase, position }) });

  return {
    root,
    /** Asks for the first material of a formula that has none. */
    begin() {
      const [first] = now?.phases ?? [];
      if (!first || now?.phases.some((phase) => phase.lines.length > 0)) return false;
      phases.of(first.id).ask();
      return true;
    },
    /** @param {FormulaView} view */
    showFormula(view) {
      now = view;
      if (of !== (view.id ?? '')) {
        // Another formula: nothing of the last one may linger in its fields.
        lines.keep([]);
        phases.keep([]);
        worst.clear();
        of = view.id ?? '';
      }
      phases.keep(view.phases.map(({ id }) => id));
      lines.keep(view.phases.flatMap((phase) => phase.lines));
      arrange(
        root,
        view.phases.map((phaseView, at) => {
          const phase = phases.of(phaseView.id);
          const inside = phaseView.lines.map((id) => lines.of(id).root);
          phase.show(phaseView, at, view.phases.length, inside);
          return phase.root;
        }),
      );
    },
    /** @param {import('../../seam/stillroom.js').LineView[]} views */
    showLines(views) {
      for (const view of views) {
        const line = lines.of(view.id);
        line.show(view, now);
        line.mark(worst.get(view.id));
      }
    },
    /** Marks the lines behind stops and cautions. @param {FindingView[]} findings */
    mark(findings) {
      worst.clear();
      for (const { severity, lines: behind } of findings) {
        if (severity === 'note') continue;
        for (const id of behind) if (worst.get(id) !== 'stop') worst.set(id, severity);
      }
      for (const phase of now?.phases ?? []) for (const id of phase.lines) lines.of(id).mark(worst.get(id));
    },
  };
}

/**
 * What keeps the lines from being a formula, with what would cure it.
 * @param {Session} session
 * @param {string} code
 */
function createProblem(session, code) {
  const said = make('p');
  const cures = make('div', { class: 'acts' });
  return {
    root: make('article', { class: 'finding caution', 'data-code': code }, said, cures),
    /** @param {Problem} view @param {number} at */
    show(view, at) {
      setText(said, view.text);
      keyed(cures, view.cures, (_, cure) => {
        const apply = button('', () => session.send({ do: 'apply-cure', code, problem: at, cure }), { class: 'cure' });
        return { root: apply, show: (label) => setText(apply, label) };
      });
    },
  };
}
