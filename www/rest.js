// @ts-check

// What is fetched beyond the first view: when the page is idle, or, where the browser asks to save data, when somebody asks
// for it.

import { language } from './dom/language.js';
import { keepLanguage, registerOffline } from './offline.js';

/**
 * How things stand: `here` once everything is on this device and works without a network, `coming` while it is fetched
 * unasked, `unasked` where it waits until somebody asks.
 * @typedef {'here' | 'coming' | 'unasked'} State
 */

const connection = /** @type {{ saveData?: boolean } | undefined} */ (Reflect.get(navigator, 'connection'));
const isKept = () => Boolean(navigator.serviceWorker?.controller);

class Rest {
  /** @type {State} */
  #state = isKept() ? 'here' : connection?.saveData ? 'unasked' : 'coming';
  /** @type {((state: State) => void)[]} */
  #listeners = [];
  /** @type {() => Promise<void>} */
  #bring = async () => {};

  /** Kilobytes of it, as a host sends them; the build writes them into the page. */
  get kilobytes() {
    return document.querySelector('meta[name="rest"]')?.getAttribute('content') ?? '';
  }

  /** @param {(state: State) => void} hear hears how things stand, now and whenever that changes */
  listen(hear) {
    this.#listeners.push(hear);
    hear(this.#state);
  }

  /**
   * Begins to fetch it, unless the browser asks to save data.
   * @param {() => Promise<void>} bring
   */
  begin(bring) {
    this.#bring = bring;
    if (this.#state !== 'unasked') void bring();
  }

  /** Somebody asks for all of it. */
  ask() {
    this.#become('coming');
    void this.#bring();
  }

  /**
   * Keeps every file for use without a network.
   * @param {Parameters<typeof registerOffline>[0]} events
   */
  keep({ onReady, ...events }) {
    // The first language is kept with everything else.
    if (language !== 'en') void keepLanguage(language);
    return registerOffline({
      ...events,
      onReady: () => {
        this.#become('here');
        onReady?.();
      },
    });
  }

  /** @param {State} state */
  #become(state) {
    this.#state = state;
    for (const hear of this.#listeners) hear(state);
  }
}

export const rest = new Rest();
