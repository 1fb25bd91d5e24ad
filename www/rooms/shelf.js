// @ts-check

// The shelf: which formulas there are, and beginning another.

import { arrange, button, make, setText, show } from '../element.js';
import { Field } from '../field.js';
import { vessel } from '../parts/vessel.js';
import { words } from '../words.js';

/** @typedef {import('../seam/stillroom.js').ShelfCard} ShelfCard */

/**
 * @param {import('../session.js').Session} session
 * @param {(room: string) => void} go
 */
export function createShelf(session, go) {
  const text = words.shelf;
  const list = make('ul', { class: 'shelf-cards' });
  const empty = make('p', { class: 'quiet', hidden: true }, text.empty);
  // Whoever scrolls on, or tabs on, sees further.
  const further = button('', () => session.send({ do: 'look-further' }), { class: 'plain', hidden: true });
  const watcher = new IntersectionObserver((entries) => {
    if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
    watcher.unobserve(further);
    session.send({ do: 'look-further' });
  }, { rootMargin: '600px' });
  const example = button(text.example, () => {
    session.send({ do: 'restore-example' });
    go('formula');
  }, { class: 'plain' });
  const root = make(
    'section',
    { class: 'room', 'data-room': 'shelf', 'aria-labelledby': 'shelf-title' },
    make('h2', { id: 'shelf-title' }, text.title),
    make(
      'div',
      { class: 'acts' },
      button(text.newFormula, () => begin('percent'), { class: 'main-act' }),
      button(text.fromGrams, () => begin('grams')),
      button(text.materials, () => go('materials'), { class: 'on-phone' }),
      button(words.rooms.extracts, () => go('extracts'), { class: 'on-phone' }),
      button(words.rooms.batches, () => go('batches'), { class: 'on-phone' }),
    ),
    empty,
    list,
    further,
    make('p', { class: 'small-print' }, text.caution, ' ', text.sources),
    example,
  );

  /** @param {'percent' | 'grams'} basis */
  function begin(basis) {
    session.send({ do: 'new-formula', basis });
    go('formula');
  }

  /** @type {Map<string, ReturnType<typeof createCard>>} */
  const cards = new Map();

  session.listen((update) => {
    if (!update.shelf) return;
    const { cards: views, open, more } = update.shelf;
    show(further, more > 0);
    setText(further, text.further(more));
    if (more > 0) watcher.observe(further);
    const ids = new Set(views.map((view) => view.id));
    for (const [id, card] of cards) {
      if (!ids.has(id)) {
        card.forget();
        cards.delete(id);
      }
    }
    const shown = views.map((view) => {
      let card = cards.get(view.id);
      if (!card) {
        card = createCard(session, view.id, go);
        cards.set(view.id, card);
      }
      card.show(view, view.id === open);
      return card.root;
    });
    arrange(list, shown);
    show(empty, views.length === 0);
  });

  return root;
}

/**
 * @param {import('../session.js').Session} session
 * @param {string} formula
 * @param {(room: string) => void} go
 */
function createCard(session, formula, go) {
  const text = words.shelf;
  const jar = vessel();
  const name = make('span', { class: 'card-name' });
  const about = make('small', {});
  const openButton = make(
    'button',
    {
      type: 'button',
      class: 'card-open',
      onclick: () => {
        session.send({ do: 'open-formula', formula });
        go('formula');
      },
    },
    jar.root,
    make('span', { class: 'card-text' }, name, about),
  );
  const nameField = new Field({
    field: `formula.name:${formula}`,
    label: text.nameOf,
    keyboard: 'text',
    onText: (typed) => session.send({ do: 'rename-formula', formula, name: typed }),
  });
  const tools = make(
    'div',
    { class: 'tools', hidden: true },
    nameField.root,
    button(text.duplicate, () => session.send({ do: 'duplicate-formula', formula })),
    button(text.remove, () => session.send({ do: 'delete-formula', formula }), { class: 'take-out' }),
  );
  const more = button('⋯', () => {
    const opened = more.getAttribute('aria-expanded') !== 'true';
    more.setAttribute('aria-expanded', String(opened));
    show(tools, opened);
  }, { class: 'more', 'aria-expanded': 'false' });

  return {
    root: make('li', { class: 'card' }, make('div', { class: 'card-row' }, openButton, more), tools),
    forget: () => nameField.forget(),
    /**
     * @param {ShelfCard} view
     * @param {boolean} isOpen
     */
    show(view, isOpen) {
      setText(name, view.name || '…');
      setText(about, view.about);
      nameField.show(view.name);
      more.setAttribute('aria-label', `${text.more} ${view.name}`);
      openButton.toggleAttribute('aria-current', isOpen);
      jar.show(view.layers, '');
      jar.root.setAttribute('aria-hidden', 'true');
    },
  };
}
