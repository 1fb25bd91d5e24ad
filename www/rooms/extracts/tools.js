// @ts-check

// What is done with a pressed extract: verifying it by a reading, adjusting and blending it, and working backwards.

import { button, make, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';
import { askForMaterial } from '../materials/picker.js';
import { explained } from '../terms/explained.js';
import { MASS, VOLUME } from './form.js';
import { createOffer } from './offer.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('./form.js').Form} Form */
/** @typedef {import('../../seam/stillroom.js').ExtractView} ExtractView */

const DEGREES = { unit: '°C' };
const BARE = { unit: '' };

/**
 * @param {Session} session
 * @param {Form} form
 */
export function createTools(session, form) {
  const [verify, adjust, solve] = [
    createVerify(session, form),
    createAdjust(session, form),
    createSolve(session, form),
  ];
  const tools = [verify, adjust, solve];
  return {
    root: make('div', { class: 'extract-tools' }, ...tools.map((tool) => tool.root)),
    verify: verify.root,
    adjust: adjust.root,
    solve: solve.root,
    /** @param {ExtractView} view */
    show(view) {
      for (const tool of tools) tool.show(view);
    },
  };
}

/** @param {string} title @param {...Node} inside */
function fold(title, ...inside) {
  return make('details', { class: 'sheet tool' }, make('summary', {}, make('h3', {}, title)), ...inside);
}

/**
 * @param {Session} session
 * @param {Form} form
 */
function createVerify(session, form) {
  const offer = createOffer(session, 'verify', { class: 'main-act' });
  const floats = make(
    'details',
    {},
    make('summary', {}, text.byHydrometer),
    make(
      'div',
      { class: 'grid' },
      form.field('gravity-value', text.gravityValue, BARE).root,
      form.field('gravity-step', text.gravityStep, BARE).root,
      form.field('calibrated', text.calibrated, DEGREES).root,
    ),
  );
  const root = fold(
    text.verify,
    make(
      'div',
      { class: 'grid' },
      form.choice('optical', text.optical, text.opticals).root,
      form.field('optical-value', text.opticalValue, BARE).root,
      form.field('optical-step', text.opticalStep, BARE).root,
      form.field('reading-temperature', text.readingTemperature, DEGREES).root,
    ),
    floats,
    offer.root,
    explained('brix', 'hydrometer'),
  );
  return {
    root,
    /** @param {ExtractView} view */
    show(view) {
      offer.show(view);
      // What was read is never out of sight.
      if (view.fields.some(({ field, text: read }) => field === 'gravity-value' && read !== '')) floats.open = true;
    },
  };
}

/**
 * @param {Session} session
 * @param {Form} form
 */
function createAdjust(session, form) {
  const adjust = createOffer(session, 'adjust', { class: 'main-act' });
  const evaporated = createOffer(session, 'evaporated');
  const blend = createOffer(session, 'blend');
  const steps = make('ol', { class: 'done' });
  const stepsPart = make('div', {}, make('h4', {}, text.steps), steps);
  const batches = make('ul', { class: 'batches' });
  const others = make('div', { class: 'others' });
  const addMaterial = button(text.addMaterial, () =>
    askForMaterial(session, {
      heading: text.addMaterial,
      onTaken: (material) => form.send(`blend:${material}`, ''),
    }),
  );
  const root = fold(
    text.adjust,
    make(
      'div',
      { class: 'grid' },
      form.field('adjust-target', text.adjustTarget).root,
      form.field('mass-now', text.massNow, MASS).root,
    ),
    adjust.root,
    evaporated.root,
    make('h4', {}, text.blendWith),
    batches,
    make('div', { class: 'acts' }, others, addMaterial),
    blend.root,
    stepsPart,
  );
  return {
    root,
    /** @param {ExtractView} view */
    show(view) {
      keyed(
        batches,
        view.blend,
        ({ key, label }) => createBlended(session, form, key, label),
        ({ key }) => key,
      );
      keyed(
        others,
        view.others,
        ({ key }) => {
          const add = button('', () => form.send(key, ''));
          return { root: add, show: ({ label }) => setText(add, text.addBatch({ name: label })) };
        },
        ({ key }) => key,
      );
      show(stepsPart, view.steps.length > 0);
      keyed(steps, view.steps, (_, at) => createStep(session, at));
      for (const offer of [adjust, evaporated, blend]) offer.show(view);
    },
  };
}

/**
 * Another batch in the blend, and how much of it.
 * @param {Session} session
 * @param {Form} form
 * @param {string} key
 * @param {string} label
 */
function createBlended(session, form, key, label) {
  const field = form.field(key, text.batchMass({ name: label }), MASS);
  const out = button('×', () => session.send({ do: 'remove-from-blend', field: key }), {
    class: 'plain',
    'aria-label': text.leaveOut({ name: label }),
  });
  return {
    root: make('li', {}, field.root, out),
    forget() {
      field.forget();
      form.drop(key);
    },
  };
}

/**
 * Something done after pressing.
 * @param {Session} session
 * @param {number} at
 */
function createStep(session, at) {
  const said = make('span');
  const back = button('×', () => session.send({ do: 'remove-extract-step', step: at }), { class: 'plain' });
  return {
    root: make('li', {}, said, back),
    /** @param {string} step */
    show(step) {
      setText(said, step);
      back.setAttribute('aria-label', text.takeBack({ step }));
    },
  };
}

/**
 * @param {Session} session
 * @param {Form} form
 */
function createSolve(session, form) {
  const offer = createOffer(session, 'solve', { class: 'main-act' });
  const wanted = {
    glycerin: form.field('wanted-glycerin', text.wantedGlycerin),
    activity: form.field('wanted-activity', text.wantedActivity, BARE),
    ratio: form.field('menstruum-per-plant', text.menstruumPerPlant, { unit: 'g/g' }),
    jar: form.field('jar-volume', text.jarVolume, VOLUME),
    headspace: form.field('headspace', text.headspace),
    finished: form.field('finished-volume', text.finishedVolume, VOLUME),
  };
  const sizeHelp = make('p', { class: 'quiet' });
  const root = fold(
    text.solve,
    form.inSight('wanted-by', text.wantedBy, text.wantedBys).root,
    form.choice('wanted-size', text.wantedSize, text.wantedSizes).root,
    sizeHelp,
    make('div', { class: 'grid' }, ...Object.values(wanted).map((field) => field.root)),
    offer.root,
  );
  return {
    root,
    /** @param {ExtractView} view */
    show(view) {
      show(root, !view.blended);
      const held = new Map(view.fields.map((each) => [each.field, each.text]));
      const size = /** @type {keyof typeof text.wantedSizeHelp} */ (held.get('wanted-size') ?? 'plant');
      show(wanted.glycerin.root, held.get('wanted-by') === 'glycerin');
      show(wanted.activity.root, held.get('wanted-by') === 'activity');
      show(wanted.ratio.root, size !== 'glycerin');
      show(wanted.jar.root, size === 'jar');
      show(wanted.headspace.root, size === 'jar');
      show(wanted.finished.root, size === 'finished');
      setText(sizeHelp, text.wantedSizeHelp[size]);
      offer.show(view);
    },
  };
}
