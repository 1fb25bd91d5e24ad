// @ts-check

// How large the batch is to be.

import { button, make, say, setText, show } from '../../dom/element.js';
import { segments } from '../../dom/choice.js';
import { Field } from '../../dom/field.js';
import { keyed, texts } from '../../dom/list.js';
import { explained } from '../terms/explained.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').BatchView} BatchView */
/** @typedef {import('../../seam/stillroom.js').SettingsView} SettingsView */
/** @typedef {import('../../seam/stillroom.js').StockView} StockView */

/** @param {Session} session */
export function createBatch(session) {
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
  const atHand = make('ul', { class: 'at-hand' });
  const stock = make('div', { hidden: true }, make('p', { class: 'quiet' }, text.stockHelp), stockRows, atHand);
  const byMass = make('div', { class: 'row' }, mass.root);
  const byContainers = make(
    'div',
    { class: 'grid', hidden: true },
    count.root,
    volume.root,
    headspace.root,
    loss.root,
    density.root,
    explained('headspace', 'loss', 'density'),
  );
  const arithmetic = make('div', { class: 'arithmetic' });
  const result = make('p', { class: 'plate', id: 'batch-result' });
  const problem = make('p', { class: 'message', hidden: true });
  const remarks = make('div');

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
      keyed(
        stockRows,
        view.stock,
        ({ material }) => createStockRow(session, material),
        ({ material }) => material,
      );
      keyed(
        atHand,
        view.atHand,
        ({ material }) => createAtHand(session, material),
        ({ material }) => material,
      );
      setText(result, view.batch, true);
      say(problem, view.problem);
      texts(arithmetic, 'p', view.arithmetic);
      texts(remarks, 'p', view.remarks, { class: 'quiet' });
    },
  };
}

/**
 * A material of the formula, to say how much of it is left.
 * @param {Session} session
 * @param {string} material
 */
function createAtHand(session, material) {
  const choose = button('', () => {
    session.send({ do: 'set-stock', material, text: '' });
    /** @type {HTMLElement | null} */ (document.querySelector(`[data-field="stock:${material}"]`))?.focus();
  });
  return {
    root: make('li', {}, choose),
    /** @param {import('../../seam/stillroom.js').AtHandView} view */
    show(view) {
      setText(choose, view.recorded ? text.recorded(view) : view.name);
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
    label: '',
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
      setText(field.label, text.stockOf({ name: view.name }));
      field.show(view.available);
      remove.setAttribute('aria-label', text.removeStock({ name: view.name }));
      setText(left, [view.limiting ? text.limiting : '', view.left].filter(Boolean).join(' · '));
      root.classList.toggle('limiting', view.limiting);
    },
  };
}
