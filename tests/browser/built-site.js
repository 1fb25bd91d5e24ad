// @ts-check

// The built site for tests that need one of their own: a copy, another version of it, a server for it.

import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cp, mkdtemp, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const repository = fileURLToPath(new URL('../..', import.meta.url));

/** Where the build is. */
export const builtSite = join(repository, 'dist');

/** @typedef {{ version: string, files: { url: string, sha256: string, bytes: number }[] }} Build */

/**
 * What a built service worker keeps.
 * @param {string} folder
 * @returns {Promise<Build>}
 */
export async function readBuild(folder = builtSite) {
  const worker = await readFile(join(folder, 'sw.js'), 'utf8');
  const line = /^const BUILD = (\{.*\});$/m.exec(worker);
  if (!line) {
    throw new Error('the service worker holds no list of files');
  }
  return JSON.parse(line[1]);
}

/** Copies the built site, so that a test may change it. */
export async function copyBuiltSite() {
  const folder = await mkdtemp(join(tmpdir(), 'stillroom-'));
  await cp(builtSite, folder, { recursive: true });
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) };
}

/**
 * Turns a copy into what a next build would have made: another version, another front page, all else unchanged.
 * @param {string} folder
 * @param {string} version twelve hexadecimal digits
 */
export async function makeNextVersion(folder, version) {
  const build = await readBuild(folder);
  const [before, after] = [`v-${build.version}/`, `v-${version}/`];
  await rename(join(folder, before), join(folder, after));
  const page = (await readFile(join(folder, 'index.html'), 'utf8')).replaceAll(`./${before}`, `./${after}`);
  await writeFile(join(folder, 'index.html'), page);
  for (const file of build.files) {
    file.url = file.url.replace(before, after);
    const content = await readFile(join(folder, file.url));
    file.bytes = content.length;
    file.sha256 = createHash('sha256').update(content).digest('hex').slice(0, 16);
  }
  const worker = await readFile(join(folder, 'sw.js'), 'utf8');
  const list = JSON.stringify({ ...build, version });
  await writeFile(
    join(folder, 'sw.js'),
    worker.replace(/^const BUILD = .*$/m, () => `const BUILD = ${list};`),
  );
}

/**
 * Serves a folder on a port of its own.
 * @param {string} folder
 */
export async function serveFolder(folder) {
  const xtask = process.env.STILLROOM_XTASK;
  const options = ['serve', '--folder', folder, '--port', '8450'];
  const server = xtask
    ? spawn(xtask, options, { cwd: repository, stdio: ['ignore', 'pipe', 'inherit'] })
    : spawn('cargo', ['xtask', ...options], { cwd: repository, stdio: ['ignore', 'pipe', 'inherit'] });
  /** @type {string} */
  const address = await new Promise((resolve, reject) => {
    createInterface(server.stdout).once('line', resolve);
    server.once('error', reject);
    server.once('exit', (code) => reject(new Error(`the server ended with ${code}`)));
  });
  return {
    address,
    /** Takes it off the network: once this is fulfilled, nothing answers at its address. */
    stop: () =>
      new Promise((resolve) => {
        server.removeAllListeners('exit');
        if (server.exitCode !== null || server.signalCode !== null) return resolve(undefined);
        server.once('exit', () => resolve(undefined));
        server.kill();
      }),
  };
}
