// @ts-check

// Moments at which the page goes on: work that takes long is done in slices, with room for a hand between them.

/** Milliseconds after which what waits for the page to be idle goes on even if it never is. */
const AT_THE_LATEST = 2000;

/**
 * Fulfilled once the page has nothing else to do.
 * @param {number} [timeout] milliseconds after which it is fulfilled even so
 * @returns {Promise<void>}
 */
export function idle(timeout = AT_THE_LATEST) {
  return new Promise((resolve) => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(() => resolve(), { timeout });
    else setTimeout(resolve);
  });
}

/** Fulfilled in a task of its own: what was done so far can be drawn, and a hand be heard. @returns {Promise<void>} */
export function breath() {
  const { scheduler } = /** @type {{ scheduler?: { yield?: () => Promise<void> } }} */ (globalThis);
  return scheduler?.yield?.() ?? new Promise((resolve) => setTimeout(resolve));
}
