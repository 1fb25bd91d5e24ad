// @ts-check

// Shrinks scripts for the built site: takes a JSON object of path and text on standard input, gives the same back. Each
// file stays a module of its own, so that its address and its imports stay what they are.

import { text } from 'node:stream/consumers';
import { minify } from 'terser';

const files = /** @type {Record<string, string>} */ (JSON.parse(await text(process.stdin)));
for (const [path, source] of Object.entries(files)) {
  const { code } = await minify(source, { module: true, compress: { passes: 2 }, mangle: true, format: { ecma: 2020 } });
  if (code === undefined) throw new Error(`${path} became nothing`);
  files[path] = code;
}
process.stdout.write(JSON.stringify(files));
