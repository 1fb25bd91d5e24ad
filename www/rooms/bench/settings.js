// @ts-check

// Settings: the scales, the units, and what of Stillroom is on this device.

import { button, make, setText, show } from '../../dom/element.js';
import { chooser } from '../../dom/choice.js';
import { Field } from '../../dom/field.js';
import { LANGUAGES, chosen, speak } from '../../dom/language.js';
import { rest } from '../../rest.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').SettingsView} SettingsView */
/** @typedef {import('../../seam/stillroom.js').SettingName} SettingName */

/** @param {Session} session */
export function createSettings(session) {
  /**
   * @param {SettingName} name
   * @param {string} label
   */
  const field = (name, label, unit = 'g') =>
    new Field({
      field: `setting.${name}`,
      label,
      unit,
      onText: (typed) => session.send({ do: 'set-setting', name, text: typed }),
    });
  /**
   * @param {SettingName} name
   * @param {string} label
   * @param {Record<string, string>} choices
   */
  const choice = (name, label, choices) =>
    chooser({
      label,
      choices,
      field: `setting.${name}`,
      onChoice: (chosen) => session.send({ do: 'set-setting', name, text: chosen }),
    });

  const main = field('main-step', text.mainStep);
  const fineStep = field('fine-step', text.fineStep);
  const fineBelow = field('fine-below', text.fineBelow);
  const tolerance = field('tolerance', text.tolerance, '%');
  const massUnit = choice('mass-unit', text.massUnit, text.massUnits);
  const volumeUnit = choice('volume-unit', text.volumeUnit, text.volumeUnits);
  const temperatureUnit = choice('temperature-unit', text.temperatureUnit, {
    '°C': text.temperatureUnits.C,
    '°F': text.temperatureUnits.F,
  });
  const mark = choice('decimal-mark', text.decimalMark, text.marks);
  const language = chooser({
    label: text.language,
    choices: { '': text.languageOfBrowser, ...LANGUAGES },
    onChoice: speak,
  });
  language.show(chosen() ?? '');
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
      make('div', { class: 'grid' }, massUnit.root, volumeUnit.root, temperatureUnit.root, mark.root, language.root),
      createFetched(),
    ),
    /** @param {SettingsView} view */
    show(view) {
      for (const [each, mass] of /** @type {const} */ ([
        [main, view.mainStep],
        [fineStep, view.fineStep],
        [fineBelow, view.fineBelow],
      ])) {
        // What is no round number in the maker’s unit comes with its own.
        if (each.unit) setText(each.unit, /\d$/.test(mass) ? view.massUnit : '');
        each.show(mass);
      }
      tolerance.show(view.tolerance);
      fine.checked = view.fineScale;
      show(fineFields, view.fineScale);
      massUnit.show(view.massUnit);
      volumeUnit.show(view.volumeUnit);
      temperatureUnit.show(view.temperatureUnit);
      mark.show(view.decimalMark);
    },
  };
}

/** What of Stillroom is on this device, and how large the rest is. */
function createFetched() {
  const about = make('p', { class: 'quiet' });
  const fetchAll = button(text.fetchAll, () => rest.ask());
  rest.listen((state) => {
    const said = text.fetched[state];
    setText(about, typeof said === 'string' ? said : said({ size: rest.kilobytes }));
    show(fetchAll, state === 'unasked');
  });
  return make('div', {}, about, fetchAll);
}
