// @ts-check

// Choosing a material: a search as one types, in a dialog over the page.

import { button, freshId, make, setText, show } from '../element.js';
import { words } from '../words.js';

/** @typedef {import('../seam/stillroom.js').MaterialHit} MaterialHit */

/**
 * A list of materials to choose from, by pointer or by arrow keys from its search field.
 * @param {{ onChoice: (hit: MaterialHit) => void, nothing: string }} options
 */
export function hitList({ onChoice, nothing }) {
  const list = make('ul', { class: 'hits' });
  const none = make('p', { class: 'quiet', hidden: true }, nothing);
  return {
    root: make('div', {}, list, none),
    list,
    /** @param {MaterialHit[]} hits */
    show(hits) {
      show(none, hits.length === 0);
      list.replaceChildren(
        ...hits.map((hit) =>
          make(
            'li',
            {},
            make(
              'button',
              { type: 'button', class: 'hit', 'data-material': hit.id, 'data-origin': hit.origin, onclick: () => onChoice(hit) },
              make('span', { class: 'hit-name' }, hit.name),
              make('small', {}, hit.about),
            ),
          ),
        ),
      );
    },
  };
}

/** @param {import('../session.js').Session} session */
export function createPicker(session) {
  /** @type {((material: string) => void) | undefined} */
  let take;
  const searchId = freshId();
  const titleId = freshId();
  const title = make('h2', { id: titleId }, words.picker.title);
  const input = make('input', {
    id: searchId,
    type: 'search',
    autocomplete: 'off',
    spellcheck: 'false',
    placeholder: words.picker.search,
    maxlength: 80,
    oninput: () => find(),
  });
  const hits = hitList({ onChoice: (hit) => choose(hit.id), nothing: words.picker.nothing });
  const dialog = make(
    'dialog',
    { class: 'picker', 'aria-labelledby': titleId },
    make(
      'div',
      { class: 'picker-head' },
      title,
      button(words.close, () => dialog.close(), { class: 'plain' }),
      make('label', { for: searchId, class: 'unseen' }, words.picker.search),
      input,
    ),
    hits.root,
  );
  document.body.append(dialog);
  dialog.addEventListener('keydown', (event) => {
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
    const buttons = [...hits.list.querySelectorAll('button')];
    const at = buttons.indexOf(/** @type {any} */ (document.activeElement));
    const next = event.key === 'ArrowDown' ? buttons[at + 1] : (buttons[at - 1] ?? input);
    next?.focus();
    event.preventDefault();
  });
  input.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    // The key ends here: the button that asked gets the focus back, and would be pressed by it.
    event.preventDefault();
    hits.list.querySelector('button')?.click();
  });

  /** @type {(material: string) => boolean} */
  let allowed = () => true;
  /** Phase of the line it is for. @type {import('../seam/stillroom.js').PhaseKind | undefined} */
  let lineOf;

  function find() {
    hits.show(session.search(input.value, { lineOf }).filter((hit) => allowed(hit.id)));
  }

  /** @param {string} material */
  function choose(material) {
    dialog.close();
    take?.(material);
  }

  /**
   * Asks for a material.
   * @param {string} heading
   * @param {(material: string) => void} onTaken
   * @param {(material: string) => boolean} [onlyIf]
   * @param {import('../seam/stillroom.js').PhaseKind} [phase] of the line it is for
   */
  return function ask(heading, onTaken, onlyIf = () => true, phase = undefined) {
    take = onTaken;
    allowed = onlyIf;
    lineOf = phase;
    setText(title, heading);
    input.value = '';
    find();
    dialog.showModal();
    input.focus();
  };
}
