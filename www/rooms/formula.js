// @ts-check

// The formula: its head, what keeps it from being one, its phases and their lines.

import { arrange, button, make, setText, show } from '../element.js';
import { Field, chooser, segments } from '../field.js';
import { makeSortable } from '../parts/sorting.js';
import { inSight } from './rooms.js';
import { words } from '../words.js';

/** @typedef {import('../session.js').Session} Session */
/** @typedef {import('../seam/stillroom.js').FormulaView} FormulaView */
/** @typedef {import('../seam/stillroom.js').PhaseView} PhaseView */
/** @typedef {import('../seam/stillroom.js').LineView} LineView */

const text = words.formula;

/**
 * @param {Session} session
 * @param {{ go: (room: string) => void, ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 */
export function createFormula(session, page) {
  const head = createHead(session);
  const problems = make('div', { class: 'problems' });
  const phasesRoot = make('div', { class: 'phases' });
  const totalTyped = make('span', { class: 'number' });
  const totalMass = make('span', { class: 'number' });
  const amountHead = make('span', { class: 'number' });
  const massHead = make('span', { class: 'number' });
  const addPhase = chooser({
    label: text.addPhase,
    labelHidden: true,
    choices: { '': text.addPhase, ...text.phaseKinds },
    onChoice: (kind) => {
      if (kind) session.send({ do: 'add-phase', kind });
      addPhase.show('');
    },
  });
  const method = createMethod(session);
  const none = make(
    'div',
    { class: 'quiet', hidden: true },
    make('p', {}, text.none),
    button(text.toShelf, () => page.go('shelf')),
  );
  const whole = make(
    'div',
    {},
    head.root,
    problems,
    make('div', { class: 'columns', 'aria-hidden': 'true' }, make('span', {}, text.material), amountHead, massHead),
    phasesRoot,
    make('div', { class: 'total' }, make('span', {}, text.total), totalTyped, totalMass),
    make('div', { class: 'acts' }, addPhase.root),
    method.root,
  );
  const root = make('section', { class: 'room sheet', 'data-room': 'formula', 'aria-labelledby': 'formula-title' },
    make('h2', { id: 'formula-title' }, text.title), none, whole);

  /** @type {Map<number, ReturnType<typeof createPhase>>} */
  const phases = new Map();
  /** @type {Map<number, ReturnType<typeof createLine>>} */
  const lines = new Map();
  /** @type {FormulaView | undefined} */
  let now;
  let of = '';

  makeSortable(phasesRoot, {
    onMove: (line, phase, position) => session.send({ do: 'move-line', line, phase, position }),
  });

  /** @param {number} id */
  const lineOf = (id) => {
    let line = lines.get(id);
    if (!line) {
      line = createLine(session, id, page);
      lines.set(id, line);
    }
    return line;
  };

  session.listen((update) => {
    if (update.formula) {
      now = update.formula;
      if (of !== (now.id ?? '')) {
        // Another formula: nothing of the last one may linger in its fields.
        for (const line of lines.values()) line.forget();
        for (const phase of phases.values()) phase.forget();
        lines.clear();
        phases.clear();
        of = now.id ?? '';
      }
      showFormula(now);
    }
    for (const view of update.lines ?? []) lineOf(view.id).show(view, now);
  }, () => inSight('formula'));

  /** @param {FormulaView} view */
  function showFormula(view) {
    show(none, view.id === undefined);
    show(whole, view.id !== undefined);
    head.show(view);
    method.show(view);
    showProblems(session, problems, view);
    setText(amountHead, view.amountUnit);
    setText(massHead, `${text.mass}, ${view.massUnit}`);
    setText(totalTyped, view.writtenIn === 'grams' ? `${view.totalTyped}\u00a0${view.massUnit}` : `${view.total}\u00a0%`, true);
    setText(totalMass, view.totalMass ? `${view.totalMass}\u00a0${view.massUnit}` : '–', true);
    totalTyped.classList.toggle('wrong', !view.sound);

    const phaseIds = new Set(view.phases.map((phase) => phase.id));
    const lineIds = new Set(view.phases.flatMap((phase) => phase.lines));
    for (const [id, phase] of phases) {
      if (!phaseIds.has(id)) {
        phase.forget();
        phases.delete(id);
      }
    }
    for (const [id, line] of lines) {
      if (!lineIds.has(id)) {
        line.forget();
        lines.delete(id);
      }
    }
    const shown = view.phases.map((phaseView, position) => {
      let phase = phases.get(phaseView.id);
      if (!phase) {
        phase = createPhase(session, phaseView.id, page, () => now);
        phases.set(phaseView.id, phase);
      }
      phase.show(phaseView, position, view.phases.length, phaseView.lines.map((id) => lineOf(id).root));
      return phase.root;
    });
    arrange(phasesRoot, shown);
  }

  return root;
}

/** @param {Session} session */
function createHead(session) {
  let formula = '';
  const name = new Field({
    field: 'formula.name',
    label: text.name,
    keyboard: 'text',
    class: 'name-field',
    onText: (typed) => session.send({ do: 'rename-formula', formula, name: typed }),
  });
  const purpose = chooser({
    label: text.purpose,
    choices: { 'leave-on': text.leaveOn, 'rinse-off': text.rinseOff },
    onChoice: (value) => session.send({ do: 'set-purpose', purpose: value }),
  });
  const ph = new Field({
    field: 'formula.ph',
    label: text.ph,
    class: 'short',
    onText: (typed) => session.send({ do: 'set-target-ph', text: typed }),
  });
  const writtenIn = segments({
    label: text.writtenIn,
    choices: { percent: text.inPercent, grams: text.inGrams },
    onChoice: (basis) => session.send({ do: 'write-in', basis }),
  });
  return {
    root: make('div', { class: 'formula-head' }, name.root, make('div', { class: 'row' }, purpose.root, ph.root, writtenIn.root)),
    /** @param {FormulaView} view */
    show(view) {
      formula = view.id ?? '';
      name.show(view.name);
      purpose.show(view.purpose);
      ph.show(view.targetPh);
      writtenIn.show(view.writtenIn);
    },
  };
}

/** @param {Session} session */
function createMethod(session) {
  const steps = new Field({
    field: 'formula.steps',
    label: text.steps,
    keyboard: 'text',
    long: true,
    onText: (typed) => session.send({ do: 'set-steps', text: typed }),
  });
  const notes = new Field({
    field: 'formula.notes',
    label: text.notes,
    keyboard: 'text',
    long: true,
    onText: (typed) => session.send({ do: 'set-notes', text: typed }),
  });
  return {
    root: make('details', { class: 'method' }, make('summary', {}, text.methodTitle), steps.root, notes.root),
    /** @param {FormulaView} view */
    show(view) {
      steps.show(view.steps);
      notes.show(view.notes);
    },
  };
}

/**
 * @param {Session} session
 * @param {HTMLElement} root
 * @param {FormulaView} view
 */
function showProblems(session, root, view) {
  root.replaceChildren(
    ...view.problems.map((problem, at) =>
      make(
        'article',
        { class: 'finding caution', 'data-code': problem.code },
        make('p', {}, problem.text),
        make(
          'div',
          { class: 'acts' },
          ...problem.cures.map((label, cure) =>
            button(label, () => session.send({ do: 'apply-cure', code: problem.code, problem: at, cure }), { class: 'cure' }),
          ),
        ),
      ),
    ),
  );
}

/**
 * @param {Session} session
 * @param {number} phase
 * @param {{ ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 * @param {() => FormulaView | undefined} formula
 */
function createPhase(session, phase, page, formula) {
  let position = 0;
  const title = make('span', { class: 'phase-name' });
  const about = make('small', { class: 'number' });
  const name = new Field({
    field: `phase.name:${phase}`,
    label: text.phaseName,
    keyboard: 'text',
    onText: (typed) => session.send({ do: 'rename-phase', phase, name: typed }),
  });
  const kind = chooser({
    label: text.phaseKind,
    choices: text.phaseKinds,
    onChoice: (value) => session.send({ do: 'set-phase-kind', phase, kind: value }),
  });
  const temperature = new Field({
    field: `phase.temperature:${phase}`,
    label: text.temperature,
    unit: '°C',
    class: 'short',
    onText: (typed) => session.send({ do: 'set-phase-temperature', phase, text: typed }),
  });
  const up = button(text.phaseUp, () => session.send({ do: 'move-phase', phase, position: position - 1 }));
  const down = button(text.phaseDown, () => session.send({ do: 'move-phase', phase, position: position + 1 }));
  const tools = make(
    'div',
    { class: 'tools', hidden: true },
    name.root,
    make('div', { class: 'row' }, kind.root, temperature.root),
    make('div', { class: 'acts' }, up, down,
      button(text.removePhase, () => session.send({ do: 'remove-phase', phase }), { class: 'take-out' })),
  );
  const opener = make('button', {
    type: 'button',
    class: 'phase-title',
    'aria-expanded': 'false',
    title: text.phaseTools,
    onclick: () => {
      const opened = opener.getAttribute('aria-expanded') !== 'true';
      opener.setAttribute('aria-expanded', String(opened));
      show(tools, opened);
    },
  }, title, about);
  const list = make('ul', { class: 'lines', 'data-phase': phase });
  const empty = make('p', { class: 'quiet' }, text.emptyPhase);
  const add = button(text.addLine, () => {
    page.ask(title.textContent ?? '', (material) => {
      const update = session.send({ do: 'add-line', phase, material });
      const made = update.answer?.made;
      if (made !== undefined) {
        document.querySelector(`[data-field="amount:${made}"]`)?.scrollIntoView({ block: 'center' });
        /** @type {HTMLInputElement | null} */ (document.querySelector(`[data-field="amount:${made}"]`))?.focus();
      }
    }, (material) => material !== `f${formula()?.id}`, /** @type {import('../seam/stillroom.js').PhaseKind | undefined} */ (root.dataset.kind));
  }, { class: 'add' });
  const root = make('section', { class: 'phase' }, make('h3', {}, opener), tools, list, empty, add);

  return {
    root,
    forget() {
      name.forget();
      temperature.forget();
    },
    /**
     * @param {PhaseView} view
     * @param {number} at
     * @param {number} count
     * @param {HTMLElement[]} lines
     */
    show(view, at, count, lines) {
      position = at;
      root.dataset.kind = view.kind;
      setText(title, view.name);
      const heat = view.temperature ? `${view.temperatureWord} ${view.temperature}\u00a0°C · ` : '';
      setText(about, `${heat}${view.percent}\u00a0%`);
      name.show(view.name);
      kind.show(view.kind);
      temperature.show(view.temperature);
      up.disabled = at === 0;
      down.disabled = at === count - 1;
      arrange(list, lines);
      show(empty, lines.length === 0);
      list.setAttribute('aria-label', view.name);
      add.setAttribute('aria-label', `${text.addLine}: ${view.name}`);
    },
  };
}

/**
 * @param {Session} session
 * @param {number} line
 * @param {{ go: (room: string) => void, ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 */
function createLine(session, line, page) {
  let material = '';
  const name = make('span', { class: 'line-name' });
  const brings = make('small', { class: 'brings' });
  const remark = make('small', { class: 'remark' });
  const problem = make('p', { class: 'message', hidden: true });
  const amount = new Field({
    field: `amount:${line}`,
    label: text.amountOf,
    labelHidden: true,
    class: 'amount',
    onText: (typed) => session.send({ do: 'set-amount', line, text: typed }),
  });
  amount.input.addEventListener('keydown', (/** @type {any} */ event) => {
    if (event.key === 'Enter') focusNext(amount.input);
  });
  const mass = make('span', { class: 'mass number' });
  const note = new Field({
    field: `line.note:${line}`,
    label: text.note,
    keyboard: 'text',
    onText: (typed) => session.send({ do: 'set-line-note', line, text: typed }),
  });
  const makeQs = button(text.makeQs, () => session.send({ do: 'set-quantum-satis', line }));
  const tools = make(
    'div',
    { class: 'tools', hidden: true },
    make(
      'div',
      { class: 'acts' },
      makeQs,
      button(text.up, () => session.send({ do: 'step-line', line, down: false })),
      button(text.down, () => session.send({ do: 'step-line', line, down: true })),
      button(text.swap, () => page.ask(name.textContent ?? '', (taken) => session.send({ do: 'replace-material', line, material: taken }))),
      button(text.look, () => {
        session.send({ do: 'open-material', material });
        page.go('materials');
      }),
      button(text.removeLine, () => session.send({ do: 'remove-line', line }), { class: 'take-out' }),
    ),
    note.root,
  );
  const opener = make('button', {
    type: 'button',
    class: 'line-title',
    'aria-expanded': 'false',
    onclick: () => {
      const opened = opener.getAttribute('aria-expanded') !== 'true';
      opener.setAttribute('aria-expanded', String(opened));
      show(tools, opened);
    },
  }, name, brings, remark);
  const handle = make('button', {
    type: 'button',
    class: 'handle',
    title: text.dragHelp,
    onkeydown: (/** @type {KeyboardEvent} */ event) => {
      if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
      event.preventDefault();
      session.send({ do: 'step-line', line, down: event.key === 'ArrowDown' });
      handle.focus();
    },
  });
  const root = make('li', { class: 'line', 'data-line': line }, handle, opener, amount.root, mass, problem, tools);

  return {
    root,
    forget() {
      amount.forget();
      note.forget();
    },
    /**
     * @param {LineView} view
     * @param {FormulaView | undefined} formula
     */
    show(view, formula) {
      material = view.material;
      setText(name, view.name);
      setText(brings, view.brings);
      setText(remark, [view.quantumSatis ? text.qs : '', view.note].filter(Boolean).join(' · '));
      setText(amount.label, `${text.amountOf} ${view.name}`);
      opener.setAttribute('aria-label', `${text.lineTools} ${view.name}`);
      handle.setAttribute('aria-label', `${text.drag} ${view.name}. ${text.dragHelp}`);
      amount.show(view.amount);
      root.classList.toggle('takes-rest', view.quantumSatis);
      setText(mass, view.mass || '–', true);
      show(makeQs, !view.quantumSatis && formula?.writtenIn !== 'grams');
      note.show(view.note);
      setText(problem, view.problem);
      show(problem, Boolean(view.problem));
    },
  };
}

/** @param {Element} input */
function focusNext(input) {
  const inputs = [...document.querySelectorAll('.amount input')];
  const next = inputs[inputs.indexOf(input) + 1];
  if (next instanceof HTMLInputElement) next.focus();
  else if (input instanceof HTMLElement) input.blur();
}
