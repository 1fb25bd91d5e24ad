// @ts-check

// What is in a backup file, and what to do with what reads differently here.

import { button, make, say, setText, show } from '../../dom/element.js';
import { chooser } from '../../dom/choice.js';
import { keyed } from '../../dom/list.js';
import { words } from './words.js';

/** @typedef {import('../../seam/stillroom.js').BackupView} BackupView */
/** @typedef {ReturnType<typeof createPreview>} Preview */

const text = words.backup;

/**
 * @param {() => void} take
 * @param {() => void} forget
 */
export function createPreview(take, forget) {
  const summary = make('p');
  const photos = make('p');
  const items = make('ul', { class: 'backup-items' });
  const differing = chooser({
    label: text.differing,
    choices: { both: text.both, theirs: text.theirs },
    onChoice: () => {},
  });
  const leave = () => {
    forget();
    show(root, false);
  };
  const root = make(
    'div',
    { hidden: true },
    make('h4', { tabindex: -1 }, text.preview),
    summary,
    photos,
    items,
    differing.root,
    make('div', { class: 'acts' }, button(text.take, take, { class: 'main-act' }), button(text.cancel, leave)),
  );
  /** Photos of the file that are to be put on this device. @type {string[]} */
  let wanted = [];

  return {
    root,
    photos: () => wanted,
    /** What becomes of what reads differently here. @returns {'theirs' | 'both'} */
    differing: () => (differing.select.value === 'theirs' ? 'theirs' : 'both'),
    /** @param {BackupView} view */
    show(view) {
      show(root, view.error === undefined);
      setText(summary, view.summary);
      say(photos, view.photos);
      wanted = view.newPhotos;
      show(
        differing.root,
        view.items.some((item) => item.fate === 'differs'),
      );
      keyed(items, view.items, createItem);
    },
  };
}

function createItem() {
  const name = make('span', { dir: 'auto' });
  const about = make('small');
  const root = make('li', {}, name, about);
  return {
    root,
    /** @param {BackupView['items'][number]} item */
    show(item) {
      root.dataset.fate = item.fate;
      setText(name, item.name ? text.item({ kind: item.kind, name: item.name }) : item.kind);
      setText(about, item.text || words.fates[item.fate]);
    },
  };
}
