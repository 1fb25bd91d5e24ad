// @ts-check

// Asks from elsewhere what could take the place of a line. What answers is fetched with the room, which says it if it did not
// come.

import { go } from '../../router.js';

/**
 * @param {import('../../session.js').Session} session
 * @param {number} line
 */
export async function askToSwap(session, line) {
  go('swap');
  await session.swap().catch(console.warn);
  session.send({ do: 'swap-line', line });
}
