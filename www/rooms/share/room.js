// @ts-check

// Sharing the open formula, writing it out, earlier versions of it, and the backup of everything.

import { button, make, show } from '../../dom/element.js';
import { go } from '../../router.js';
import { createBackup } from './backup.js';
import { createLink } from './link.js';
import { createVersions } from './versions.js';
import { createWritten } from './written.js';
import { words } from './words.js';

/**
 * @param {HTMLElement} place
 * @param {import('../../session.js').Session} session
 */
export function furnish(place, session) {
  const link = createLink(session);
  const written = createWritten(session);
  const versions = createVersions(session);
  const backup = createBackup(session);
  const none = make('p', { class: 'quiet' }, words.none);
  const formula = make('div', {}, link.root, written.root, versions.root);
  let open = '';
  let name = '';
  session.listen((update) => {
    if (!update.formula) return;
    open = update.formula.id ?? '';
    name = update.formula.name;
  });
  place.setAttribute('aria-labelledby', 'share-title');
  place.append(
    make(
      'div',
      { class: 'share-room' },
      make('h2', { id: 'share-title' }, words.title),
      make(
        'p',
        { class: 'no-print' },
        button(words.back, () => go('formula'), { class: 'plain' }),
      ),
      none,
      formula,
      backup.root,
    ),
  );
  return {
    enter() {
      void backup.enter();
      show(none, open === '');
      show(formula, open !== '');
      if (open === '') return;
      link.show(open);
      written.show(open, name);
      versions.show(open);
    },
    readFile: backup.read,
  };
}
