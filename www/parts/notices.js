// @ts-check

// What the maker should hear once, at the foot of the page; and what stands until it is dealt with, at its head.

import { button, make, setText, show } from '../element.js';
import { words } from '../words.js';

/** Milliseconds a notice stays: long enough to read it and to reach for its button. */
const STAYS = 9000;
const MOST_AT_ONCE = 3;

/** @param {import('../session.js').Session} session */
export function createNotices(session) {
  const root = /** @type {HTMLElement} */ (document.getElementById('notices'));

  /** What the buttons of notices take back. @type {Map<HTMLElement, number>} */
  const undoing = new Map();

  /**
   * @param {string} text
   * @param {number} [change] what it is about, if that can be taken back from here
   */
  function say(text, change) {
    const notice = make('div', { class: 'notice' }, make('p', {}, text));
    const away = () => notice.remove();
    if (change !== undefined) {
      const undo = button(words.undo, () => {
        away();
        session.send({ do: 'undo-act', change });
      });
      undoing.set(undo, change);
      notice.append(undo);
    }
    notice.append(button('×', away, { class: 'plain', 'aria-label': words.close }));
    root.append(notice);
    while (root.children.length > MOST_AT_ONCE) root.firstElementChild?.remove();
    setTimeout(away, STAYS);
  }

  session.listen(({ history, notices = [] }) => {
    for (const notice of notices) say(notice.text, notice.undo);
    if (!history) return;
    // Once something else was done, a notice can no longer take back its own act, and takes back no other.
    for (const [undo, change] of undoing) {
      if (change === history.undoes) continue;
      undo.remove();
      undoing.delete(undo);
    }
  });
  return say;
}

/** @param {import('../session.js').Session} session */
export function createAlerts(session) {
  const root = /** @type {HTMLElement} */ (document.getElementById('alerts'));
  const kept = /** @type {HTMLElement} */ (document.getElementById('kept'));
  const standing = make('div', { class: 'alert stop', role: 'alert', hidden: true });
  const conflicts = make('div', {});
  const unreadable = make('div', {});
  const update = make('div', { class: 'alert note', hidden: true });
  root.append(update, standing, conflicts, unreadable);

  session.listen(({ status }) => {
    if (!status) return;
    const trouble = status.state === 'full' || status.state === 'blocked';
    setText(kept, trouble ? '' : status.text);
    kept.dataset.state = status.state;
    setText(standing, trouble ? status.text : '');
    show(standing, trouble);
    conflicts.replaceChildren(
      ...status.conflicts.map(({ key, text }) =>
        make(
          'div',
          { class: 'alert caution', role: 'alert' },
          make('p', {}, text),
          button(words.alerts.keepBoth, () => session.send({ do: 'keep-both', key })),
          button(words.alerts.takeTheirs, () => session.send({ do: 'take-theirs', key })),
        ),
      ),
    );
    unreadable.replaceChildren(...status.unreadable.map((text) => make('div', { class: 'alert caution' }, make('p', {}, text))));
  });

  return {
    /** @param {() => void} takeOver */
    offerUpdate(takeOver) {
      update.replaceChildren(
        make('p', {}, words.alerts.update),
        button(words.alerts.takeUpdate, takeOver),
        button(words.alerts.later, () => show(update, false), { class: 'plain' }),
      );
      show(update, true);
    },
  };
}

/**
 * Says that the page cannot go on.
 * @param {string} text
 */
export function sayBroken(text) {
  const root = document.getElementById('alerts');
  root?.prepend(
    make('div', { class: 'alert stop', role: 'alert' }, make('p', {}, text), button(words.alerts.reload, () => location.reload())),
  );
}
