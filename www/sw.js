// @ts-check

// Keeps exactly the files of one build, so that the page works without a network. The build writes the version and
// the list of files below. A new version is fetched whole beside the old one and waits until the maker accepts it.

/** @typedef {{ url: string, sha256: string, bytes: number }} BuiltFile */

/** @type {{ version: string, files: BuiltFile[] }} */
const BUILD = /* build */ { version: 'unbuilt', files: [] };

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const scope = new URL(worker.registration.scope);

// Several sites may share a host and with it the store: the scope is part of the name.
const cachePrefix = `stillroom ${scope.pathname} `;
const cacheName = cachePrefix + BUILD.version;

/** Says on each kept answer which bytes it holds. */
const HASH_HEADER = 'x-kept-sha256';

/** The built files by path. @type {Map<string, BuiltFile>} */
const files = new Map(BUILD.files.map((file) => [addressOf(file).pathname, file]));

/**
 * The language a file holds the texts of, where a page fetches it for that language alone. The first language is kept with
 * everything else: it stands in wherever another is missing.
 * @param {Pick<BuiltFile, 'url'>} file
 */
function languageOf({ url }) {
  const language = /\/(?:texts|words)\/([a-z]{2})[-/]/.exec(url)?.[1];
  return language === 'en' ? undefined : language;
}

/** @param {BuiltFile} file */
function addressOf(file) {
  return new URL(file.url, scope);
}

worker.addEventListener('install', (event) => event.waitUntil(install()));
worker.addEventListener('activate', (event) => event.waitUntil(activate()));

worker.addEventListener('message', (event) => {
  if (event.data?.type === 'take-over') {
    event.waitUntil(worker.skipWaiting());
  } else if (event.data?.type === 'keep-language') {
    event.waitUntil(keepLanguage(String(event.data.language)));
  }
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== 'GET' || address.origin !== scope.origin) {
    return;
  }
  const file = fileFor(address);
  if (file) {
    event.respondWith(answer(file, request));
  } else if (request.mode === 'navigate' && address.pathname.startsWith(scope.pathname)) {
    // An unknown page: the host may know it; without one, the front page does.
    event.respondWith(fetch(request).catch(() => Response.redirect(scope.href)));
  }
});

/**
 * The built file at an address. Query and fragment play no part.
 * @param {URL} address
 */
function fileFor(address) {
  const path = address.pathname === scope.pathname ? new URL('index.html', scope).pathname : address.pathname;
  return files.get(path);
}

/**
 * @param {BuiltFile} file
 * @param {Request} request
 */
async function answer(file, request) {
  const cache = await caches.open(cacheName);
  return (await cache.match(addressOf(file))) ?? fetch(request);
}

/**
 * Keeps the texts of a language as well.
 * @param {string} language
 */
async function keepLanguage(language) {
  const cache = await caches.open(cacheName);
  const files = BUILD.files.filter((file) => languageOf(file) === language);
  await Promise.all(
    files.map(async (file) => {
      if (!(await cache.match(addressOf(file)))) await cache.put(addressOf(file), await fetched(file));
    }),
  );
}

/** Fetches every file and checks it. One that fails lets the whole installation fail: the old version goes on. */
async function install() {
  await caches.delete(cacheName);
  try {
    const cache = await caches.open(cacheName);
    const kept = await answersOfOlderVersions();
    const spoken = await languagesOfOlderVersions();
    const wanted = BUILD.files.filter((file) => !languageOf(file) || spoken.has(languageOf(file)));
    await Promise.all(
      wanted.map(async (file) => cache.put(addressOf(file), kept.get(file.sha256)?.clone() ?? (await fetched(file)))),
    );
  } catch (error) {
    await caches.delete(cacheName);
    throw error;
  }
}

/** The languages whose texts older versions keep beside the first. */
async function languagesOfOlderVersions() {
  /** @type {Set<string | undefined>} */
  const spoken = new Set();
  for (const name of await olderCaches()) {
    for (const { url } of await (await caches.open(name)).keys()) spoken.add(languageOf({ url }));
  }
  return spoken;
}

/** What older versions hold, by the hash of its bytes. */
async function answersOfOlderVersions() {
  /** @type {Map<string, Response>} */
  const kept = new Map();
  for (const name of await olderCaches()) {
    const cache = await caches.open(name);
    for (const response of await cache.matchAll()) {
      const hash = response.headers.get(HASH_HEADER);
      if (hash) {
        kept.set(hash, response);
      }
    }
  }
  return kept;
}

/**
 * @param {BuiltFile} file
 * @returns {Promise<Response>}
 */
async function fetched(file) {
  const response = await fetch(addressOf(file), { cache: 'no-cache', credentials: 'same-origin' });
  if (!response.ok) {
    throw new Error(`${file.url} answered ${response.status}`);
  }
  const body = await response.arrayBuffer();
  if (body.byteLength !== file.bytes) {
    throw new Error(`${file.url} holds ${body.byteLength} bytes instead of ${file.bytes}`);
  }
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  const hash = Array.from(digest.subarray(0, 8), (byte) => byte.toString(16).padStart(2, '0')).join('');
  if (hash !== file.sha256) {
    throw new Error(`${file.url} is not the file that was built`);
  }
  // A new answer: one that followed a redirect may not be used for a page, and the body is no longer compressed.
  const headers = new Headers(response.headers);
  headers.delete('content-encoding');
  headers.delete('content-length');
  headers.set(HASH_HEADER, hash);
  return new Response(body, { status: 200, headers });
}

/** Old versions go; pages that are open are answered from this one from now on. */
async function activate() {
  await Promise.all((await olderCaches()).map((name) => caches.delete(name)));
  await worker.clients.claim();
}

async function olderCaches() {
  const names = await caches.keys();
  return names.filter((name) => name.startsWith(cachePrefix) && name !== cacheName);
}
