// @ts-check

// A formula on the shelf.

import { button, discloses, make, setText } from '../../dom/element.js';
import { dress } from '../../dom/dress.js';
import { Field } from '../../dom/field.js';
import { icon } from '../../dom/icon.js';
import { go } from '../../router.js';
import { vessel } from '../jar/vessel.js';
import { words } from './words.js';

/** @typedef {import('../../seam/stillroom.js').ShelfCard} ShelfCard */

/**
 * @param {import('../../session.js').Session} session
 * @param {string} formula
 */
export function createCard(session, formula) {
  const jar = vessel();
  const name = make('span', { class: 'card-name' });
  const about = make('small');
  const tags = make('small', { class: 'card-tags', dir: 'auto' });
  const open = make(
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
    make('span', { class: 'card-text' }, name, about, tags),
  );
  let called = '';
  let filed = '';
  /** @type {Field | undefined} */
  let nameField;
  /** @type {Field | undefined} */
  let tagField;
  const tools = make('div', { class: 'tools' });
  const more = make('button', { type: 'button', class: 'icon-act more' }, icon('more'));
  discloses(more, tools, () => {
    void dress(tools, ['style/fields.css']);
    nameField = new Field({
      field: `formula.name:${formula}`,
      label: words.nameOf,
      keyboard: 'text',
      onText: (typed) => session.send({ do: 'rename-formula', formula, name: typed }),
    });
    nameField.show(called);
    tagField = new Field({
      field: `formula.tags:${formula}`,
      label: words.tags,
      keyboard: 'text',
      onText: (text) => session.send({ do: 'tag-formula', formula, text }),
    });
    tagField.show(filed);
    tools.append(
      nameField.root,
      tagField.root,
      button(words.duplicate, () => session.send({ do: 'duplicate-formula', formula })),
      button(words.remove, () => session.send({ do: 'delete-formula', formula }), { class: 'take-out' }),
    );
  });

  return {
    root: make('li', { class: 'card' }, make('div', { class: 'card-row' }, open, more), tools),
    forget() {
      nameField?.forget();
      tagField?.forget();
    },
    /** @param {{ view: ShelfCard, isOpen: boolean }} shown */
    show({ view, isOpen }) {
      setText(name, view.name || '…');
      setText(about, view.about);
      called = view.name;
      nameField?.show(called);
      setText(tags, view.tags);
      filed = view.tags;
      tagField?.show(filed);
      more.setAttribute('aria-label', words.more({ name: view.name }));
      open.toggleAttribute('aria-current', isOpen);
      jar.show(view.layers);
    },
  };
}
