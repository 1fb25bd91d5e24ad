// @ts-check

// The batches on record, and beginning another.

import { button, make, say, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').BatchesView} BatchesView */
/** @typedef {BatchesView['cards'][number]} Card */

/** @param {Session} session */
export function createList(session) {
  const offer = button('', () => session.send({ do: 'begin-batch', formula: undefined }), {
    class: 'main-act begin-batch',
  });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const empty = make('p', { class: 'quiet', hidden: true }, text.empty);
  const question = make('div');
  const cards = make('ul', { class: 'batch-cards' });

  /**
   * A record holds what cannot be made again: it asks first.
   * @param {Card} card
   * @param {HTMLElement} asked where the focus goes back to
   */
  function askToDelete(card, asked) {
    const keep = () => {
      question.replaceChildren();
      asked.focus();
    };
    const remove = () => {
      question.replaceChildren();
      session.send({ do: 'delete-batch', batch: card.id });
    };
    const keepIt = button(text.keepRecord, keep, { class: 'main-act' });
    question.replaceChildren(
      make(
        'div',
        { class: 'leaving', role: 'alertdialog', 'aria-label': text.remove({ name: card.name }) },
        make('p', {}, text.deleteRecord),
        make('div', { class: 'acts' }, keepIt, button(text.deleteIt, remove)),
      ),
    );
    keepIt.focus();
  }

  return {
    root: make(
      'div',
      {},
      make('h2', {}, text.title),
      make('p', { class: 'quiet' }, text.intro),
      make('div', { class: 'acts' }, offer),
      problem,
      empty,
      question,
      cards,
    ),
    /** @param {BatchesView} view */
    show(view) {
      say(offer, view.offer);
      say(problem, view.problem);
      show(empty, view.cards.length === 0);
      keyed(
        cards,
        view.cards,
        () => createCard(session, askToDelete),
        ({ id }) => id,
      );
    },
  };
}

/**
 * @param {Session} session
 * @param {(card: Card, asked: HTMLElement) => void} askToDelete
 */
function createCard(session, askToDelete) {
  /** @type {Card | undefined} */
  let card;
  const name = make('span', { class: 'card-name' });
  const about = make('small');
  const open = make('b');
  const remove = button(
    '×',
    () => {
      if (card?.asks) askToDelete(card, remove);
      else if (card) session.send({ do: 'delete-batch', batch: card.id });
    },
    { class: 'plain' },
  );
  const root = make(
    'li',
    { class: 'batch-card' },
    make(
      'button',
      { type: 'button', onclick: () => card && session.send({ do: 'open-batch', batch: card.id }) },
      name,
      about,
      open,
    ),
    remove,
  );
  return {
    root,
    /** @param {Card} view */
    show(view) {
      card = view;
      root.dataset.running = String(view.running);
      setText(name, view.name);
      setText(about, view.about);
      setText(open, view.running ? text.resume : text.open);
      remove.setAttribute('aria-label', text.remove({ name: view.name }));
    },
  };
}
