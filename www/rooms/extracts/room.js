// @ts-check

// Extracts: planning a glycerite, what to expect of it, whether it keeps, and putting it to use; stock solutions too.

import { button, make, say, setText, show } from '../../dom/element.js';
import { segments } from '../../dom/choice.js';
import { keyed } from '../../dom/list.js';
import { createExpected } from './expected.js';
import { createForm } from './form.js';
import { createKeeping } from './keeping.js';
import { createPlan } from './plan.js';
import { createStock } from './stock.js';
import { createTools } from './tools.js';
import { createUse } from './use.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').ExtractsView} ExtractsView */
/** @typedef {import('../../seam/stillroom.js').ExtractView} ExtractView */
/** @typedef {keyof typeof text.stepNames} Step */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const form = createForm(session);
  const plan = createPlan(form);
  const opened = createOpened(session, form, plan);
  const cards = make('ul', { class: 'extract-cards' });
  const empty = make('p', { class: 'quiet', hidden: true }, text.empty);
  /** @param {'glycerite' | 'solution' | 'alcohol'} kind */
  const begin = (kind) => {
    session.send({ do: 'new-extract', kind });
    opened.focusName();
  };
  place.setAttribute('aria-labelledby', 'extracts-title');
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
    opened.root,
    button(text.example, () => session.send({ do: 'restore-extract-example' }), { class: 'plain' }),
  );

  session.listen(({ extracts, extract, settings }) => {
    if (settings) form.showUnits(settings.massUnit, settings.volumeUnit);
    if (extracts) {
      plan.showPlants(extracts.plants);
      show(empty, extracts.cards.length === 0);
      keyed(
        cards,
        extracts.cards,
        ({ id }) => createCard(session, id),
        ({ id }) => id,
      );
    }
    if (extract) opened.show(extract);
  });
  // Extracts are worked out only while somebody looks at them.
  return {
    enter: () => void session.send({ do: 'look-at-extracts', looking: true }),
    leave: () => void session.send({ do: 'look-at-extracts', looking: false }),
  };
}

/**
 * @param {Session} session
 * @param {string} extract
 */
function createCard(session, extract) {
  const name = make('span', { class: 'card-name' });
  const about = make('small');
  const open = make(
    'button',
    { type: 'button', onclick: () => session.send({ do: 'open-extract', extract }) },
    name,
    about,
  );
  return {
    root: make('li', {}, open),
    /** @param {ExtractsView['cards'][number]} card */
    show(card) {
      if (card.open) open.setAttribute('aria-current', 'true');
      else open.removeAttribute('aria-current');
      setText(name, card.name);
      setText(about, card.about);
    },
  };
}

/**
 * The extract that is open.
 * @param {Session} session
 * @param {import('./form.js').Form} form
 * @param {ReturnType<typeof createPlan>} plan
 */
function createOpened(session, form, plan) {
  let open = '';
  const expected = createExpected();
  const keeps = createKeeping(form);
  const use = createUse(session, form);
  const tools = createTools(session, form);
  const stock = createStock(session, form);
  const name = form.field('name', text.name, { keyboard: 'text', class: 'name-field' });
  const remove = button(text.remove, () => session.send({ do: 'delete-extract', extract: open }), {
    class: 'take-out',
  });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const results = make('div', { class: 'extract-results' }, problem, expected.root, keeps.root);
  tools.root.append(use.root);
  // On a small screen one step at a time is in sight, on a desk all of them.
  const steps = segments({ label: text.step, choices: text.stepNames, onChoice: goTo });
  for (const [part, step] of /** @type {[HTMLElement, Step][]} */ ([
    [plan.root, 'plan'],
    [expected.root, 'plan'],
    [tools.solve, 'plan'],
    [keeps.root, 'keeping'],
    [tools.verify, 'measure'],
    [tools.adjust, 'measure'],
    [use.root, 'measure'],
  ]))
    part.dataset.step = step;
  const glycerite = make('div', { class: 'extract-desk' }, plan.root, results, tools.root);
  const root = make(
    'article',
    { class: 'extract', hidden: true },
    make('div', { class: 'extract-head' }, name.root, remove),
    make('div', { class: 'extract-steps' }, steps.root),
    glycerite,
    stock.root,
  );

  /** @param {Step} step */
  function goTo(step) {
    steps.show(step);
    root.dataset.at = step;
    if (step === 'measure') tools.verify.open = true;
  }
  goTo('plan');

  return {
    root,
    focusName() {
      name.input.focus();
      name.input.select();
    },
    /** @param {ExtractView} view */
    show(view) {
      show(root, view.id !== undefined);
      if (view.id === undefined) return;
      if (open !== view.id) {
        form.clear();
        goTo('plan');
      }
      open = view.id;
      name.show(view.name);
      const isGlycerite = view.kind === 'glycerite';
      show(glycerite, isGlycerite);
      show(steps.root, isGlycerite);
      show(stock.root, !isGlycerite);
      say(problem, view.problem);
      // First the blocks that make fields of their own, then what the fields hold.
      tools.show(view);
      form.show(view);
      plan.show(view);
      expected.show(view);
      keeps.show(view);
      const home = isGlycerite ? use.root : stock.root;
      if (use.inner.parentElement !== home) home.append(use.inner);
      use.show(view);
      stock.show(view);
    },
  };
}
