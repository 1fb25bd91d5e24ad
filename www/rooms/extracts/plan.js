// @ts-check

// The plan of an extract: plant, menstruum, pressing.

import { make, setText, show } from '../../dom/element.js';
import { explained } from '../terms/explained.js';
import { MASS } from './form.js';
import { words as text } from './words.js';

/** @typedef {import('./form.js').Form} Form */
/** @typedef {import('../../seam/stillroom.js').ChoiceView} ChoiceView */
/** @typedef {import('../../seam/stillroom.js').ExtractView} ExtractView */

/** @param {Form} form */
export function createPlan(form) {
  const plant = form.choice('plant', text.plant, { '': text.ownPlant });
  // Its names are long: it has a row of its own.
  plant.root.classList.add('wide');
  const plantName = form.field('plant-name', text.plantName, { keyboard: 'text' });
  const waterFrom = form.choice('water-from', text.waterFrom, text.waterFroms);
  const percent = form.field('plant-water', text.plantWater);
  const fresh = form.field('sample-fresh', text.sampleFresh, MASS);
  const dried = form.field('sample-dried', text.sampleDried, MASS);
  const aboutPlant = make('p', { class: 'quiet' });
  const solventMass = form.field('solvent-mass', text.solventMass, MASS);
  const solventPurity = form.field('solvent-purity', text.solventPurity);
  const pressYield = form.field('press-yield', text.pressYield);
  const fields = make(
    'div',
    {},
    make('div', { class: 'grid' }, plant.root, plantName.root, waterFrom.root, percent.root, fresh.root, dried.root),
    aboutPlant,
    make(
      'div',
      { class: 'grid' },
      form.field('plant-mass', text.plantMass, MASS).root,
      form.field('glycerin', text.glycerin, MASS).root,
      form.field('purity', text.purity).root,
      form.field('added-water', text.addedWater, MASS).root,
      form.choice('solvent', text.solvent, text.solvents).root,
      solventMass.root,
      solventPurity.root,
      form.choice('press', text.press, text.presses).root,
      pressYield.root,
      form.field('evaporation', text.evaporation, MASS).root,
      form.field('temperature', text.temperature, { unit: '°C' }).root,
    ),
  );
  const blended = make('p', { class: 'quiet', hidden: true }, text.blended);
  let plants = 0;
  return {
    root: make(
      'section',
      { class: 'sheet extract-plan', 'aria-label': text.plan },
      make('h3', {}, text.plan),
      fields,
      blended,
      explained('glycerite', 'menstruum'),
    ),
    /** @param {ChoiceView[]} choices */
    showPlants(choices) {
      if (plants === choices.length) return;
      plants = choices.length;
      plant.select.append(...choices.map(({ key, label }) => make('option', { value: key }, label)));
    },
    /** @param {ExtractView} view */
    show(view) {
      const from = form.holds('water-from');
      const own = form.holds('plant') === '';
      show(fields, !view.blended);
      show(blended, view.blended);
      show(plantName.root, own);
      const catalogue = waterFrom.select.querySelector('option');
      if (catalogue) catalogue.disabled = own;
      show(percent.root, from === 'percent');
      show(fresh.root, from === 'weighed');
      show(dried.root, from === 'weighed');
      setText(aboutPlant, view.plant);
      const solvent = form.holds('solvent') !== 'none';
      show(solventMass.root, solvent);
      show(solventPurity.root, solvent);
      show(pressYield.root, form.holds('press') === 'yield');
    },
  };
}
