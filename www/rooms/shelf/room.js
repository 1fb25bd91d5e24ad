// @ts-check

// The shelf: which formulas there are, and beginning another.

import { build } from '../../address.js';
import { button, make, setText, show } from '../../dom/element.js';
import { words as common } from '../../dom/words.js';
import { keyed } from '../../dom/list.js';
import { icon } from '../../dom/icon.js';
import { go } from '../../router.js';
import { createCard } from './card.js';
import { createDue } from './due.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

/** From how many formulas on one searches and sorts them. */
const MANY = 8;
const PASTE = 'M8 5H5v15.5h14V5h-3M8.5 3.5h7v3h-7zM8.5 11h7M8.5 15.5h4.5';
const JAR = 'M6.5 3.5h11V7h-11zM7.5 7L6 9.5v9A2 2 0 0 0 8 20.5h8a2 2 0 0 0 2-2v-9L16.5 7M6 12.5h12M6 16h12';

/**
 * An act as large as what it begins.
 * @param {Parameters<typeof icon>[0]} symbol
 * @param {string} label
 * @param {string} about
 * @param {() => void} act
 * @param {string} [kind]
 */
function large(symbol, label, about, act, kind = 'large') {
  const said = make('span', {}, make('b', {}, label), make('small', {}, about));
  return make('button', { type: 'button', class: kind, onclick: act }, icon(symbol), said, icon('next'));
}

/** Puts the focus into the field that comes first somewhere, instead of on the heading. @param {string} field */
function focusFirst(field) {
  const found = /** @type {HTMLInputElement | null} */ (document.querySelector(field));
  found?.focus();
  return found;
}

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const list = make('ul', { class: 'shelf-cards' });
  const empty = make('p', { class: 'quiet', hidden: true }, words.empty);
  // Whoever scrolls on, or tabs on, sees further.
  const further = button('', () => session.send({ do: 'look-further' }), { class: 'plain', hidden: true });
  const watcher = new IntersectionObserver(
    (entries) => {
      if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
      watcher.unobserve(further);
      session.send({ do: 'look-further' });
    },
    { rootMargin: '600px' },
  );
  /** @param {'percent' | 'grams'} basis */
  const begin = (basis) => {
    session.send({ do: 'new-formula', basis });
    // The first thing to be said of it is its name.
    go('formula', () => focusFirst('[data-field="formula.name"]')?.select());
  };
  const count = make('small');
  const search = make('input', {
    type: 'search',
    autocomplete: 'off',
    spellcheck: 'false',
    maxlength: 80,
    placeholder: words.search,
    'aria-label': words.search,
    oninput: () => session.send({ do: 'search-shelf', text: search.value }),
  });
  const order = make(
    'select',
    {
      'aria-label': words.order,
      onchange: () => session.send({ do: 'sort-shelf', order: order.value === 'name' ? 'name' : 'changed' }),
    },
    ...Object.entries(words.orders).map(([value, label]) => make('option', { value }, label)),
  );
  const tagged = make('div', { class: 'shelf-tags', role: 'group', 'aria-label': words.tagged, hidden: true });
  const finding = make('div', { class: 'finding-row', hidden: true }, search, order);
  const head = make('div', { class: 'shelf-head' }, make('h2', { id: 'shelf-title' }, words.title), count);
  const due = createDue(session);
  const notices = new URL('notices.html', build).href;
  place.setAttribute('aria-labelledby', 'shelf-title');
  place.append(
    make('p', { class: 'what' }, words.what),
    make(
      'div',
      { class: 'three' },
      large('plus', words.newFormula, words.newFormulaAbout, () => begin('percent'), 'large main-act'),
      large(PASTE, words.paste, words.pasteAbout, () => go('paste', () => focusFirst('.recipe-text textarea'))),
      large(JAR, words.example, words.exampleAbout, () => go('examples')),
    ),
    button(words.fromGrams, () => begin('grams'), { class: 'plain' }),
    make('div', { class: 'shelf-desk' }, make('div', {}, head, finding, tagged, empty, list, further), due.root),
    make(
      'p',
      { class: 'small-print' },
      words.caution,
      ' ',
      words.sources,
      ' ',
      make('a', { href: '#about' }, common.rooms.about),
      ' · ',
      make('a', { href: notices }, words.notices),
    ),
  );

  session.listen((update) => {
    if (update.due) due.show(update.due);
    if (!update.shelf) return;
    const { cards, open, more, all, total, tags, tag } = update.shelf;
    setText(count, total);
    show(finding, all > MANY);
    show(tagged, tags.length > 0);
    keyed(
      tagged,
      tags.map((name) => ({ name, chosen: name === tag })),
      ({ name }) => {
        const root = button(name, () => {
          const chosen = root.getAttribute('aria-pressed') === 'true';
          session.send({ do: 'show-tag', tag: chosen ? '' : name });
        });
        return { root, show: ({ chosen }) => root.setAttribute('aria-pressed', String(chosen)) };
      },
      ({ name }) => name,
    );
    show(further, more > 0);
    setText(further, words.further({ more: more }));
    if (more > 0) watcher.observe(further);
    keyed(
      list,
      cards.map((view) => ({ view, isOpen: view.id === open })),
      ({ view }) => createCard(session, view.id),
      ({ view }) => view.id,
    );
    setText(empty, all > 0 ? words.nothingFound : words.empty);
    show(empty, cards.length === 0);
  });
}
