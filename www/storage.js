// @ts-check

// Storage that lasts: asking for it, and noticing that it did not.

import { words } from './dom/words.js';

/** @typedef {import('./session.js').Session} Session */

/**
 * Says, in two places that a browser clears apart, that this device kept work: an empty database, and a text beside the
 * records.
 */
const MARKER = 'stillroom-kept-work';

/**
 * Asks the browser not to clear what is kept when room gets short, once the first work of the maker's own is kept: before,
 * there is nothing to lose, and some browsers ask the person, who should then know what for. Says what the maker should
 * know about the storage of this device.
 * @param {Session} session
 * @param {(text: string) => void} say
 */
export function watchStorage(session, say) {
  void session.complete.then(() => {
    for (const remark of session.ask((seam) => seam.storageRemarks()) ?? []) say(remark);
  });
  void wasCleared().then((cleared) => {
    if (cleared) say(words.alerts.cleared);
  });
  let hasWorked = false;
  let asked = false;
  session.listen(({ status, history }) => {
    hasWorked ||= history?.undo !== undefined;
    if (asked || !hasWorked || status?.state !== 'kept') return;
    asked = true;
    void mark();
    if (navigator.storage?.persist)
      void navigator.storage.persisted().then((lasting) => lasting || navigator.storage.persist());
  });
}

/** Whether the records are gone although this device kept work before. */
async function wasCleared() {
  try {
    const before = await indexedDB.databases?.();
    return Boolean(before?.some(({ name }) => name === MARKER)) && localStorage.getItem(MARKER) === null;
  } catch {
    // A browser that allows no storage at all is reported by the session.
    return false;
  }
}

async function mark() {
  try {
    localStorage.setItem(MARKER, 'yes');
    indexedDB.open(MARKER).onsuccess = (event) => /** @type {IDBOpenDBRequest} */ (event.target).result.close();
  } catch (problem) {
    console.warn(problem);
  }
}
