// @ts-check

// What a maker waits for who makes it with what is there: the solver at the size of a shelf, and the uses as the page asks them.

import { loadSeam, measure } from './harness.mjs';

const seam = await loadSeam(['desk', 'share', 'whole', 'swap']);
const session = new seam.Stillroom({ decimalMark: 'point', keepNothing: true });
const { lines = [] } = session.showEverything();

// Twenty questions drawn by chance; most have an answer.
const QUESTIONS = 20;
let turn = 0;
let answered = 0;
for (let chance = 1; chance <= QUESTIONS; chance += 1) answered += Number(session.solveByChance(60, 40, chance) >= 0);
if (answered < QUESTIONS / 2) throw new Error(`${answered} of ${QUESTIONS} have an answer`);
measure(
  'rebuild.solve (60 materials of 40 constituents, twenty questions in turn)',
  () => session.solveByChance(60, 40, 1 + (turn++ % QUESTIONS)),
  { warmup: 40, iterations: 200 },
);

session.apply({ do: 'look-at-swap', looking: true });
session.apply({ do: 'choose-swap-use', wanted: 'figure' });
measure(
  'rebuild.figure (the example brought to a figure, with everything before and after)',
  () => {
    turn += 1;
    const { swap } = session.apply({ do: 'set-swap-field', field: 'swap.target', text: turn % 2 ? '9' : '8.5' });
    if (!swap?.version) throw new Error('nothing came of it');
  },
  { warmup: 10, iterations: 50 },
);
measure(
  'rebuild.ways (a line of the example: every material ranked, each way worked out and checked)',
  () => {
    const { swap } = session.apply({ do: 'swap-line', line: lines[turn++ % lines.length]?.id ?? 0 });
    if (!swap) throw new Error('nothing came of it');
  },
  { warmup: 2, iterations: 26 },
);
