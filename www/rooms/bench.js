// @ts-check

// The bench: how large a batch, what to weigh for it, and on which scales.

import { arrange, button, make, setText, show } from '../element.js';
import { Field, chooser, segments } from '../field.js';
import { inSight } from './rooms.js';
import { words } from '../words.js';

/** @typedef {import('../session.js').Session} Session */
/** @typedef {import('../seam/stillroom.js').BatchView} BatchView */
/** @typedef {import('../seam/stillroom.js').FormulaView} FormulaView */
/** @typedef {import('../seam/stillroom.js').LineView} LineView */
/** @typedef {import('../seam/stillroom.js').SettingsView} SettingsView */
/** @typedef {import('../seam/stillroom.js').StockView} StockView */

const text = words.bench;

/**
 * @param {Session} session
 * @param {{ ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 */
export function createBench(session, page) {
  const batch = createBatch(session, page);
  const sheet = createSheet();
  const scales = createScales(session);
  const whole = make('div', {}, batch.root, sheet.root, scales.root);
  const root = make(
    'section',
    { class: 'room sheet', 'data-room': 'bench', 'aria-labelledby': 'bench-title' },
    make('h2', { id: 'bench-title' }, text.title),
    whole,
  );
  session.listen((update) => {
    if (update.formula) {
      show(root, update.formula.id !== undefined);
      batch.showUnit(update.formula.massUnit);
      sheet.showFormula(update.formula);
    }
    if (update.settings) {
      batch.showSettings(update.settings);
      scales.show(update.settings);
    }
    if (update.batch) {
      batch.show(update.batch);
      sheet.showBatch(update.batch);
    }
    sheet.showLines(update.lines ?? []);
  }, () => inSight('bench'));
  return root;
}

/**
 * @param {Session} session
 * @param {{ ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 */
function createBatch(session, page) {
  const way = segments({
    label: text.way,
    choices: text.ways,
    onChoice: (value) => session.send({ do: 'set-batch-way', way: value }),
  });
  const mass = new Field({
    field: 'batch.mass',
    label: text.mass,
    unit: 'g',
    onText: (typed) => session.send({ do: 'set-batch-mass', text: typed }),
  });
  const count = new Field({
    field: 'batch.count',
    label: text.count,
    keyboard: 'numeric',
    onText: (typed) => session.send({ do: 'set-container-count', text: typed }),
  });
  const volume = new Field({
    field: 'batch.volume',
    label: text.volume,
    unit: 'mL',
    onText: (typed) => session.send({ do: 'set-container-volume', text: typed }),
  });
  const headspace = new Field({
    field: 'batch.headspace',
    label: text.headspace,
    unit: '%',
    onText: (typed) => session.send({ do: 'set-headspace', text: typed }),
  });
  const loss = new Field({
    field: 'batch.loss',
    label: text.loss,
    unit: '%',
    onText: (typed) => session.send({ do: 'set-loss', text: typed }),
  });
  const density = new Field({
    field: 'batch.density',
    label: text.density,
    unit: 'g/mL',
    class: 'wide',
    onText: (typed) => session.send({ do: 'set-density', text: typed }),
  });
  const stockRows = make('ul', { class: 'stock' });
  const stock = make(
    'div',
    { hidden: true },
    make('p', { class: 'quiet' }, text.stockHelp),
    stockRows,
    button(text.addStock, () =>
      page.ask(text.addStock, (material) => {
        session.send({ do: 'set-stock', material, text: '' });
        /** @type {HTMLElement | null} */ (document.querySelector(`[data-field="stock:${material}"]`))?.focus();
      }),
    ),
  );
  const byMass = make('div', { class: 'row' }, mass.root);
  const byContainers = make('div', { class: 'grid', hidden: true }, count.root, volume.root, headspace.root, loss.root, density.root);
  const arithmetic = make('div', { class: 'arithmetic' });
  const result = make('p', { class: 'batch-result', id: 'batch-result' });
  const problem = make('p', { class: 'message', hidden: true });
  const remarks = make('div', {});

  /** @type {Map<string, ReturnType<typeof createStockRow>>} */
  const rows = new Map();

  return {
    root: make('div', { class: 'batch' }, way.root, byMass, byContainers, stock, result, problem, arithmetic, remarks),
    /** @param {string} unit */
    showUnit(unit) {
      if (mass.unit) setText(mass.unit, unit);
    },
    /** @param {SettingsView} settings */
    showSettings(settings) {
      if (mass.unit) setText(mass.unit, settings.massUnit);
      if (volume.unit) setText(volume.unit, settings.volumeUnit);
    },
    /** @param {BatchView} view */
    show(view) {
      way.show(view.way);
      show(byMass, view.way === 'mass');
      show(byContainers, view.way === 'containers');
      show(stock, view.way === 'stock');
      mass.show(view.mass);
      count.show(view.count);
      volume.show(view.volume);
      headspace.show(view.headspace);
      loss.show(view.loss);
      density.show(view.density);
      density.input.setAttribute('placeholder', view.densityEstimate);
      const names = new Set(view.stock.map((each) => each.material));
      for (const [name, row] of rows) {
        if (!names.has(name)) {
          row.forget();
          rows.delete(name);
        }
      }
      arrange(
        stockRows,
        view.stock.map((each) => {
          let row = rows.get(each.material);
          if (!row) {
            row = createStockRow(session, each.material);
            rows.set(each.material, row);
          }
          row.show(each);
          return row.root;
        }),
      );
      setText(result, view.batch, true);
      setText(problem, view.problem);
      show(problem, Boolean(view.problem));
      arithmetic.replaceChildren(...view.arithmetic.map((line) => make('p', {}, line)));
      remarks.replaceChildren(...view.remarks.map((line) => make('p', { class: 'quiet' }, line)));
    },
  };
}

/**
 * @param {Session} session
 * @param {string} material
 */
function createStockRow(session, material) {
  const field = new Field({
    field: `stock:${material}`,
    label: text.stockOf,
    onText: (typed) => session.send({ do: 'set-stock', material, text: typed }),
  });
  const left = make('small', { class: 'quiet' });
  const remove = button('×', () => session.send({ do: 'remove-stock', material }), { class: 'plain' });
  const root = make('li', {}, field.root, remove, left);
  return {
    root,
    forget: () => field.forget(),
    /** @param {StockView} view */
    show(view) {
      setText(field.label, `${text.stockOf} ${view.name}`);
      field.show(view.available);
      remove.setAttribute('aria-label', `${text.removeStock} ${view.name}`);
      setText(left, [view.limiting ? text.limiting : '', view.left].filter(Boolean).join(' · '));
      root.classList.toggle('limiting', view.limiting);
    },
  };
}

function createSheet() {
  const warning = make('p', { class: 'finding caution', hidden: true });
  const smallest = make('p', { class: 'quiet' });
  const body = make('div', { class: 'sheet-body' });
  const sum = make('span', { class: 'number', id: 'sheet-sum' });
  const title = make('p', { class: 'print-title' });
  const root = make(
    'div',
    { class: 'weigh-sheet', hidden: true },
    make('h3', {}, text.sheet),
    title,
    warning,
    body,
    make('div', { class: 'sheet-sum' }, make('span', {}, text.sum), sum),
    smallest,
    make('div', { class: 'acts' }, make('a', { class: 'make-batch', href: '#batches' }, text.make), button(text.print, () => print())),
  );
  /** @type {Map<number, ReturnType<typeof createWeighed>>} */
  const lines = new Map();
  /** @type {ReturnType<typeof createWeighedPhase>[]} */
  const phases = [];
  /** @param {number} id */
  const lineOf = (id) => {
    let line = lines.get(id);
    if (!line) {
      line = createWeighed(id);
      lines.set(id, line);
    }
    return line;
  };
  let unit = 'g';
  let of = '';
  return {
    root,
    /** @param {FormulaView} view */
    showFormula(view) {
      if (of !== (view.id ?? '')) {
        lines.clear();
        of = view.id ?? '';
      }
      unit = view.massUnit;
      setText(title, view.name);
      setText(sum, `${view.totalMass}\u00a0${unit}`, true);
      const filled = view.phases.filter((phase) => phase.lines.length > 0);
      while (phases.length < filled.length) phases.push(createWeighedPhase());
      filled.forEach((phase, at) => phases[at]?.show(phase, unit, phase.lines.map((id) => lineOf(id).root)));
      arrange(body, filled.map((_, at) => phases[at].root));
      for (const line of lines.values()) line.showUnit(unit);
    },
    /** @param {LineView[]} views */
    showLines(views) {
      for (const view of views) {
        const line = lineOf(view.id);
        line.showUnit(unit);
        line.show(view);
      }
    },
    /** @param {BatchView} view */
    showBatch(view) {
      show(root, view.hasSheet);
      setText(warning, view.warning);
      show(warning, Boolean(view.warning));
      setText(smallest, view.smallest);
    },
  };
}

function createWeighedPhase() {
  const name = make('span', {});
  const about = make('small', { class: 'number' });
  const list = make('ul', { class: 'weighed' });
  const root = make('section', { class: 'phase' }, make('h4', {}, name, about), list);
  return {
    root,
    /**
     * @param {import('../seam/stillroom.js').PhaseView} phase
     * @param {string} unit
     * @param {Element[]} lines
     */
    show(phase, unit, lines) {
      root.dataset.kind = phase.kind;
      setText(name, phase.name);
      setText(about, `${phase.temperature ? `${phase.temperatureWord} ${phase.temperature}\u00a0°C · ` : ''}${phase.mass}\u00a0${unit}`);
      arrange(list, lines);
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
  const root = make('li', { 'data-weighed': id }, make('span', {}, name, about), make('span', { class: 'weighed-number' }, mass, '\u00a0', unit), error);
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

/** @param {Session} session */
function createScales(session) {
  /**
   * @param {import('../seam/stillroom.js').SettingName} name
   * @param {string} label
   */
  const field = (name, label, unit = 'g') =>
    new Field({ field: `setting.${name}`, label, unit, onText: (typed) => session.send({ do: 'set-setting', name, text: typed }) });
  /**
   * @param {import('../seam/stillroom.js').SettingName} name
   * @param {string} label
   * @param {Record<string, string>} choices
   */
  const choice = (name, label, choices) =>
    chooser({ label, choices, field: `setting.${name}`, onChoice: (chosen) => session.send({ do: 'set-setting', name, text: chosen }) });

  const main = field('main-step', text.mainStep);
  const fineStep = field('fine-step', text.fineStep);
  const fineBelow = field('fine-below', text.fineBelow);
  const tolerance = field('tolerance', text.tolerance, '%');
  const massUnit = choice('mass-unit', text.massUnit, text.massUnits);
  const volumeUnit = choice('volume-unit', text.volumeUnit, text.volumeUnits);
  const mark = choice('decimal-mark', text.decimalMark, text.marks);
  const fine = make('input', {
    type: 'checkbox',
    id: 'fine-scale',
    onchange: () => session.send({ do: 'set-setting', name: 'fine-scale', text: fine.checked ? 'yes' : 'no' }),
  });
  const fineFields = make('div', { class: 'grid' }, fineStep.root, fineBelow.root);
  return {
    root: make(
      'details',
      { class: 'scales' },
      make('summary', {}, text.scales),
      make('div', { class: 'grid' }, main.root, tolerance.root),
      make('label', { class: 'check', for: 'fine-scale' }, fine, text.fineScale),
      fineFields,
      make('div', { class: 'grid' }, massUnit.root, volumeUnit.root, mark.root),
    ),
    /** @param {SettingsView} view */
    show(view) {
      for (const each of [main, fineStep, fineBelow]) if (each.unit) setText(each.unit, view.massUnit);
      main.show(view.mainStep);
      fineStep.show(view.fineStep);
      fineBelow.show(view.fineBelow);
      tolerance.show(view.tolerance);
      fine.checked = view.fineScale;
      show(fineFields, view.fineScale);
      massUnit.show(view.massUnit);
      volumeUnit.show(view.volumeUnit);
      mark.show(view.decimalMark);
    },
  };
}
