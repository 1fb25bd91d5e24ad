// @ts-check

// What the maker should hear once, in the line at the head of the page; and what stands below it until it is dealt with.

import { button, make, say as tell, setText, show } from './element.js';
import { keyed } from './list.js';
import { words } from './words.js';

/** Milliseconds a notice stays: long enough to read it and to reach for its button. */
const STAYS = 9000;
/** Milliseconds after which another may take its place. */
const AT_LEAST = 4000;

/**
 * Notices: one thin line at the head of the page, one at a time. What can be taken back is said at once, since the next act
 * ends that; the rest waits until what stands there was read.
 * @param {import('../session.js').Session} session
 */
export function createNotices(session) {
  const root = /** @type {HTMLElement} */ (document.getElementById('notices'));
  /** @type {{ text: string, change: number | undefined }[]} */
  const waiting = [];
  /** The one in sight. @type {{ notice: HTMLElement, said: typeof waiting[number], since: number, undo?: HTMLElement } | undefined} */
  let now;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let timer;

  /**
   * @param {string} text
   * @param {number} [change] what it is about, if that can be taken back from here
   */
  function say(text, change) {
    const said = { text, change };
    const isRead = !now || performance.now() - now.since >= AT_LEAST;
    if (change === undefined && !isRead) waiting.push(said);
    else {
      // What was not read yet comes back.
      if (!isRead && now && now.said.change === undefined) waiting.unshift(now.said);
      put(said);
    }
    plan();
  }

  /** @param {typeof waiting[number] | undefined} said */
  function put(said) {
    now?.notice.remove();
    now = undefined;
    if (!said) return;
    const { text, change } = said;
    const notice = make('div', { class: 'notice', title: text }, make('p', {}, text));
    now = { notice, said, since: performance.now() };
    if (change !== undefined) {
      now.undo = button(
        words.undo,
        () => {
          next();
          session.send({ do: 'undo-act', change });
        },
        { class: 'plain' },
      );
      notice.append(now.undo);
    }
    root.append(notice);
  }

  function next() {
    put(waiting.shift());
    plan();
  }

  function plan() {
    clearTimeout(timer);
    if (!now) return;
    timer = setTimeout(next, now.since + (waiting.length > 0 ? AT_LEAST : STAYS) - performance.now());
  }

  session.listen(({ history, notices = [] }) => {
    for (const notice of notices) say(notice.text, notice.undo);
    // Once something else was done, a notice can no longer take back its own act, and takes back no other.
    if (history && now?.undo && now.said.change !== history.undoes) now.undo.remove();
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
    tell(standing, trouble ? status.text : '');
    keyed(
      conflicts,
      status.conflicts,
      ({ key }) => createConflict(session, key),
      ({ key }) => key,
    );
    keyed(unreadable, status.unreadable, createAlert);
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

function createAlert() {
  const text = make('p');
  return {
    root: make('div', { class: 'alert caution' }, text),
    show: (/** @type {string} */ said) => setText(text, said),
  };
}

/**
 * A record that another page changed as well.
 * @param {import('../session.js').Session} session
 * @param {string} key
 */
function createConflict(session, key) {
  const text = make('p');
  return {
    root: make(
      'div',
      { class: 'alert caution', role: 'alert' },
      text,
      button(words.alerts.keepBoth, () => session.send({ do: 'keep-both', key })),
      button(words.alerts.takeTheirs, () => session.send({ do: 'take-theirs', key })),
    ),
    /** @param {{ text: string }} view */
    show: (view) => setText(text, view.text),
  };
}

/**
 * Says that the page cannot go on.
 * @param {string} text
 */
export function sayBroken(text) {
  const root = document.getElementById('alerts');
  root?.prepend(
    make(
      'div',
      { class: 'alert stop', role: 'alert' },
      make('p', {}, text),
      button(words.alerts.reload, () => location.reload()),
    ),
  );
}
