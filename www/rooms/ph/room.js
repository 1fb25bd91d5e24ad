// @ts-check

// The pH of the open formula: what it comes to, what brings it to a target, how it drifts, and pictures of it.

import { createDescribedFields } from '../../dom/described.js';
import { make, say, setText, show } from '../../dom/element.js';
import { Field } from '../../dom/field.js';
import { createFigures, remarks } from '../../dom/figures.js';
import { keyed, texts } from '../../dom/list.js';
import { createPhOffer } from './offer.js';
import { drawPlot } from './plot.js';
import { explained } from '../terms/explained.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').PhView} PhView */
/** @typedef {import('../../seam/stillroom.js').DriftView} DriftView */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const target = new Field({
    field: 'formula.ph',
    label: text.target,
    class: 'short',
    onText: (typed) => session.send({ do: 'set-target-ph', text: typed }),
  });
  const measured = new Field({
    field: 'formula.measured-ph',
    label: text.measured,
    class: 'short',
    onText: (typed) => session.send({ do: 'set-measured-ph', text: typed }),
  });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const counts = make('p', { class: 'ph-counts', role: 'status' });
  const predicted = createFigures('ph-predicted');
  const rests = make('ul', { class: 'remarks' });
  const deciders = createFigures();
  const unknown = createFigures();
  const free = createFigures();
  const capacity = createFigures();
  const drifts = make('ul', { class: 'drifts' });
  const offers = new Map(
    /** @type {const} */ (['set', 'buffer', 'neutralise']).map((offer) => [
      offer,
      createPhOffer(session, offer, text.offers[offer]),
    ]),
  );
  const plots = make('div', { class: 'plots' });
  const species = createDescribedFields((field, text) => session.send({ do: 'set-ph-field', field, text }));
  const block = (/** @type {string} */ title, /** @type {Element[]} */ ...parts) =>
    make('section', { class: 'ph-block' }, make('h3', {}, title), ...parts);
  const decides = block(text.decides, deciders.root);
  const notKnown = block(text.unknown, unknown.root);
  const freeAcid = block(text.free, free.root);
  const drift = block(text.drift, capacity.root, drifts);
  const seen = block(text.plots, species.root, plots);
  const body = make(
    'div',
    { class: 'ph-desk', hidden: true },
    make('div', {}, counts, predicted.root, rests, decides, notKnown, ...[...offers.values()].map(({ root }) => root)),
    make('div', {}, seen, freeAcid, drift),
  );
  place.setAttribute('aria-labelledby', 'ph-title');
  place.append(
    make('h2', { id: 'ph-title' }, text.title),
    make('p', { class: 'quiet' }, text.intro),
    make('div', { class: 'row' }, target.root, measured.root),
    make(
      'p',
      { class: 'acts' },
      make('a', { href: '#formula' }, text.toFormula),
      ' ',
      make('a', { href: '#findings' }, text.toFindings),
    ),
    problem,
    body,
    explained('buffer', 'buffer-capacity', 'pka', 'undissociated', 'free-acid', 'titration', 'temperature-coefficient'),
  );

  session.listen(({ ph }) => {
    if (ph) showPh(ph);
  });

  /** @param {PhView} view */
  function showPh(view) {
    target.show(view.target);
    measured.show(view.measured);
    say(problem, view.problem);
    show(body, view.predicted !== undefined);
    if (!view.predicted) return;
    setText(counts, view.counts);
    predicted.show([view.predicted]);
    texts(rests, 'li', view.rests);
    deciders.show(view.deciders);
    show(decides, view.deciders.length > 0);
    unknown.show(view.unknown);
    show(notKnown, view.unknown.length > 0);
    for (const [name, offer] of offers) offer.show(view.offers.find((each) => each.offer === name));
    free.show(view.freeAcids);
    show(freeAcid, view.freeAcids.length > 0);
    capacity.show(view.capacity ? [view.capacity] : []);
    keyed(drifts, view.drifts, createDrift);
    show(drift, view.drifts.length > 0);
    species.show(view.species ? [view.species] : []);
    plots.replaceChildren(...view.plots.map(drawPlot));
    show(seen, view.plots.length > 0);
  }

  // The pH is worked out only while somebody looks at it.
  return {
    enter: () => void session.send({ do: 'look-at-ph', looking: true }),
    leave: () => void session.send({ do: 'look-at-ph', looking: false }),
  };
}

function createDrift() {
  const label = make('span');
  const value = make('b', { class: 'number' });
  const changes = make('div');
  return {
    root: make('li', {}, make('p', { class: 'drift-head' }, label, ' ', value), changes),
    /** @param {DriftView} view */
    show(view) {
      setText(label, view.label);
      setText(value, view.value);
      remarks(changes, view.changes);
    },
  };
}
