// @ts-check

// What the maker has of a material: price, stock, lot, and what they measured of it.

import { make } from '../../dom/element.js';
import { Field } from '../../dom/field.js';
import { texts } from '../../dom/list.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').HoldingField} HoldingField */
/** @typedef {import('../../seam/stillroom.js').HoldingView} HoldingView */
/** @typedef {import('../../dom/field.js').FieldOptions} FieldOptions */

/**
 * What the maker has of the open material.
 * @param {Session} session
 * @param {() => string} material
 */
export function createHolding(session, material) {
  /**
   * @param {HoldingField} field
   * @param {string} label
   * @param {Partial<FieldOptions>} [more]
   */
  const field = (field, label, more = {}) =>
    new Field({
      field: `holding.${field}`,
      label,
      onText: (typed) => {
        // With no material open there is nothing to note anything about.
        if (material()) session.send({ do: 'set-holding', material: material(), field, text: typed });
      },
      ...more,
    });
  const price = field('price', text.price);
  const currency = field('currency', text.currency, { keyboard: 'text' });
  const pack = field('pack', text.pack);
  const shipping = field('shipping', text.shipping);
  const stock = field('stock', text.stock);
  const lot = field('lot', text.lot, { keyboard: 'text' });
  const expiry = field('expiry', text.expiry, { keyboard: 'text' });
  expiry.input.setAttribute('type', 'date');
  const density = field('density', text.ownDensity, { unit: 'g/mL' });
  const usual = field('usual', text.ownUsual, { keyboard: 'text' });
  const note = field('note', text.ownNote, { keyboard: 'text', long: true, class: 'wide' });
  const remarks = make('div', {});
  const all = { price, currency, pack, shipping, stock, lot, expiry, density, usual, note };
  const first = [stock, lot, expiry];
  return {
    root: make(
      'section',
      { class: 'holding' },
      make('h4', {}, text.holding),
      remarks,
      make('div', { class: 'grid' }, ...first.map((each) => each.root)),
      make(
        'details',
        { class: 'scales' },
        make('summary', {}, text.holdingMore),
        make(
          'div',
          { class: 'grid' },
          ...[price, currency, pack, shipping, density, usual, note].map((each) => each.root),
        ),
      ),
    ),
    /** @param {HoldingView} view */
    show(view) {
      for (const [name, each] of Object.entries(all)) each.show(view[/** @type {keyof typeof all} */ (name)]);
      texts(remarks, 'p', view.remarks, { class: 'quiet' });
    },
  };
}
