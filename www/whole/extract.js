// @ts-check

// Extracts: planning a glycerite, what to expect of it, whether it keeps, and putting it to use; stock solutions too.

import { arrange, button, draw, freshId, make, setText, show } from '../element.js';
import { Field, chooser, segments } from '../field.js';
import { dress } from './look.js';
import { extractWords as text } from './words-extract.js';

/** @typedef {import('../session.js').Session} Session */
/** @typedef {import('../seam/stillroom.js').ExtractView} ExtractView */
/** @typedef {import('../seam/stillroom.js').ExtractOffer} ExtractOffer */
/** @typedef {import('../seam/stillroom.js').FigureView} FigureView */
/** @typedef {import('../seam/stillroom.js').ChoiceView} ChoiceView */
/** @typedef {{ root: HTMLElement, show: (text: string) => void, clear?: () => void, unit?: HTMLElement }} Shown */

/**
 * @param {Session} session
 * @param {{ ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 * @param {HTMLElement} place
 */
export function createExtracts(session, page, place) {
  const form = createForm(session);
  const plan = createPlan(form);
  const expected = createExpected();
  const keeps = createKeeping(form);
  const use = createUse(session, form);
  const tools = createTools(session, form, page);
  const stock = createStock(session, form, page);
  const cards = make('ul', { class: 'extract-cards' });
  const empty = make('p', { class: 'quiet', hidden: true }, text.empty);
  const name = form.field('name', text.name, { keyboard: 'text', class: 'name-field' });
  let open = '';
  const remove = button(text.remove, () => session.send({ do: 'delete-extract', extract: open }), { class: 'take-out' });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const glycerite = make('div', { class: 'extract-desk' }, plan.root, make('div', { class: 'extract-results' }, problem, expected.root, keeps.root, use.root), tools.root);
  const opened = make('article', { class: 'extract', hidden: true }, make('div', { class: 'extract-head' }, name.root, remove), glycerite, stock.root);
  /** @param {'glycerite' | 'solution' | 'alcohol'} kind */
  const begin = (kind) => {
    session.send({ do: 'new-extract', kind });
    name.input?.focus();
    name.input?.select();
  };
  dress([place], 'extract');
  place.append(
    make('h2', { id: 'extracts-title' }, text.title),
    make('p', { class: 'quiet' }, text.intro),
    make(
      'div',
      { class: 'acts' },
      button(text.newGlycerite, () => begin('glycerite'), { class: 'main-act' }),
      button(text.newSolution, () => begin('solution')),
      button(text.newAlcohol, () => begin('alcohol')),
    ),
    empty,
    cards,
    opened,
    button(text.example, () => session.send({ do: 'restore-extract-example' }), { class: 'plain' }),
  );

  session.listen(({ extracts, extract, settings }) => {
    if (settings) form.showUnits(settings.massUnit, settings.volumeUnit);
    if (extracts) {
      plan.showPlants(extracts.plants);
      show(empty, extracts.cards.length === 0);
      cards.replaceChildren(
        ...extracts.cards.map((card) =>
          make(
            'li',
            {},
            make(
              'button',
              { type: 'button', 'aria-current': card.open && 'true', onclick: () => session.send({ do: 'open-extract', extract: card.id }) },
              make('span', { class: 'card-name' }, card.name),
              make('small', {}, card.about),
            ),
          ),
        ),
      );
    }
    if (extract) {
      show(opened, extract.id !== undefined);
      if (extract.id === undefined) return;
      if (open !== extract.id) form.clear();
      open = extract.id;
      name.show(extract.name);
      const isGlycerite = extract.kind === 'glycerite';
      show(glycerite, isGlycerite);
      show(stock.root, !isGlycerite);
      setText(problem, extract.problem);
      show(problem, extract.problem !== '');
      // First the blocks that make fields of their own, then what the fields hold.
      tools.show(extract);
      form.show(extract);
      plan.show(extract);
      expected.show(extract);
      keeps.show(extract);
      (isGlycerite ? use.root : stock.root).append(use.inner);
      use.show(extract);
      stock.show(extract);
    }
  });
  return {
    enter() {
      // The seam that a first visit has knows no extracts: the whole one has to hear it again, unless one has left.
      if (document.body.dataset.room === 'extracts') session.send({ do: 'look-at-extracts', looking: true });
    },
  };
}

/**
 * The fields of the room by their names, filled from the session.
 * @param {Session} session
 */
function createForm(session) {
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
     * @param {Partial<import('../field.js').FieldOptions>} [more] a unit of `mass` or `volume` is the maker's
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

/** @typedef {ReturnType<typeof createForm>} Form */

const MASS = { unit: 'mass' };

/** @param {Form} form */
function createPlan(form) {
  const plant = form.choice('plant', text.plant, { '': text.ownPlant });
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
    root: make('section', { class: 'sheet extract-plan', 'aria-label': text.plan }, make('h3', {}, text.plan), fields, blended),
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

/** Figures, each with its arithmetic and source behind it. */
function createFigures() {
  const list = make('div', { class: 'figures' });
  /** @type {ReturnType<typeof createFigure>[]} */
  const rows = [];
  return {
    root: list,
    /** @param {FigureView[]} figures */
    show(figures) {
      rows.length = Math.min(rows.length, figures.length);
      figures.forEach((figure, at) => {
        rows[at] ??= createFigure();
        rows[at].show(figure);
      });
      arrange(list, rows.map((row) => row.root));
    },
  };
}

function createFigure() {
  const label = make('span', {});
  const value = make('b', { class: 'number' });
  const range = make('small', {});
  const how = make('p', {});
  const source = make('small', {});
  return {
    root: make('details', { class: 'figure' }, make('summary', {}, label, value, range), how, source),
    /** @param {FigureView} view */
    show(view) {
      setText(label, view.label);
      setText(value, view.value, true);
      setText(range, view.range);
      setText(how, view.how);
      setText(source, view.source);
    },
  };
}

function createExpected() {
  const parts = createFigures();
  const figures = createFigures();
  const root = make('section', { class: 'sheet', 'aria-label': text.expected }, make('h3', {}, text.expected), parts.root, figures.root, make('p', { class: 'quiet' }, text.figuresHelp));
  return {
    root,
    /** @param {ExtractView} view */
    show(view) {
      parts.show(view.parts);
      figures.show(view.figures);
      show(root, view.parts.length > 0);
    },
  };
}

/** @param {Form} form */
function createKeeping(form) {
  const picture = draw('svg', { viewBox: '0 0 360 470', class: 'keep-scale', role: 'img' });
  const verdict = make('p', { class: 'verdict' });
  const useBy = make('p', { class: 'use-by' });
  const remarks = make('ul', { class: 'remarks' });
  const multiply = createOrganisms(text.multiply);
  const heldBack = createOrganisms(text.heldBack);
  const finding = make('div', { class: 'finding' }, verdict, useBy);
  const root = make(
    'section',
    { class: 'sheet', 'aria-label': text.keeps },
    make('h3', {}, text.keeps),
    finding,
    picture,
    make('div', { class: 'grid' }, form.field('ph', text.ph, { unit: '' }).root, form.inSight('preserved', text.preserved, text.preserveds).root),
    remarks,
    multiply.root,
    heldBack.root,
  );
  return {
    root,
    /** @param {ExtractView} view */
    show({ keeping, scale }) {
      show(root, keeping !== undefined);
      if (!keeping || !scale) return;
      setText(verdict, keeping.verdict);
      setText(useBy, keeping.useBy);
      finding.className = `finding ${keeping.tone}`;
      remarks.replaceChildren(...keeping.remarks.map((each) => make('li', {}, each)));
      multiply.show(keeping.multiply);
      heldBack.show(keeping.heldBack);
      picture.setAttribute('aria-label', scale.description);
      /** @param {number} at */
      const place = (at) => `${at}%`;
      // Places come ready from the session as percent of this inner drawing's height.
      picture.replaceChildren(
        draw('text', { x: 84, y: 14, class: 'end' }, new Text(text.pure)),
        draw('text', { x: 84, y: 466, class: 'end' }, new Text(text.water)),
        draw(
          'svg',
          { x: 0, y: 24, width: 360, height: 420, overflow: 'visible' },
          draw('rect', { x: 74, y: 0, width: 20, height: '100%', rx: 3, class: 'stem' }),
          draw('rect', { x: 74, y: place(scale.top), width: 20, height: place(scale.height), class: 'band' }),
          ...scale.ticks.map((at) => draw('line', { x1: 86, x2: 94, y1: place(at), y2: place(at), class: 'tick' })),
          ...scale.percents.map((mark) => draw('text', { x: 68, y: place(mark.at), dy: 4, class: 'percent' }, new Text(mark.label))),
          ...scale.marks.flatMap((mark) => [
            draw('line', { x1: 74, x2: 112, y1: place(mark.at), y2: place(mark.at), class: mark.criterion ? 'mark criterion' : 'mark' }),
            draw('text', { x: 116, y: place(mark.at), dy: 4, class: mark.criterion ? 'criterion' : '' }, new Text(mark.label)),
          ]),
          draw(
            'svg',
            { x: 0, y: place(scale.here.at), overflow: 'visible' },
            draw('path', { d: 'M73 0l-12-8v16z', class: 'here' }),
            draw('text', { x: 58, y: 5, class: 'here' }, new Text(scale.here.label)),
          ),
        ),
      );
    },
  };
}

/** @param {string} title */
function createOrganisms(title) {
  const summary = make('summary', {});
  const list = make('dl', { class: 'organisms' });
  return {
    root: make('details', { class: 'scales' }, summary, list),
    /** @param {ChoiceView[]} organisms */
    show(organisms) {
      setText(summary, `${title}: ${organisms.length}`);
      list.replaceChildren(...organisms.flatMap(({ key, label }) => [make('dt', {}, key), make('dd', {}, label)]));
    },
  };
}

/**
 * @param {Session} session
 * @param {ExtractOffer} offer
 * @param {Record<string, string>} [properties]
 */
function createOffer(session, offer, properties = {}) {
  const lines = make('ul', { class: 'offer-lines' });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const act = button('', () => session.send({ do: 'take-extract-offer', offer }), properties);
  const root = make('div', { class: 'offer', 'aria-live': 'polite' }, lines, problem, act);
  return {
    root,
    /** @param {ExtractView} view */
    show({ offers }) {
      const view = offers.find((each) => each.offer === offer);
      show(root, view !== undefined);
      if (!view) return;
      lines.replaceChildren(...view.lines.map((line) => make('li', {}, line)));
      setText(problem, view.problem);
      show(problem, view.problem !== '');
      setText(act, view.label);
      show(act, view.label !== '');
    },
  };
}

/**
 * @param {Session} session
 * @param {Form} form
 */
function createUse(session, form) {
  const dateId = freshId();
  const date = make('input', { id: dateId, type: 'date', class: 'date', onchange: () => form.send('made-on', date.value) });
  const dateField = make('div', { class: 'field' }, make('label', { for: dateId }, text.madeOn), date);
  form.add('made-on', {
    root: dateField,
    show: (value) => {
      if (date.value !== value) date.value = value;
    },
  });
  const shelve = createOffer(session, 'shelve', { class: 'main-act' });
  const use = createOffer(session, 'use');
  const percent = form.field('use-percent', text.usePercent);
  const rows = make('tbody', {});
  const about = make('p', { class: 'quiet' });
  const table = make('table', { class: 'compared' }, make('thead', {}, make('tr', {}, make('th', {}, text.constituent), make('th', {}, text.with), make('th', {}, text.without))), rows);
  const inner = make(
    'div',
    {},
    make('h3', {}, text.use),
    make(
      'div',
      { class: 'grid' },
      dateField,
      form.field('lot', text.lot, { keyboard: 'text' }).root,
      form.field('note', text.note, { keyboard: 'text', class: 'wide' }).root,
    ),
    shelve.root,
    make('div', { class: 'row' }, percent.root, use.root),
    about,
    table,
  );
  return {
    root: make('section', { class: 'sheet', 'aria-label': text.use }, inner),
    inner,
    /** @param {ExtractView} view */
    show(view) {
      shelve.show(view);
      use.show(view);
      setText(about, view.compared);
      show(table, view.comparison.length > 0);
      rows.replaceChildren(
        ...view.comparison.map((row) =>
          make('tr', {}, make('th', {}, row.inci), make('td', { class: 'number' }, row.with), make('td', { class: 'number' }, row.without)),
        ),
      );
    },
  };
}

/**
 * Verifying, adjusting, blending, working backwards.
 * @param {Session} session
 * @param {Form} form
 * @param {{ ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 */
function createTools(session, form, page) {
  const degrees = { unit: '°C' };
  const none = { unit: '' };
  const offers = /** @type {const} */ ({
    verify: createOffer(session, 'verify', { class: 'main-act' }),
    adjust: createOffer(session, 'adjust', { class: 'main-act' }),
    evaporated: createOffer(session, 'evaporated'),
    blend: createOffer(session, 'blend'),
    solve: createOffer(session, 'solve', { class: 'main-act' }),
  });
  const steps = make('ol', { class: 'done' });
  const stepsPart = make('div', {}, make('h4', {}, text.steps), steps);
  const batches = make('ul', { class: 'batches' });
  const others = make('div', { class: 'acts' });
  const addMaterial = button(text.addMaterial, () => page.ask(text.addMaterial, (material) => form.send(`blend:${material}`, '')));
  const wanted = {
    glycerin: form.field('wanted-glycerin', text.wantedGlycerin),
    activity: form.field('wanted-activity', text.wantedActivity, none),
    ratio: form.field('menstruum-per-plant', text.menstruumPerPlant, { unit: 'g/g' }),
    jar: form.field('jar-volume', text.jarVolume, { unit: 'volume' }),
    headspace: form.field('headspace', text.headspace),
    finished: form.field('finished-volume', text.finishedVolume, { unit: 'volume' }),
  };
  const sizeHelp = make('p', { class: 'quiet' });
  /** @param {string} title @param {...Node} inside */
  const tool = (title, ...inside) => make('details', { class: 'sheet tool' }, make('summary', {}, make('h3', {}, title)), ...inside);
  const solve = tool(
    text.solve,
    form.inSight('wanted-by', text.wantedBy, text.wantedBys).root,
    form.choice('wanted-size', text.wantedSize, text.wantedSizes).root,
    sizeHelp,
    make('div', { class: 'grid' }, ...Object.values(wanted).map((field) => field.root)),
    offers.solve.root,
  );
  const verify = tool(
    text.verify,
    make(
      'div',
      { class: 'grid' },
      form.choice('optical', text.optical, text.opticals).root,
      form.field('optical-value', text.opticalValue, none).root,
      form.field('optical-step', text.opticalStep, none).root,
      form.field('reading-temperature', text.readingTemperature, degrees).root,
      form.field('gravity-value', text.gravityValue, none).root,
      form.field('gravity-step', text.gravityStep, none).root,
      form.field('calibrated', text.calibrated, degrees).root,
    ),
    offers.verify.root,
  );
  const adjust = tool(
    text.adjust,
    make('div', { class: 'grid' }, form.field('adjust-target', text.adjustTarget).root, form.field('mass-now', text.massNow, MASS).root),
    offers.adjust.root,
    offers.evaporated.root,
    make('h4', {}, text.blendWith),
    batches,
    others,
    offers.blend.root,
    stepsPart,
  );
  /** @type {Map<string, { root: HTMLElement, field: Field }>} */
  const rows = new Map();

  return {
    root: make('div', { class: 'extract-tools' }, verify, adjust, solve),
    /** @param {ExtractView} view */
    show(view) {
      const now = new Set(view.blend.map((batch) => batch.key));
      for (const [key, row] of rows) {
        if (now.has(key)) continue;
        row.field.forget();
        form.drop(key);
        rows.delete(key);
      }
      for (const { key, label } of view.blend) {
        if (rows.has(key)) continue;
        const field = form.field(key, `${text.batchMass} ${label}`, MASS);
        const out = button('×', () => session.send({ do: 'remove-from-blend', field: key }), { class: 'plain', 'aria-label': `${text.leaveOut} ${label}` });
        rows.set(key, { root: make('li', {}, field.root, out), field });
      }
      arrange(batches, [...rows.values()].map((row) => row.root));
      others.replaceChildren(...view.others.map(({ key, label }) => button(`${text.addBatch} ${label}`, () => form.send(key, ''))), addMaterial);
      show(stepsPart, view.steps.length > 0);
      steps.replaceChildren(
        ...view.steps.map((step, at) =>
          make('li', {}, make('span', {}, step), button('×', () => session.send({ do: 'remove-extract-step', step: at }), { class: 'plain', 'aria-label': `${text.takeBack}: ${step}` })),
        ),
      );
      show(solve, !view.blended);
      for (const offer of Object.values(offers)) offer.show(view);
      const held = new Map(view.fields.map((each) => [each.field, each.text]));
      const size = /** @type {keyof typeof text.wantedSizeHelp} */ (held.get('wanted-size') ?? 'plant');
      show(wanted.glycerin.root, held.get('wanted-by') === 'glycerin');
      show(wanted.activity.root, held.get('wanted-by') === 'activity');
      show(wanted.ratio.root, size !== 'glycerin');
      show(wanted.jar.root, size === 'jar');
      show(wanted.headspace.root, size === 'jar');
      show(wanted.finished.root, size === 'finished');
      setText(sizeHelp, text.wantedSizeHelp[size]);
    },
  };
}

/**
 * Stock solutions and diluted alcohol.
 * @param {Session} session
 * @param {Form} form
 * @param {{ ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 */
function createStock(session, form, page) {
  /** @param {string} name @param {string} label */
  const material = (name, label) => {
    const choose = button(text.choose, () => page.ask(label, (id) => form.send(name, id)), { class: 'chosen-material' });
    const root = make('div', { class: 'field' }, make('small', {}, label), choose);
    choose.dataset.field = `extract.${name}`;
    form.add(name, {
      root,
      show: (held) => {
        setText(choose, held || text.choose);
        choose.setAttribute('aria-label', `${label}: ${held || text.choose}`);
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
