// @ts-check

// The fields of the room by their names, filled from the session.

import { setText } from '../../dom/element.js';
import { chooser, segments } from '../../dom/choice.js';
import { Field } from '../../dom/field.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').ExtractView} ExtractView */
/** @typedef {{ root: HTMLElement, show: (text: string) => void, clear?: () => void, unit?: HTMLElement }} Shown */
/** @typedef {ReturnType<typeof createForm>} Form */

/** A unit of the maker's own choice. */
export const MASS = { unit: 'mass' };
export const VOLUME = { unit: 'volume' };

/** @param {Session} session */
export function createForm(session) {
  /** @type {Map<string, Shown>} */
  const shown = new Map();
  /** @type {Map<string, string>} */
  let texts = new Map();
  /** @type {HTMLElement[]} */
  const masses = [];
  /** @type {HTMLElement[]} */
  const volumes = [];
  let [massUnit, volumeUnit] = ['g', 'mL'];
  /** @param {string} field @param {string} typed */
  const send = (field, typed) => session.send({ do: 'set-extract', field, text: typed });
  /** @param {string} name */
  const holds = (name) => texts.get(name) ?? '';
  return {
    send,
    holds,
    /**
     * @param {string} name
     * @param {string} label
     * @param {Partial<import('../../dom/field.js').FieldOptions>} [more] a unit of `mass` or `volume` is the maker's
     */
    field(name, label, { unit = '%', ...more } = {}) {
      const field = new Field({
        field: `extract.${name}`,
        label,
        onText: (typed) => send(name, typed),
        unit: more.keyboard === 'text' ? undefined : unit === 'mass' ? massUnit : unit === 'volume' ? volumeUnit : unit,
        ...more,
      });
      if (field.unit && unit === 'mass') masses.push(field.unit);
      if (field.unit && unit === 'volume') volumes.push(field.unit);
      shown.set(name, { root: field.root, show: (value) => field.show(value), clear: () => field.answer(undefined) });
      return field;
    },
    /**
     * @param {string} name
     * @param {string} label
     * @param {Record<string, string>} choices
     */
    choice(name, label, choices) {
      const made = chooser({ label, choices, onChoice: (value) => send(name, value), field: `extract.${name}` });
      shown.set(name, made);
      return made;
    },
    /**
     * The same with all choices in sight.
     * @param {string} name
     * @param {string} label
     * @param {Record<string, string>} choices
     */
    inSight(name, label, choices) {
      const made = segments({ label, choices, onChoice: (value) => send(name, value) });
      shown.set(name, made);
      return made;
    },
    /** @param {string} name @param {Shown} how */
    add(name, how) {
      shown.set(name, how);
    },
    /** @param {string} name */
    drop(name) {
      shown.delete(name);
    },
    clear() {
      for (const each of shown.values()) each.clear?.();
    },
    /** @param {ExtractView} view */
    show(view) {
      texts = new Map(view.fields.map((each) => [each.field, each.text]));
      for (const [name, held] of texts) shown.get(name)?.show(held);
    },
    /** @param {string} mass @param {string} volume */
    showUnits(mass, volume) {
      [massUnit, volumeUnit] = [mass, volume];
      for (const unit of masses) setText(unit, mass);
      for (const unit of volumes) setText(unit, volume);
    },
  };
}
