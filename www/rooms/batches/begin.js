// @ts-check

import { go } from '../../router.js';

/**
 * Begins to weigh the open formula: what a run needs is fetched, and where it cannot begin the journal says why.
 * @param {import('../../session.js').Session} session
 */
export async function beginWeighing(session) {
  await session.whole().catch(console.warn);
  session.send({ do: 'begin-batch', formula: undefined });
  go('batches');
}
