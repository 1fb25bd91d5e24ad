// @ts-check

// Photos of the journal: small, on this device, outside the storage of records. A backup lists, reads and puts them here.

/** @typedef {{ name: string, blob: Blob, takenAt: number }} Photo */

const DATABASE = 'stillroom-photos';
const STORE = 'photos';
/** Longest side a photo is kept at, in pixels: enough to see a ring of water, some 100 kB. */
const KEPT_SIDE = 1200;
const QUALITY = 0.8;

/** @returns {Promise<IDBDatabase>} */
function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'name' });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('another page holds the photos'));
  });
}

/**
 * @template T
 * @param {IDBTransactionMode} mode
 * @param {(store: IDBObjectStore) => IDBRequest<T>} ask
 * @returns {Promise<T>} fulfilled once what was asked for is kept or read
 */
async function inStore(mode, ask) {
  const database = await open();
  try {
    return await new Promise((resolve, reject) => {
      const transaction = database.transaction(STORE, mode, { durability: 'strict' });
      const request = ask(transaction.objectStore(STORE));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = () => reject(transaction.error);
      transaction.onabort = () => reject(transaction.error);
    });
  } finally {
    database.close();
  }
}

/**
 * Keeps several photos at once.
 * @param {Photo[]} photos
 */
export async function putPhotos(photos) {
  await inStore('readwrite', (store) => photos.map((photo) => store.put(photo))[0] ?? store.count());
}

/** @param {string[]} names */
export async function removePhotos(names) {
  await inStore('readwrite', (store) => names.map((name) => store.delete(name))[0] ?? store.count());
}

/**
 * Keeps a photo under a name.
 * @param {string} name
 * @param {Blob} blob
 * @param {number} [takenAt] milliseconds since 1970
 */
export async function putPhoto(name, blob, takenAt = Date.now()) {
  await inStore('readwrite', (store) => store.put({ name, blob, takenAt }));
}

/** @param {string} name @returns {Promise<Photo | undefined>} */
export function getPhoto(name) {
  return inStore('readonly', (store) => store.get(name));
}

/** The names of all photos. @returns {Promise<string[]>} */
export async function listPhotos() {
  return /** @type {string[]} */ (await inStore('readonly', (store) => store.getAllKeys()));
}

/**
 * A photo as it is kept: small, upright, without what the camera wrote beside it.
 * @param {Blob} file
 * @returns {Promise<{ canvas: HTMLCanvasElement, blob: Blob }>}
 */
export async function shrinkPhoto(file) {
  const whole = await createImageBitmap(file);
  const scale = KEPT_SIDE / Math.max(whole.width, whole.height);
  const side = (/** @type {number} */ pixels) => Math.max(1, Math.round(pixels * scale));
  const image =
    scale < 1
      ? await createImageBitmap(file, {
          resizeWidth: side(whole.width),
          resizeHeight: side(whole.height),
          resizeQuality: 'high',
        })
      : whole;
  const canvas = paint(image);
  const blob = await new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
  if (!blob) throw new Error('the photo could not be made small');
  return { canvas, blob };
}

/** @param {ImageBitmap} image */
export function paint(image) {
  const canvas = document.createElement('canvas');
  canvas.width = image.width;
  canvas.height = image.height;
  canvas.getContext('2d', { willReadFrequently: true })?.drawImage(image, 0, 0);
  return canvas;
}
