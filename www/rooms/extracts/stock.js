// @ts-check

// Stock solutions and diluted alcohol.

import { button, make, setText, show } from '../../dom/element.js';
import { askForMaterial } from '../materials/picker.js';
import { explained } from '../terms/explained.js';
import { MASS } from './form.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('./form.js').Form} Form */
/** @typedef {import('../../seam/stillroom.js').ExtractView} ExtractView */

/**
 * @param {Session} session
 * @param {Form} form
 */
export function createStock(session, form) {
  /** @param {string} name @param {string} label */
  const material = (name, label) => {
    const choose = button(
      text.choose,
      () => askForMaterial(session, { heading: label, onTaken: (id) => form.send(name, id) }),
      {
        class: 'chosen-material',
      },
    );
    const root = make('div', { class: 'field' }, make('small', {}, label), choose);
    choose.dataset.field = `extract.${name}`;
    form.add(name, {
      root,
      show: (held) => {
        setText(choose, held || text.choose);
        choose.setAttribute('aria-label', text.chosen({ label, name: held || text.choose }));
      },
    });
    return root;
  };
  const solution = make(
    'div',
    {},
    make('h3', {}, text.solution),
    make(
      'div',
      { class: 'grid' },
      material('substance', text.substance),
      material('solvent-material', text.solventMaterial),
      material('preservative-material', text.preservativeMaterial),
      form.field('strength', text.strength).root,
      form.field('substance-purity', text.substancePurity).root,
      form.field('preservative', text.preservative).root,
      form.field('total', text.total, MASS).root,
      form.field('wanted-percent', text.wantedPercent).root,
      form.field('batch', text.batch, MASS).root,
    ),
    explained('stock-solution'),
  );
  const alcohol = make(
    'div',
    {},
    make('h3', {}, text.alcohol),
    make(
      'div',
      { class: 'grid' },
      form.field('strong', text.strong).root,
      form.field('weak', text.weak).root,
      form.field('target', text.target).root,
      form.field('alcohol-volume', text.alcoholVolume, { unit: 'volume' }).root,
      form.choice('alcohol-of', text.alcoholOf, text.alcoholOfs).root,
    ),
  );
  return {
    root: make('section', { class: 'sheet extract-stock', hidden: true }, solution, alcohol),
    /** @param {ExtractView} view */
    show(view) {
      show(solution, view.kind === 'solution');
      show(alcohol, view.kind === 'alcohol');
    },
  };
}
