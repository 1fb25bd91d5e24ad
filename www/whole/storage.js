// @ts-check

// Storage that the browser does not clear when room gets short.

/** @typedef {import('../session.js').Session} Session */

/**
 * Asks for it once the first work of the maker's own is kept: before, there is nothing to lose, and some browsers ask the
 * person, who should then know what for.
 * @param {Session} session
 */
export function askToLast(session) {
  if (!navigator.storage?.persist) return;
  let asked = false;
  session.listen(({ status, history }) => {
    if (history?.undo !== undefined) hasWorked = true;
    if (asked || !hasWorked || status?.state !== 'kept') return;
    asked = true;
    void navigator.storage.persisted().then((lasting) => lasting || navigator.storage.persist());
  });
  let hasWorked = false;
}
