// @ts-check

// The jar: what is really in it, as layers and as constituents, each with the lines that bring it.

import { arrange, make, setText, show } from '../element.js';
import { vessel } from '../parts/vessel.js';
import { inSight } from './rooms.js';
import { words } from '../words.js';

/** @typedef {import('../seam/stillroom.js').ConstituentView} ConstituentView */
/** @typedef {import('../seam/stillroom.js').LayerView} LayerView */
/** @typedef {import('../seam/stillroom.js').TrailView} TrailView */

const text = words.jar;

/** @param {import('../session.js').Session} session */
export function createJar(session) {
  let chosen = '';
  const jar = vessel({ onLayer: choose });
  const legend = make('ol', { class: 'legend' });
  const density = make('p', { class: 'quiet' });
  const unresolved = make('div', {});
  const title = make('h3', {});
  const list = make('ul', { class: 'constituents' });
  const empty = make('p', { class: 'quiet' }, text.empty);
  const root = make(
    'section',
    { class: 'room sheet', 'data-room': 'jar', 'aria-labelledby': 'jar-title' },
    make('h2', { id: 'jar-title' }, text.title),
    empty,
    make('div', { class: 'jar' }, jar.root, legend),
    density,
    unresolved,
    make('div', { class: 'after-jar' }),
    title,
    list,
  );

  /** @type {Map<string, ReturnType<typeof createLegend>>} */
  const legends = new Map();
  /** @type {Map<string, ReturnType<typeof createConstituent>>} */
  const rows = new Map();
  /** @type {LayerView[]} */
  let layers = [];
  /** What is weighed in each line, by its number. @type {Map<number, string>} */
  const names = new Map();

  /** @param {string} layer */
  function choose(layer) {
    chosen = chosen === layer ? '' : layer;
    showChosen();
  }

  function showChosen() {
    if (!layers.some((layer) => layer.layer === chosen)) chosen = '';
    jar.choose(chosen);
    for (const [layer, entry] of legends) entry.choose(layer === chosen);
    setText(title, layers.find((layer) => layer.layer === chosen)?.label ?? text.constituents);
    for (const row of rows.values()) row.narrow(chosen);
  }

  session.listen((update) => {
    for (const line of update.lines ?? []) names.set(line.id, line.name);
    for (const view of update.constituents ?? []) {
      let row = rows.get(view.key);
      if (!row) {
        row = createConstituent(() => session.trailOf(view.key), names);
        rows.set(view.key, row);
      }
      row.show(view);
    }
    if (update.jar) {
      layers = update.jar.layers;
      jar.show(layers, update.jar.description);
      arrange(
        legend,
        layers.map((layer) => {
          let entry = legends.get(layer.layer);
          if (!entry) {
            entry = createLegend(layer.layer, choose);
            legends.set(layer.layer, entry);
          }
          entry.show(layer);
          return entry.root;
        }),
      );
      setText(density, layers.length ? update.jar.density : '');
      show(empty, layers.length === 0);
      unresolved.replaceChildren(...update.jar.unresolved.map((why) => make('p', { class: 'finding stop' }, why)));
    }
    const order = update.constituentOrder;
    if (order) {
      for (const key of rows.keys()) if (!order.includes(key)) rows.delete(key);
      arrange(list, order.flatMap((key) => rows.get(key)?.root ?? []));
    }
    if (update.jar || update.constituents) showChosen();
    // Lines may bring other shares of the same sum, or stand in another order.
    if (update.formula || update.lines || update.constituents) for (const row of rows.values()) row.showTrail();
  }, () => inSight('jar'));

  return root;
}

/**
 * @param {string} layer
 * @param {(layer: string) => void} choose
 */
function createLegend(layer, choose) {
  const label = make('span', {});
  const percent = make('b', { class: 'number' });
  const entry = make(
    'button',
    { type: 'button', 'aria-pressed': 'false', onclick: () => choose(layer) },
    make('i', { 'data-layer': layer }),
    label,
    percent,
  );
  return {
    root: make('li', {}, entry),
    /** @param {LayerView} view */
    show(view) {
      setText(label, view.label);
      setText(percent, `${view.percent}\u00a0%`, true);
    },
    /** @param {boolean} chosen */
    choose(chosen) {
      entry.setAttribute('aria-pressed', String(chosen));
    },
  };
}

/**
 * @param {() => TrailView[]} ask which lines bring it
 * @param {Map<number, string>} names what is weighed in each line
 */
function createConstituent(ask, names) {
  const inci = make('span', { class: 'inci' });
  const percent = make('span', { class: 'number' });
  const swatch = make('i', {});
  const trail = make('ul', { class: 'trail', 'aria-label': text.fedBy });
  const details = make('details', { ontoggle: showTrail }, make('summary', {}, swatch, inci, percent), trail);
  const root = make('li', {}, details);
  let layer = '';

  /** The trail is worked out only of what is open. */
  function showTrail() {
    if (!details.open) return;
    trail.replaceChildren(
      ...ask().map((each) =>
        make('li', {}, make('span', {}, names.get(each.line)), make('span', { class: 'number' }, `${each.percent}\u00a0%`)),
      ),
    );
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
