// @ts-check

// Materials: the catalogue, the maker's own, and a card for each.

import { button, freshId, make, setText, show } from '../../dom/element.js';
import { chooser } from '../../dom/choice.js';
import { words as trade } from '../../dom/words.js';
import { explained } from '../terms/explained.js';
import { createCard } from './card.js';
import { createHeld } from './held.js';
import { hitList } from './hits.js';
import { createTables } from './tables.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').SearchFilter} SearchFilter */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const searchId = freshId();
  /** @param {string} material */
  const open = (material) => {
    session.send({ do: 'open-material', material });
    card.root.scrollIntoView({ block: 'nearest' });
  };
  const own = hitList({ onChoice: open, nothing: text.noOwn });
  const found = hitList({ onChoice: open, nothing: text.nothing });
  /** @type {SearchFilter} */
  const wanted = { classes: [], phases: [] };
  const kind = chooser({
    label: text.filterClass,
    choices: { '': text.everyClass, ...text.classes },
    onChoice: (chosen) => {
      wanted.classes = chosen ? [chosen] : [];
      find();
    },
  });
  const phase = chooser({
    label: text.filterPhase,
    choices: { '': text.everyPhase, ...trade.phaseKinds },
    onChoice: (chosen) => {
      wanted.phases = chosen ? [chosen] : [];
      find();
    },
  });
  const search = make('input', {
    id: searchId,
    type: 'search',
    autocomplete: 'off',
    spellcheck: 'false',
    oninput: () => find(),
  });
  // What was looked for stands first; all of the catalogue comes after what the maker has.
  const foundTitle = make('h3');
  const foundPart = make('div', {}, foundTitle, found.root);
  const all = make('div');
  const held = createHeld(open);
  const find = () => {
    const isSought = search.value.trim() !== '' || kind.select.value + phase.select.value !== '';
    setText(foundTitle, isSought ? text.found : text.all);
    if (isSought) head.after(foundPart);
    else all.append(foundPart);
    found.show(session.search(search.value, wanted));
  };
  /** @param {boolean} composite */
  const describe = (composite) => {
    session.send({ do: 'new-material', composite, name: '' });
    card.focusName();
  };
  const card = createCard(session);
  const none = make('p', { class: 'sheet quiet nothing-open' }, text.none);
  const head = make(
    'div',
    { class: 'grid' },
    make('div', { class: 'field wide' }, make('label', { for: searchId }, text.search), search),
    kind.root,
    phase.root,
  );
  const list = make(
    'div',
    { class: 'materials-list' },
    head,
    make('h3', {}, text.held),
    held.root,
    make('h3', {}, text.own),
    make(
      'div',
      { class: 'acts' },
      button(text.newComposite, () => describe(true)),
      button(text.newSimple, () => describe(false)),
    ),
    own.root,
    all,
    explained('inci', 'cas', 'lot', 'blend'),
    createTables(session),
    createSources(session),
  );
  place.append(make('h2', {}, text.title), make('div', { class: 'materials' }, none, card.root, list));

  let everShown = false;
  session.listen((update) => {
    if (update.ownMaterials) {
      own.show(update.ownMaterials);
      if (everShown) find();
    }
    if (update.held) held.show(update.held);
    if (update.material) {
      card.show(update.material);
      show(none, update.material.id === undefined);
    }
  });

  return {
    enter() {
      everShown = true;
      find();
    },
  };
}

/** @param {Session} session */
function createSources(session) {
  const list = make('ol', { class: 'sources' });
  const root = make(
    'details',
    { class: 'scales' },
    make('summary', {}, text.sources),
    make('p', { class: 'quiet' }, text.sourcesHelp),
    list,
  );
  root.addEventListener('toggle', () => {
    if (!root.open || list.childElementCount > 0) return;
    list.append(
      ...session
        .sources()
        .map((source) => make('li', {}, make('span', {}, source.citation), make('small', {}, source.about))),
    );
  });
  return root;
}
