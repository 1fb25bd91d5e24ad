// @ts-check

// The pH of the example: predicted, and a keystroke while all that is said of it is in sight.

import { loadSeam, measure } from './harness.mjs';

const seam = await loadSeam();
const session = new seam.Stillroom({ decimalMark: 'point', keepNothing: true });
session.showEverything();

const MANY = 100;

/** @param {number} times */
function predict(times) {
  const ph = session.predictPh(times);
  if (!(ph > 3 && ph < 11)) throw new Error(`pH ${ph}`);
}

measure('ph.look-up (the example, each constituent looked up and one prediction)', () => predict(1));
measure(`ph.predict (the example, ${MANY} predictions: a hundredth of this is one)`, () => predict(MANY));

session.apply({ do: 'look-at-ph', looking: true });
let turn = 0;
measure(
  'ph.keystroke (a target typed with everything about the pH in sight)',
  () => {
    turn += 1;
    const update = session.apply({ do: 'set-ph-field', field: 'ph.target', text: turn % 2 ? '5' : '5.1' });
    if (!update.answer) throw new Error('nothing was answered');
  },
  { warmup: 20, iterations: 100 },
);
measure(
  'ph.rest (what follows it once it is drawn: amounts, drift, pictures)',
  () => {
    turn += 1;
    session.apply({ do: 'set-ph-field', field: 'ph.target', text: turn % 2 ? '5' : '5.1' });
    if (!session.rest().ph) throw new Error('nothing changed');
  },
  { warmup: 20, iterations: 100 },
);
