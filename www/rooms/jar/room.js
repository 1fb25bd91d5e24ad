// @ts-check

// The jar: what is really in it, as layers and as constituents, each with the lines that bring it.

import { arrange, make, setText, show } from '../../dom/element.js';
import { byKey, keyed, texts } from '../../dom/list.js';
import { standing } from '../../router.js';
import { explained } from '../terms/explained.js';
import { createGlass } from './glass.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').ConstituentView} ConstituentView */
/** @typedef {import('../../seam/stillroom.js').FindingView} FindingView */
/** @typedef {import('../../seam/stillroom.js').LayerView} LayerView */
/** @typedef {import('../../seam/stillroom.js').TrailView} TrailView */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  let chosen = '';
  const glass = createGlass(choose);
  const density = make('p', { class: 'quiet' });
  const unresolved = make('div');
  const title = make('h3');
  const list = make('ul', { class: 'constituents' });
  const empty = make('p', { class: 'quiet' }, text.empty);
  place.setAttribute('aria-labelledby', 'jar-title');
  place.append(
    make('h2', { id: 'jar-title' }, text.title),
    empty,
    density,
    make('div', { class: 'jar' }, glass.root),
    unresolved,
    title,
    list,
    explained('constituent', 'inci', 'humectant', 'active-matter'),
  );

  /** @type {LayerView[]} */
  let layers = [];
  let description = '';
  /** How serious the worst is that was found of a layer. @type {Map<string, string>} */
  const worst = new Map();
  /** In which layer each line is. @type {Map<number, string>} */
  const layerOf = new Map();
  /** What is weighed in each line, by its number. @type {Map<number, string>} */
  const names = new Map();
  const rows = byKey((/** @type {string} */ key) => createConstituent(() => session.trailOf(key), names));

  /** @param {FindingView[]} findings */
  function grade(findings) {
    worst.clear();
    for (const { severity, lines } of findings) {
      if (severity === 'note') continue;
      for (const line of lines) {
        const layer = layerOf.get(line) ?? '';
        if (worst.get(layer) !== 'stop') worst.set(layer, severity);
      }
    }
  }

  /** @param {string} layer */
  function choose(layer) {
    chosen = chosen === layer ? '' : layer;
    showChosen();
  }

  function showChosen() {
    if (!layers.some((layer) => layer.layer === chosen)) chosen = '';
    glass.show(layers, description, chosen, worst);
    setText(title, layers.find((layer) => layer.layer === chosen)?.label ?? text.constituents);
    for (const row of rows.all()) row.narrow(chosen);
  }

  session.listen(
    (update) => {
      for (const line of update.lines ?? []) {
        names.set(line.id, line.name);
        layerOf.set(line.id, line.layer);
      }
      for (const view of update.constituents ?? []) rows.of(view.key).show(view);
      if (update.jar) {
        layers = update.jar.layers;
        ({ description } = update.jar);
        setText(density, layers.length ? update.jar.density : '');
        show(empty, layers.length === 0);
        texts(unresolved, 'p', update.jar.unresolved, { class: 'finding stop' });
      }
      const order = update.constituentOrder;
      if (order) {
        rows.keep(order);
        arrange(
          list,
          order.flatMap((key) => rows.get(key)?.root ?? []),
        );
      }
      if (update.findings && !update.findings.waiting) grade(update.findings.items);
      if (update.jar || update.constituents || update.findings) showChosen();
      // Lines may bring other shares of the same sum, or stand in another order.
      if (update.formula || update.lines || update.constituents) for (const row of rows.all()) row.showTrail();
    },
    () => standing('jar'),
  );
}

/**
 * @param {() => TrailView[]} ask which lines bring it
 * @param {Map<number, string>} names what is weighed in each line
 */
function createConstituent(ask, names) {
  const inci = make('span', { class: 'inci' });
  const percent = make('span', { class: 'number' });
  const swatch = make('span', { class: 'bead' });
  const trail = make('ul', { class: 'trail', 'aria-label': text.fedBy });
  const details = make('details', { ontoggle: showTrail }, make('summary', {}, swatch, inci, percent), trail);
  const root = make('li', {}, details);
  let layer = '';

  /** The trail is worked out only of what is open. */
  function showTrail() {
    if (!details.open) return;
    keyed(trail, ask(), () => {
      const line = make('span');
      const share = make('span', { class: 'number' });
      return {
        root: make('li', {}, line, share),
        show(each) {
          setText(line, names.get(each.line) ?? '');
          setText(share, `${each.percent}\u00a0%`);
        },
      };
    });
  }

  return {
    root,
    showTrail,
    /** @param {ConstituentView} view */
    show(view) {
      layer = view.layer;
      swatch.dataset.layer = layer;
      setText(inci, view.inci);
      setText(percent, `${view.percent}\u00a0%`, true);
    },
    /** @param {string} chosen */
    narrow(chosen) {
      show(root, !chosen || chosen === layer);
      if (chosen) details.open = chosen === layer;
    },
  };
}
