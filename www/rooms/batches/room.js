// @ts-check

// Batches: the list, the run with one thing at a time in large type, and the record with its journal.

import { button, make, show } from '../../dom/element.js';
import { createJournal } from './journal.js';
import { createList } from './list.js';
import { createRecord } from './record.js';
import { createRun } from './run.js';
import { explained } from '../terms/explained.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const list = createList(session);
  const run = createRun(session);
  const record = createRecord(session);
  const journal = createJournal(session);
  const finished = make(
    'article',
    { class: 'finished', hidden: true },
    make(
      'div',
      { class: 'acts no-print' },
      button(text.toList, () => session.send({ do: 'close-batch' })),
      button(text.print, () => print(), { class: 'main-act' }),
      button(text.takeBackFinish, () => session.send({ do: 'take-back' }), { class: 'plain' }),
    ),
    record.root,
    journal.root,
  );
  finished.append(explained('batch-lot', 'lot', 'deviation', 'yield', 'colour-difference', 'challenge-test'));
  place.append(list.root, finished, run.root);

  session.listen(({ batches, run: view, journal: seen }) => {
    if (batches) list.show(batches);
    if (view) {
      const open = view.id !== undefined;
      show(list.root, !open);
      show(finished, open && view.finished);
      run.show(view);
      if (open && view.finished) record.show(view);
    }
    if (seen) journal.show(seen);
  });

  // Batches are worked out only while somebody looks at them.
  return {
    enter() {
      session.send({ do: 'look-at-batches', looking: true });
      run.look();
    },
    leave() {
      session.send({ do: 'look-at-batches', looking: false });
      run.look();
    },
  };
}
