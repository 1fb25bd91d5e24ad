// @ts-check

// What the maker waits for: a keystroke in a long formula, a search, the shelf, the first opening.

import { loadSeam, measure } from './harness.mjs';

const LINES = 40;
const CONSTITUENTS = 60;
const SHELF = 1000;

/** Local storage of a page, in memory. */
class Storage {
  /** @type {Map<string, string>} */
  texts = new Map();
  get length() {
    return this.texts.size;
  }
  /** @param {number} at */
  key(at) {
    return [...this.texts.keys()][at] ?? null;
  }
  /** @param {string} key */
  getItem(key) {
    return this.texts.get(key) ?? null;
  }
  /** @param {string} key @param {string} text */
  setItem(key, text) {
    this.texts.set(key, text);
  }
  /** @param {string} key */
  removeItem(key) {
    this.texts.delete(key);
  }
}

const storage = new Storage();
// The bindings ask whether the global object is a window before they take its storage.
class Window {
  static [Symbol.hasInstance]() {
    return true;
  }
}
Object.assign(globalThis, { Window, window: globalThis, self: globalThis });
Object.defineProperty(globalThis, 'localStorage', { value: storage, configurable: true });

const seam = await loadSeam();
const reader = /** @type {const} */ ({ decimalMark: 'point' });

// Each opening is a first one: a fresh copy of the seam, whose catalogue is not unpacked yet.
/** @type {(typeof seam)[]} */
const fresh = [];
for (let at = 0; at < 60; at += 1) {
  fresh.push(await loadSeam([], String(at)));
}
measure(
  'open.empty (catalogue, example and first view)',
  () => {
    const first = fresh.pop();
    if (!first) {
      throw new Error('no fresh copy is left');
    }
    new first.Stillroom({ ...reader, keepNothing: true }).showEverything();
  },
  { warmup: 9, iterations: 50 },
);

const session = new seam.Stillroom(reader);
session.showEverything();

/**
 * @param {any} command
 * @returns {string}
 */
function make(command) {
  const made = session.apply(command).answer?.made;
  if (made === undefined) {
    throw new Error(`${command.do} made nothing`);
  }
  return made;
}

// Twenty composites of three simple materials each, ten of two of those, ten of two of these: three levels deep.
const simple = ['oil', 'acid', 'extract', 'sodium', 'alcohol', 'gum', 'butter']
  .flatMap((query) => session.search(query, { classes: [], phases: [] }))
  .filter((hit) => hit.origin === 'catalogue')
  .map((hit) => hit.id);
const distinct = [...new Set(simple)].filter(
  (material) => !session.apply({ do: 'open-material', material }).material?.composite,
);

/**
 * @param {string} name
 * @param {string[]} parts
 */
function composite(name, parts) {
  const material = make({ do: 'new-material', composite: true, name });
  session.apply({ do: 'open-material', material });
  parts.forEach((part, at) => {
    make({ do: 'add-part', material: part });
    if (at > 0) {
      session.apply({ do: 'set-part-amount', part: at, text: `${at * 10}.5` });
    }
  });
  return material;
}
const inner = Array.from({ length: 20 }, (_, at) => composite(`inner ${at}`, distinct.slice(at * 3, at * 3 + 3)));
const middle = Array.from({ length: 10 }, (_, at) => composite(`middle ${at}`, inner.slice(at * 2, at * 2 + 2)));
const outer = Array.from({ length: 10 }, (_, at) => composite(`outer ${at}`, [middle[at], middle[(at + 1) % 10]]));
session.apply({ do: 'close-material' });

make({ do: 'new-formula', basis: 'percent' });
const kinds = /** @type {const} */ (['heated-water', 'heated-oil']);
const phases = kinds.map((kind) => Number(make({ do: 'add-phase', kind })));
const materials = [...outer, ...middle, ...inner].slice(0, LINES);
const lines = materials.map((material, at) => Number(make({ do: 'add-line', phase: phases[at % 2], material })));
lines.forEach((line, at) => {
  session.apply(at === 0 ? { do: 'set-quantum-satis', line } : { do: 'set-amount', line, text: '2.25' });
});
session.apply({ do: 'set-batch-way', way: 'mass' });
session.apply({ do: 'set-batch-mass', text: '500 g' });
session.apply({ do: 'look-at-shelf', looking: false });
const whole = session.showEverything();
const count = whole.constituentOrder?.length ?? 0;
if (whole.lines?.length !== LINES || count < CONSTITUENTS || !whole.formula?.sound) {
  throw new Error(`${whole.lines?.length} lines, ${count} constituents, sound: ${whole.formula?.sound}`);
}

let turn = 0;
measure(
  `edit.amount (${LINES} lines, ${count} constituents, composites three deep)`,
  () => {
    turn += 1;
    const update = session.apply({ do: 'set-amount', line: lines[7], text: turn % 2 ? '2.3' : '2.25' });
    if (!update.lines?.length || !update.constituents?.length) {
      throw new Error('nothing changed');
    }
  },
  { warmup: 500, iterations: 1000 },
);

measure(`check.findings (${LINES} lines, ${count} constituents: composition and every check, nothing shown)`, () => {
  if (session.countFindings(false) < 1) {
    throw new Error('nothing was found');
  }
});
measure('check.cures (the same, and every far-reaching cure tried on a copy)', () => {
  session.countFindings(true);
});

const queries = ['g', 'gl', 'gly', 'glyc', 'glycerni', 'oil', 'sodium be'];
measure('search.keystroke', () => session.search(queries[(turn += 1) % queries.length], { classes: [], phases: [] }));

session.keep();
const kept = [...storage.texts];
const own = kept.filter(([key]) => key.startsWith('stillroom.material.')).map(([, text]) => text);
const [, longest] = kept
  .filter(([key]) => key.startsWith('stillroom.formula.'))
  .sort((a, b) => b[1].length - a[1].length)[0];
// Under another number the check sum would not be right; a record without one is read as one of before there were any.
const record = longest.replace(/,"check":"[0-9a-f]{8}"\}$/, '}');

for (let at = 1; at <= SHELF; at += 1) {
  const id = at.toString(16).padStart(16, '0');
  storage.setItem(`stillroom.formula.${id}`, record.replace(/"id":"[0-9a-f]{16}"/, `"id":"${id}"`));
}
// Keys of a real storage are found by their number at once.
const keys = [...storage.texts.keys()];
storage.key = (/** @type {number} */ at) => keys[at] ?? null;
measure(
  `open.shelf (${SHELF} kept formulas of ${LINES} lines read, those in sight worked out and shown)`,
  () => {
    const opened = new seam.Stillroom(reader);
    const { shelf } = opened.showEverything();
    if ((shelf?.all ?? 0) < SHELF || !shelf?.cards.every((card) => card.sound)) {
      throw new Error('the shelf is not whole');
    }
    opened.free();
  },
  { warmup: 2, iterations: 10 },
);

// A change of a composite deep inside: every formula of the shelf is worked out anew.
const opened = new seam.Stillroom(reader);
opened.apply({ do: 'look-at-shelf', looking: true });
opened.apply({ do: 'open-material', material: inner[0] });
measure(
  `reevaluate.shelf (${SHELF} formulas after a change deep inside)`,
  () => {
    turn += 1;
    opened.apply({ do: 'set-part-amount', part: 1, text: turn % 2 ? '11' : '10.5' });
  },
  { warmup: 2, iterations: 20 },
);

measure(`evaluate (${LINES} lines and ${own.length} own materials from their records)`, () => {
  const { answer, constituents } = seam.evaluate(record, own, {});
  if (answer || (constituents?.length ?? 0) < CONSTITUENTS) {
    throw new Error('the record was not worked out');
  }
});
