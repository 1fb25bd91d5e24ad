// @ts-check

// A formula that was shared by link, to read: never kept before the reader says so.

import { button, make } from '../element.js';
import { createSheet } from '../embed/sheet.js';
import { drawComparison } from './share.js';
import { words } from './words-share.js';

/** @typedef {import('../session.js').Session} Session */

const text = words.reading;

/**
 * Furnishes the room.
 * @param {Session} session
 * @param {{ go: (room: string) => void }} page
 */
export function createReading(session, page) {
  const place = make('div', { class: 'reading-room' });
  const room = make('section', { class: 'room', 'data-room': 'reading', 'aria-labelledby': 'reading-title' }, place);

  /** @param {...(Node | undefined)} children */
  const furnish = (...children) => place.replaceChildren(...children.filter((child) => child !== undefined));

  return {
    room,
    /** Reads the formula of the address. */
    enter() {
      const link = location.hash;
      const sheet = createSheet({ read: ({ batch }) => session.ask((seam) => seam.readLink(link, batch)), print: () => print() });
      const view = sheet.show();
      if (!view) return;
      const title = make('h2', { id: 'reading-title', tabindex: -1 }, view.error === undefined ? text.title : text.bad);
      if (view.error !== undefined) {
        furnish(title, make('div', { class: 'standing stop', role: 'alert' }, make('p', {}, view.error)), button(text.toShelf, () => page.go('shelf'), { class: 'main-act' }));
        return;
      }
      const mine = view.update.formula?.id ?? '';
      const keep = button(text.keep, () => {
        if (session.send({ do: 'keep-copy', link }).answer?.made) page.go('formula');
      }, { class: 'main-act' });
      const open = button(text.open, () => {
        session.send({ do: 'open-formula', formula: mine });
        page.go('formula');
      });
      furnish(
        title,
        make('div', { class: 'standing no-print' }, make('p', {}, view.standing === 'new' ? text.intro : text[view.standing])),
        make(
          'div',
          { class: 'acts no-print' },
          view.standing === 'same' ? undefined : keep,
          view.standing === 'new' ? undefined : open,
          button(text.close, () => page.go('shelf')),
        ),
        view.comparison &&
          make('details', { class: 'no-print' }, make('summary', {}, text.compare), drawComparison(view.comparison, words.compare.ours, words.compare.theirs)),
        sheet.root,
      );
    },
  };
}
