// @ts-check

// Ways to do without a line, each with its reasons and with what changes behind it.

import { button, make, say, setText, show } from '../../dom/element.js';
import { remarks } from '../../dom/figures.js';
import { keyed, texts } from '../../dom/list.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').SwapWayView} SwapWayView */

const KINDS = /** @type {const} */ (['same', 'parts', 'other']);

/** @param {Session} session */
export function createWays(session) {
  const none = make('p', { class: 'quiet' }, text.noWays);
  const groups = KINDS.map((kind) => {
    const list = make('ul', { class: 'swap-ways' });
    return { kind, list, root: make('section', { 'data-ways': kind }, make('h3', {}, text.ways[kind]), list) };
  });
  const root = make('div', {}, none, ...groups.map((group) => group.root));
  return {
    root,
    /** @param {SwapWayView[]} views @param {boolean} asked */
    show(views, asked) {
      show(none, asked && views.length === 0);
      for (const group of groups) {
        const own = views.filter((view) => view.kind === group.kind);
        show(group.root, own.length > 0);
        keyed(
          group.list,
          own,
          ({ key }) => createWay(session, key),
          ({ key }) => key,
        );
      }
    },
  };
}

/** @param {Session} session @param {string} way */
function createWay(session, way) {
  const name = make('b');
  const atHand = make('small', { class: 'swap-at-hand' }, text.atHand);
  const takes = make('p');
  const problem = make('p', { class: 'finding caution', hidden: true });
  const findings = make('div');
  const reasons = make('ul', { class: 'remarks' });
  const differences = make('ul', { class: 'remarks' });
  const sources = make('ul', { class: 'swap-sources' });
  const why = make('details', {}, make('summary', {}, text.why), reasons, sources);
  const look = button(text.tryWay, () => session.send({ do: 'choose-way', way }));
  const root = make(
    'li',
    { class: 'swap-way', 'data-way': way },
    make('p', { class: 'swap-way-head' }, name, atHand, look),
    takes,
    differences,
    findings,
    problem,
    why,
  );
  return {
    root,
    /** @param {SwapWayView} view */
    show(view) {
      setText(name, view.name);
      show(atHand, view.atHand);
      say(takes, view.takes);
      say(problem, view.problem);
      show(look, view.problem === '');
      look.setAttribute('aria-pressed', String(view.chosen));
      look.setAttribute('aria-label', `${text.tryWay}: ${view.name}`);
      root.classList.toggle('chosen', view.chosen);
      texts(reasons, 'li', view.reasons);
      texts(differences, 'li', view.differences);
      show(differences, view.differences.length > 0);
      texts(sources, 'li', view.sources);
      remarks(findings, view.findings);
    },
  };
}
