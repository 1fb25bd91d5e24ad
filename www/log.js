// @ts-check

// What was written last, where it is on the disk at once: a browser puts its local storage there seconds later, and one
// that is killed takes those seconds along. The session replays it when it opens.

/** @typedef {{ key: string, revision: string, text: string, at: number }} Entry */

const DATABASE = 'stillroom-log';
const STORE = 'records';
/** Milliseconds after which a browser has long put its local storage on the disk. */
const FORGET_AFTER = 24 * 60 * 60 * 1000;
/** Milliseconds to wait for a database that does not answer: without it the page opens all the same. */
const WAIT = 1500;

export class Log {
  /** @type {IDBDatabase | undefined} */
  #database;

  /** @param {IDBDatabase | undefined} database */
  constructor(database) {
    this.#database = database;
    // Another page wants it deleted or changed: it is not held back.
    if (database) database.onversionchange = () => this.#close();
  }

  /** The log of this device, and what it holds: key, revision and text of each record. */
  static async open() {
    try {
      const log = new Log(await within(WAIT, openDatabase()));
      return { log, texts: await within(WAIT, log.#read()) };
    } catch (problem) {
      console.warn(problem);
      return { log: new Log(undefined), texts: [] };
    }
  }

  /**
   * Writes records, all of them or none.
   * @param {string[]} texts key, revision and text of each
   * @returns {Promise<void>} fulfilled once they are on the disk
   */
  async write(texts) {
    const database = this.#database;
    if (!database) throw new Error('there is no log');
    await done(database, 'readwrite', (store) => {
      const at = Date.now();
      for (let next = 0; next < texts.length; next += 3) {
        const [key, revision, text] = texts.slice(next, next + 3);
        store.put({ key, revision, text, at });
      }
    });
  }

  async #read() {
    const database = this.#database;
    if (!database) return [];
    /** @type {string[]} */
    const texts = [];
    await done(database, 'readonly', (store) => {
      const request = store.getAll();
      request.onsuccess = () => {
        for (const { key, revision, text } of /** @type {Entry[]} */ (request.result)) texts.push(key, revision, text);
      };
    });
    return texts;
  }

  /** Forgets what the browser's own storage has had for long. */
  async forget() {
    const database = this.#database;
    if (!database) return;
    await done(database, 'readwrite', (store) => {
      const request = store.openCursor();
      request.onsuccess = () => {
        const cursor = request.result;
        if (!cursor) return;
        if (Date.now() - cursor.value.at > FORGET_AFTER) cursor.delete();
        cursor.continue();
      };
    });
  }

  #close() {
    this.#database?.close();
    this.#database = undefined;
  }
}

/** @returns {Promise<IDBDatabase>} */
function openDatabase() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'key' });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('another page holds the log'));
  });
}

/**
 * A transaction, from its beginning to its end on the disk.
 * @param {IDBDatabase} database
 * @param {IDBTransactionMode} mode
 * @param {(store: IDBObjectStore) => void} act
 * @returns {Promise<void>}
 */
function done(database, mode, act) {
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(STORE, mode, { durability: 'strict' });
    transaction.oncomplete = () => resolve();
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error);
    act(transaction.objectStore(STORE));
  });
}

/**
 * @template T
 * @param {number} milliseconds
 * @param {Promise<T>} promise
 * @returns {Promise<T>}
 */
function within(milliseconds, promise) {
  return Promise.race([
    promise,
    new Promise((_, reject) => {
      setTimeout(() => reject(new Error('the log does not answer')), milliseconds);
    }),
  ]);
}
