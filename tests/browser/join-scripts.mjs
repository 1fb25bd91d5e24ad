// @ts-check

// Joins and shrinks scripts for the built site: takes a JSON object of path and text on standard input, gives one of the
// scripts to ship back. What is fetched together becomes one file: the page before its first view, each room, what rooms
// share. A script of the seam is shrunk and stays as it is.

import { dirname, posix } from 'node:path';
import { text } from 'node:stream/consumers';
import { rollup } from 'rollup';
import { minify } from 'terser';

/** Paths are taken for absolute ones here. */
const ROOT = '/';
/** What pages of others fetch: each with all it needs, and nothing of ours beside it. */
const EMBEDDED = ['embed/element.js', 'embed/frame.js', 'embed/docs.js'];
/** Scripts that are asked for by name beside the rooms: by the page when it starts, and by tests. */
const NAMED = ['main.js', 'session.js', 'offline.js', 'rooms/batches/photos.js'];
/** The rooms that are fetched when somebody enters them; the shelf is there from the start. */
const ROOM = /^rooms\/(?!shelf)\w+\/(room|reading)\.js$/;

const files = /** @type {Record<string, string>} */ (JSON.parse(await text(process.stdin)));
/** @type {Record<string, string>} */
const shipped = {};
if ('main.js' in files) {
  const paths = Object.keys(files);
  await join(
    paths.filter((path) => NAMED.includes(path) || ROOM.test(path)),
    placeOf,
  );
  await join(EMBEDDED, () => undefined);
  // Its address stands in pages of others.
  shipped['embed/stillroom.js'] = files['embed/stillroom.js'];
} else {
  Object.assign(shipped, files);
}
for (const [path, source] of Object.entries(shipped)) {
  const { code } = await minify(source, {
    module: true,
    compress: { passes: 2 },
    mangle: true,
    format: { ecma: 2020 },
  });
  if (code === undefined) throw new Error(`${path} became nothing`);
  shipped[path] = code;
}
process.stdout.write(JSON.stringify(shipped));

/**
 * @param {string[]} entries
 * @param {(path: string, graph: Graph) => string | undefined} chunkOf
 */
async function join(entries, chunkOf) {
  const bundle = await rollup({
    input: Object.fromEntries(entries.map((path) => [path.replace(/\.js$/, ''), ROOT + path])),
    plugins: [{ name: 'in-memory', resolveId, load: (id) => files[id.slice(ROOT.length)] }],
    preserveEntrySignatures: 'allow-extension',
    onwarn: (warning) => {
      throw new Error(warning.message);
    },
  });
  /** @type {Graph | undefined} */
  let graph;
  const { output } = await bundle.generate({
    format: 'es',
    entryFileNames: '[name].js',
    chunkFileNames: '[name].js',
    hoistTransitiveImports: false,
    manualChunks(id, { getModuleInfo }) {
      graph ??= graphOf(entries, getModuleInfo);
      return chunkOf(id.slice(ROOT.length), graph);
    },
  });
  for (const chunk of output) {
    if (chunk.type !== 'chunk') throw new Error(`${chunk.fileName} is no script`);
    if (chunk.fileName in shipped) throw new Error(`${chunk.fileName} is made twice`);
    shipped[chunk.fileName] = chunk.code;
  }
}

/** @param {string} source @param {string | undefined} importer */
function resolveId(source, importer) {
  if (!importer) return source;
  const id = posix.join(dirname(importer), source);
  const isOurs = id.slice(ROOT.length) in files;
  if (!isOurs && !id.startsWith(`${ROOT}seam/`)) throw new Error(`${importer} imports ${source}, which is not there`);
  return { id, external: !isOurs };
}

/**
 * Which entries need a script before they run, by its path.
 * @typedef {Map<string, Set<string>>} Graph
 */

/**
 * @param {string[]} entries
 * @param {import('rollup').GetModuleInfo} getModuleInfo
 */
function graphOf(entries, getModuleInfo) {
  /** @type {Graph} */
  const graph = new Map();
  for (const entry of entries) {
    const found = [ROOT + entry];
    for (let id = found.pop(); id; id = found.pop()) {
      const path = id.slice(ROOT.length);
      const needing = graph.get(path) ?? new Set();
      if (needing.has(entry)) continue;
      graph.set(path, needing.add(entry));
      found.push(...(getModuleInfo(id)?.importedIds ?? []));
    }
  }
  return graph;
}

/**
 * The file that a script of the page goes into.
 * @param {string} path
 * @param {Graph} graph
 */
function placeOf(path, graph) {
  const needing = graph.get(path) ?? new Set();
  if (needing.has('session.js')) return 'session';
  if (needing.has('offline.js')) return 'offline';
  if (needing.has('main.js')) return 'main';
  if (NAMED.includes(path) || ROOM.test(path)) return undefined;
  // Only one room needs it: it goes there.
  if (needing.size === 1) return undefined;
  return path.startsWith('rooms/') ? posix.join(dirname(path), 'shared') : 'dom/shared';
}
