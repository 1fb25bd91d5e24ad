// @ts-check

// The page's side of the seam: sends commands, hands out updates, and has what changed kept once it is drawn.

import { language, tableOf } from './dom/language.js';
import { Log } from './log.js';
import { breath, idle } from './moments.js';
import open, { Stillroom, fetchPiece, speak, takeTexts, unpackMaterials } from './seam/stillroom.js';

/** @typedef {import('./seam/stillroom.js').Command} Command */
/** @typedef {import('./seam/stillroom.js').Update} Update */
/** @typedef {import('./seam/stillroom.js').SearchFilter} SearchFilter */
/** @typedef {import('./router.js').Standing} Standing */

/**
 * Hears of what no input should bring about: the seam refused a call, or is broken, which is said once.
 * @typedef {(problem: unknown, broken: boolean) => void} Trouble
 */

/** Milliseconds after which what waits for the page to be idle is done even if it never is. */
const REST_WITHIN = 150;

export class Session {
  /** @type {Stillroom} */
  #seam;
  /** @type {{ hear: (update: Update) => void, where: () => Standing, waiting: Update[], fresh: boolean }[]} */
  #listeners = [];
  /** Whether what stands beside is drawn soon. */
  #besideAsked = false;
  /** @type {Trouble} */
  #onTrouble;
  #log;
  /** How many writings to the log are under way. */
  #committing = 0;
  /** Whether those that ended since it was last said so were all written. */
  #allOnDisk = true;
  #restAsked = false;
  #tellsAnew = false;
  #broken = false;
  /** @type {Promise<void> | undefined} */
  #laying;
  /** @type {Promise<void> | undefined} */
  #growing;
  /** @type {Promise<void> | undefined} */
  #swapping;
  /** @type {() => void} */
  #isComplete = () => {};
  /** Fulfilled once all of the seam is there; to wait for it fetches nothing. @type {Promise<void>} */
  complete = new Promise((resolve) => {
    this.#isComplete = resolve;
  });

  /**
   * @param {Stillroom} seam
   * @param {Log} log
   * @param {Trouble} onTrouble
   */
  constructor(seam, log, onTrouble) {
    this.#seam = seam;
    this.#log = log;
    this.#onTrouble = onTrouble;
    addEventListener('pagehide', () => this.#keep());
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') this.#keep();
    });
    addEventListener('storage', (event) => {
      // Without a key, another page cleared the storage.
      this.send({ do: 'changed-elsewhere', key: event.key ?? '' });
    });
  }

  /**
   * Opens the session on this device.
   * @param {Trouble} onTrouble
   */
  static async open(onTrouble) {
    /** @type {('main' | 'names')[]} */
    const tables = language === 'en' ? ['main'] : ['main', 'names'];
    const [{ log, texts }, said] = await Promise.all([
      Log.open(),
      Promise.all(tables.map((piece) => tableOf(piece))),
      open(),
    ]);
    speak(language);
    tables.forEach((piece, at) => takeTexts(piece, said[at] ?? ''));
    await breath();
    unpackMaterials();
    await breath();
    return new Session(new Stillroom({ decimalMark: decimalMark(), keepNothing: false }, texts), log, onTrouble);
  }

  /**
   * Fetches the desk: what shows a formula in all its lines, and changes it.
   * @returns {Promise<void>} fulfilled once it is there
   */
  desk() {
    this.#laying ??= fetched('desk').then(
      () => void this.act((seam) => seam.deskArrived()),
      (problem) => {
        this.#laying = undefined;
        throw problem;
      },
    );
    return this.#laying;
  }

  /**
   * Fetches what lies beyond the main job.
   * @returns {Promise<void>} fulfilled once it is there
   */
  whole() {
    this.#growing ??= this.#grow().catch((problem) => {
      // Without a network before the first complete visit: the main job goes on, and the next call tries again.
      this.#growing = undefined;
      throw problem;
    });
    return this.#growing;
  }

  /**
   * Fetches what works out how to make it with what one has, after what lies beyond the main job.
   * @returns {Promise<void>} fulfilled once it is there
   */
  swap() {
    this.#swapping ??= this.whole()
      .then(() => Promise.all([tableOf('swap'), fetched('swap')]))
      .then(
        ([said]) => takeTexts('swap', said),
        (problem) => {
          this.#swapping = undefined;
          throw problem;
        },
      );
    return this.#swapping;
  }

  async #grow() {
    /** @type {('share' | 'whole' | 'words')[]} */
    const tables = language === 'en' ? ['share', 'whole'] : ['share', 'whole', 'words'];
    const [said] = await Promise.all([
      Promise.all(tables.map((piece) => tableOf(piece))),
      this.desk(),
      fetched('whole'),
      fetched('share'),
    ]);
    await breath();
    tables.forEach((piece, at) => takeTexts(piece, said[at] ?? ''));
    this.act((seam) => seam.wholeArrived());
    this.#isComplete();
  }

  /**
   * @param {(update: Update) => void} hear
   * @param {() => Standing} [where] what stands beside hears of a change in the frame after, what is out of sight when the
   *   page is at rest
   */
  listen(hear, where = () => 'here') {
    this.#listeners.push({ hear, where, waiting: [], fresh: true });
  }

  /**
   * Acts, and hands out what changed.
   * @param {Command} command
   * @returns {Update}
   */
  send(command) {
    return this.act((seam) => seam.apply(command));
  }

  /** Tells those that listen only now everything there is to show; the others know it. */
  introduce() {
    const update = this.#try(() => this.#seam.showEverything());
    if (!update) return;
    for (const listener of this.#listeners) {
      if (!listener.fresh) continue;
      listener.fresh = false;
      listener.waiting.length = 0;
      listener.hear(update);
    }
    this.#askForRest();
  }

  /** Hands out everything there is to show. */
  showEverything() {
    for (const listener of this.#listeners) listener.fresh = false;
    return this.act((seam) => seam.showEverything());
  }

  /**
   * Materials that answer a query, best first.
   * @param {string} query
   * @param {Partial<SearchFilter>} [filter]
   */
  search(query, { classes = [], phases = [], lineOf } = {}) {
    return this.#try(() => this.#seam.search(query, { classes, phases, lineOf })) ?? [];
  }

  /**
   * Which lines bring a constituent of the jar, and how much.
   * @param {string} constituent
   */
  trailOf(constituent) {
    return this.#try(() => this.#seam.trailOf(constituent)) ?? [];
  }

  /**
   * Reads a table of materials; nothing is taken in yet.
   * @param {Uint8Array} bytes
   */
  readTable(bytes) {
    return this.#try(() => this.#seam.readTable(bytes));
  }

  /**
   * Asks the seam something.
   * @template T
   * @param {(seam: Stillroom) => T} call
   */
  ask(call) {
    return this.#try(() => call(this.#seam));
  }

  writeTable() {
    return this.#try(() => this.#seam.writeTable()) ?? '';
  }

  /**
   * Acts through a call of the seam that is no command, and hands out what changed.
   * @param {(seam: Stillroom) => Update} act
   */
  act(act) {
    return this.#hand(() => act(this.#seam));
  }

  sources() {
    return this.#try(() => this.#seam.sources()) ?? [];
  }

  /**
   * @param {() => Update} ask
   * @returns {Update}
   */
  #hand(ask) {
    const update = this.#try(ask);
    if (!update) return {};
    this.#tell(update);
    this.#commit();
    this.#askForRest();
    return update;
  }

  #askForRest() {
    if (this.#restAsked) return;
    this.#restAsked = true;
    void this.#rest();
  }

  /**
   * @param {Update} update
   */
  #tell(update, everybody = false) {
    for (const { hear, where, waiting } of this.#listeners) {
      waiting.push(update);
      const standing = everybody ? 'here' : where();
      if (standing === 'here') for (const each of waiting.splice(0)) hear(each);
      else if (standing === 'beside') this.#askForBeside();
    }
  }

  /** Where the hand is comes first: what stands beside it is drawn once that is on the screen. */
  #askForBeside() {
    if (this.#besideAsked) return;
    this.#besideAsked = true;
    requestAnimationFrame(() =>
      setTimeout(() => {
        this.#besideAsked = false;
        for (const { hear, where, waiting } of this.#listeners) {
          if (where() !== 'away') for (const each of waiting.splice(0)) hear(each);
        }
      }),
    );
  }

  /** What need not be done before a change is drawn: keeping it, checking it, and drawing what is out of sight. */
  async #rest() {
    await idle(REST_WITHIN);
    this.#keep();
    // What changes from here on has to be kept as well: it asks anew.
    this.#restAsked = false;
    await idle(REST_WITHIN);
    const update = this.#try(() => this.#seam.rest());
    if (update) this.#tell(update, true);
  }

  #keep() {
    if (this.#broken || !this.#seam.hasUnkept()) return;
    const update = this.#try(() => this.#seam.keep());
    if (update) this.#tell(update);
    this.#commit();
  }

  /** Writes what was kept to the log; once it is on the disk, it is said to be kept. */
  #commit() {
    const written = this.#try(() => this.#seam.takeWritten()) ?? [];
    if (written.length === 0) return;
    this.#committing += 1;
    /** @param {boolean} isOnDisk */
    const settle = (isOnDisk) => {
      this.#committing -= 1;
      this.#allOnDisk &&= isOnDisk;
      if (this.#committing > 0) return;
      const update = this.#try(() => this.#seam.committed(this.#allOnDisk));
      this.#allOnDisk = true;
      if (update) this.#tell(update);
    };
    this.#log.write(written).then(
      () => settle(true),
      (problem) => {
        console.warn(problem);
        settle(false);
      },
    );
  }

  /** Forgets what need no longer be replayed. For a moment when nothing else is to be done. */
  tidyLog() {
    this.#log.forget().catch(console.warn);
  }

  /**
   * @template T
   * @param {() => T} call
   * @returns {T | undefined}
   */
  #try(call) {
    if (this.#broken) return undefined;
    try {
      return call();
    } catch (problem) {
      // After a trap, or a stack that ran out, the seam's memory cannot be trusted: nothing more is asked of it or kept. What
      // it refused by an error it could finish, and goes on, unless it cannot even say how things stand.
      this.#broken =
        this.#tellsAnew || !(problem instanceof Error) || /^(Runtime|Range|Internal)Error$/.test(problem.name);
      this.#onTrouble(problem, this.#broken);
      if (!this.#broken) {
        this.#tellsAnew = true;
        this.showEverything();
        this.#tellsAnew = false;
      }
      return undefined;
    }
  }
}

/**
 * A piece of the seam, there.
 * @param {'desk' | 'share' | 'whole' | 'swap'} piece
 * @returns {Promise<void>}
 */
async function fetched(piece) {
  if (!(await new Promise((came) => fetchPiece(piece, came)))) throw new Error(`${piece} could not be fetched`);
}

/** @returns {'point' | 'comma'} */
function decimalMark() {
  const parts = new Intl.NumberFormat().formatToParts(1.5);
  return parts.find((part) => part.type === 'decimal')?.value === ',' ? 'comma' : 'point';
}
