// @ts-check

// The seam as a page meets it: each built form through its generated bindings.

import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { readBuild } from './built-site.js';

const manifest = await readFile(new URL('../../Cargo.toml', import.meta.url), 'utf8');
const version = /^version = "(.+)"$/m.exec(manifest)?.[1];

for (const form of ['seam', 'whole']) {
  test(`the built form “${form}” opens on a formula, and refuses what is no command without a change`, async ({ page }) => {
    const build = await readBuild();
    await page.goto('./icons/icon.svg');
    const seen = await page.evaluate(async (folder) => {
      const seam = await import(`${location.origin}/${folder}/stillroom.js`);
      await seam.default();
      const session = new seam.Stillroom({ decimalMark: 'comma', keepNothing: true });
      const before = JSON.stringify(session.showEverything());
      const refused = [{ do: 'no such thing' }, { do: 'set-amount' }, { do: 'set-amount', line: {}, text: 7 }, {}, [], null, 7].map((command) => {
        try {
          session.apply(command);
          return 'taken';
        } catch (problem) {
          // A trap would leave memory that nobody may trust.
          return problem instanceof WebAssembly.RuntimeError ? 'trapped' : 'refused';
        }
      });
      return { version: seam.version(), cards: JSON.parse(before).shelf.cards.length, refused, same: JSON.stringify(session.showEverything()) === before, kept: localStorage.length };
    }, `v-${build.version}/${form}`);
    expect(seen.version).toBe(version);
    expect(seen.cards).toBeGreaterThan(0);
    expect(new Set(seen.refused)).toEqual(new Set(['refused']));
    expect(seen.same, 'what is refused changes nothing').toBe(true);
    expect(seen.kept, 'a page that only shows keeps nothing').toBe(0);
  });
}
