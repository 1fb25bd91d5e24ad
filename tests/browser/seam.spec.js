// @ts-check

// The seam as a page meets it, through its generated bindings: before anything but the main job was fetched, and with all
// of it.

import { expect, test } from '@playwright/test';
import { readFile } from 'node:fs/promises';
import { readBuild } from './built-site.js';

const manifest = await readFile(new URL('../../Cargo.toml', import.meta.url), 'utf8');
const version = /^version = "(.+)"$/m.exec(manifest)?.[1];

for (const pieces of [[], ['share'], ['desk'], ['desk', 'share', 'whole'], ['desk', 'share', 'whole', 'swap']]) {
  test(`the built seam with ${pieces.join(' and ') || 'the main job'} opens on a formula, and refuses what is no command without a change`, async ({
    page,
  }) => {
    const build = await readBuild();
    await page.goto('./icons/icon.svg');
    const seen = await page.evaluate(
      async ([folder, ...pieces]) => {
        const seam = await import(`${location.origin}/${folder}/seam/stillroom.js`);
        await seam.default();
        for (const piece of pieces) await new Promise((came) => seam.fetchPiece(piece, came));
        const session = new seam.Stillroom({ decimalMark: 'comma', keepNothing: true });
        const before = JSON.stringify(session.showEverything());
        const refused = [
          { do: 'no such thing' },
          { do: 'set-amount' },
          { do: 'set-amount', line: {}, text: 7 },
          {},
          [],
          null,
          7,
        ].map((command) => {
          try {
            session.apply(command);
            return 'taken';
          } catch (problem) {
            // A trap would leave memory that nobody may trust.
            return problem instanceof WebAssembly.RuntimeError ? 'trapped' : 'refused';
          }
        });
        const same = JSON.stringify(session.showEverything()) === before;
        // Whatever is called before its piece was fetched says so, or answers with nothing: it never calls into nowhere.
        /** @type {string[]} */
        const trapped = [];
        const formula = JSON.parse(before).shelf.cards[0].id;
        const call = (/** @type {string} */ name, /** @type {() => unknown} */ act) => {
          try {
            act();
          } catch (problem) {
            if (problem instanceof WebAssembly.RuntimeError) trapped.push(name);
          }
        };
        const calls = {
          readTable: () => session.readTable(new Uint8Array([1, 2, 3])),
          writeTable: () => session.writeTable(),
          readPrices: () => session.readPrices(new Uint8Array([1, 2, 3])),
          writePrices: () => session.writePrices(),
          readRecipe: () => session.readRecipe('water 70 %', ''),
          setRecipeColumn: () => session.setRecipeColumn(0, 'name'),
          readRecipeFile: () => session.readRecipeFile(new Uint8Array([1, 2, 3])),
          chooseInRecipe: () => session.chooseInRecipe(0, 'own'),
          readColour: () => session.readColour('0', new Uint8Array(4), new Uint8Array(4)),
          rest: () => session.rest(),
          countFindings: () => session.countFindings(true),
          predictPh: () => session.predictPh(1),
          sources: () => session.sources(),
          readLink: () => session.readLink('f=AAAA', undefined),
          linkOf: () => session.linkOf(formula, 'https://maker.example/', false),
          writeUp: () => session.writeUp(formula, 'markdown'),
          writeUpWithSubstitutions: () => session.writeUpWithSubstitutions(formula, 'markdown'),
          readLinkWithout: () => session.readLinkWithout('f=AAAA', undefined, { lines: [{ line: 1 }] }),
          solveByChance: () => session.solveByChance(5, 4, 1),
          writeBackup: () => session.writeBackup('https://maker.example/'),
          readBackup: () => session.readBackup(new Uint8Array([123, 125]), []),
          forgetBackup: () => session.forgetBackup(),
          photoOfBackup: () => session.photoOfBackup('none'),
          photoWasLost: () => session.photoWasLost(),
          strayPhotos: () => session.strayPhotos(['a']),
          beginBackup: () => {
            const writer = session.beginBackup('https://maker.example/');
            writer.records();
            writer.photo('a', 1, new Uint8Array(3));
            writer.finish();
            session.beginBackup('https://maker.example/').free();
          },
          versionsOf: () => session.versionsOf(formula),
          compareVersion: () => session.compareVersion(formula, '1'),
          storageRemarks: () => session.storageRemarks(),
          search: () => session.search('glyc', { classes: [], phases: [] }),
          trailOf: () => session.trailOf('c1'),
          takeWritten: () => session.takeWritten(),
          committed: () => session.committed(true),
          evaluate: () => seam.evaluate('{}', [], {}),
          readShared: () => seam.readShared('f=AAAA', {}),
          readSharedWithout: () => seam.readSharedWithout('f=AAAA', {}, { lines: [] }),
          unpackMaterials: () => seam.unpackMaterials(),
          deskArrived: () => session.deskArrived(),
          wholeArrived: () => session.wholeArrived(),
        };
        for (const [name, act] of Object.entries(calls)) call(name, act);
        for (const command of [
          { do: 'set-formula-name', text: 'mine' },
          { do: 'set-setting', name: 'scaleStep', text: '0.1' },
          { do: 'look-at-extracts', looking: true },
          { do: 'restore-extract-example' },
          { do: 'look-at-ph', looking: true },
          { do: 'set-ph-field', field: 'ph.target', text: '5' },
          { do: 'take-ph-offer', offer: 'set', text: 'x' },
          { do: 'look-at-label', looking: true },
          { do: 'set-label-field', field: 'label.width', text: '60' },
          { do: 'look-at-post', looking: true, address: 'https://maker.example/' },
          { do: 'set-post-field', field: 'post.why', text: 'no' },
          { do: 'look-at-swap', looking: true },
          { do: 'choose-swap-use', wanted: 'shelf' },
          { do: 'mark-line', line: 1, marked: true },
          { do: 'swap-line', line: 1 },
          { do: 'choose-way', way: 'apart' },
          { do: 'take-swap', text: 'x' },
          { do: 'look-at-batches', looking: true },
          { do: 'begin-batch' },
          { do: 'note-ph', text: '6.4' },
          { do: 'new-material', composite: true, name: 'mine' },
          { do: 'open-finding', key: 'x', open: true },
          { do: 'keep-copy', link: 'f=AAAA' },
          { do: 'make-of-recipe' },
          { do: 'undo' },
          { do: 'redo' },
        ]) {
          call(command.do, () => session.apply(command));
        }
        for (let count = 0; count < 9; count += 1) call('undo', () => session.apply({ do: 'undo' }));
        return {
          trapped,
          version: seam.version(),
          cards: JSON.parse(before).shelf.cards.length,
          refused,
          same,
          kept: localStorage.length,
        };
      },
      [`v-${build.version}`, ...pieces],
    );
    expect(seen.trapped).toEqual([]);
    expect(seen.version).toBe(version);
    expect(seen.cards).toBeGreaterThan(0);
    expect(new Set(seen.refused)).toEqual(new Set(['refused']));
    expect(seen.same, 'what is refused changes nothing').toBe(true);
    expect(seen.kept, 'a page that only shows keeps nothing').toBe(0);
  });
}

test('what a first visit fetches folds case without the tables of Unicode, which later pieces bring', async () => {
  const build = await readBuild();
  // How the standard library's table of small letters begins: À is U+00C0, à U+00E0 (Unicode Character Database).
  const table = Buffer.from(new Uint32Array([0xc0, 0xe0, 0xc1, 0xe1]).buffer);
  const piece = (/** @type {string} */ name) =>
    readFile(new URL(`../../dist/v-${build.version}/seam/${name}.wasm`, import.meta.url));
  expect((await piece('split_whole')).includes(table), 'a control: this is how it looks').toBe(true);
  for (const name of ['stillroom_bg', 'split_desk']) expect((await piece(name)).includes(table), name).toBe(false);
});
