// @ts-check

// What a reader waits for: a shared formula from its link to everything worked out.

import { readFile } from 'node:fs/promises';
import { loadSeam, measure } from './harness.mjs';

const seam = await loadSeam(['share']);
for (const name of ['example', 'orchard']) {
  const link = (
    await readFile(new URL(`../../crates/exchange/golden/link-1-${name}.txt`, import.meta.url), 'utf8')
  ).trim();
  const lines = seam.readShared(link, {}).update.lines?.length ?? 0;
  measure(`link.read (decoded, resolved and written out, ${lines} lines)`, () => {
    const { error, update } = seam.readShared(link, {});
    if (error !== undefined || update.lines?.length !== lines || lines === 0) {
      throw new Error(error ?? 'nothing was read');
    }
  });
}
