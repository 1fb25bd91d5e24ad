// @ts-check

// The backup of everything on this device: written, read, and put back after showing what that would do.

import { site } from '../../address.js';
import { button, freshId, make, setText, show } from '../../dom/element.js';
import { saveFile } from '../../dom/save.js';
import { go } from '../../router.js';
import { getPhoto, listPhotos, putPhotos, removePhotos } from '../batches/photos.js';
import { createPreview } from './preview.js';
import { createWork, drawn } from './work.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {ReturnType<typeof createWork>} Work */
/** @typedef {import('./preview.js').Preview} Preview */

const text = words.backup;
/** Photos of a backup that are put on this device together. */
const AT_ONCE = 16;

/** @param {Session} session */
export function createBackup(session) {
  const work = createWork();
  const strays = createStrays(session);
  /** @type {Preview} */
  const preview = createPreview(
    () => void work.alone(text.reading, () => restore(session, work, preview, strays.look)),
    () => void session.ask((seam) => seam.forgetBackup()),
  );
  /** @param {Blob} file */
  const read = (file) => work.alone(text.opening, () => readInto(session, work, preview, file));
  const input = make('input', {
    type: 'file',
    class: 'unseen',
    id: freshId(),
    accept: '.json,application/json,.zip,application/zip',
    'aria-label': text.read,
    tabindex: -1,
    onchange: async () => {
      const chosen = input.files?.[0];
      if (chosen) await read(chosen);
      input.value = '';
    },
  });
  const write = () => work.alone(text.writing, () => writeBackup(session, work));
  return {
    root: make(
      'section',
      { class: 'no-print backup' },
      make('h3', {}, text.title),
      make('p', {}, text.intro),
      make(
        'div',
        { class: 'acts' },
        button(text.write, write, { class: 'main-act' }),
        button(text.read, () => input.click()),
        input,
      ),
      make('p', { class: 'quiet' }, text.drop),
      ...work.parts,
      preview.root,
      strays.root,
    ),
    read,
    enter: strays.look,
  };
}

/**
 * Reads a file and shows what is in it.
 * @param {Session} session
 * @param {Work} work
 * @param {Preview} preview
 * @param {Blob} file
 */
async function readInto(session, work, preview, file) {
  show(preview.root, false);
  const [bytes, here] = await Promise.all([file.arrayBuffer().catch(console.warn), namesOfPhotos()]);
  if (!bytes) return work.complain(text.notRead);
  await drawn();
  const view = session.ask((seam) => seam.readBackup(new Uint8Array(bytes), here ?? []));
  if (!view) return;
  work.complain(view.error);
  preview.show(view);
  (view.error === undefined ? preview.root : work.problem).scrollIntoView({ block: 'nearest' });
}

/**
 * Puts what was read on this device. Photos first: a record never names one that is still to come.
 * @param {Session} session
 * @param {Work} work
 * @param {Preview} preview
 * @param {() => Promise<void>} lookForStrays
 */
async function restore(session, work, preview, lookForStrays) {
  show(preview.root, false);
  const wanted = preview.photos();
  /** @type {string[]} */
  const put = [];
  for (let at = 0; at < wanted.length && !work.isStopped(); at += AT_ONCE) {
    work.reach(at, wanted.length);
    await putFromBackup(session, wanted.slice(at, at + AT_ONCE), put);
  }
  if (work.isStopped()) {
    session.ask((seam) => seam.forgetBackup());
    const isRemoved = await removePhotos(put).then(
      () => true,
      () => false,
    );
    await lookForStrays();
    return work.complain(isRemoved ? text.stopped : text.notRemoved);
  }
  // From here on it is one act, which is done at once and can be undone.
  await work.goOn(text.records);
  session.send({ do: 'restore-backup', differing: preview.differing() });
  go('shelf');
}

/**
 * Puts photos of the backup on this device.
 * @param {Session} session
 * @param {string[]} names
 * @param {string[]} put where the names go of those that are there
 */
async function putFromBackup(session, names, put) {
  const photos = names.flatMap((name) => {
    const photo = session.ask((seam) => seam.photoOfBackup(name));
    if (!photo) return [];
    const { bytes, takenAt } = photo;
    photo.free();
    return [{ name, blob: new Blob([/** @type {BlobPart} */ (bytes)], { type: 'image/jpeg' }), takenAt }];
  });
  try {
    await putPhotos(photos);
    put.push(...photos.map(({ name }) => name));
  } catch (failure) {
    console.warn(failure);
    for (const _ of photos) session.ask((seam) => seam.photoWasLost());
  }
}

/**
 * Writes everything into a file: text alone, or with photos a zip.
 * @param {Session} session
 * @param {Work} work
 */
async function writeBackup(session, work) {
  const name = `stillroom-${new Date().toISOString().slice(0, 10)}`;
  const photos = await namesOfPhotos();
  if (!photos) work.complain(text.noPhotos);
  // What could not be read again is not written.
  const written = session.ask((seam) => seam.writeBackup(site.href));
  if (written === '') return work.complain(text.tooMuch);
  if (!photos?.length) {
    if (written !== undefined) saveFile(`${name}.json`, [written], 'application/json');
    return;
  }
  try {
    const file = session.ask((seam) => seam.beginBackup(site.href));
    if (!file) return;
    const pieces = [file.records()];
    for (const each of photos) {
      const photo = await getPhoto(each);
      if (photo) pieces.push(file.photo(each, photo.takenAt, new Uint8Array(await photo.blob.arrayBuffer())));
    }
    pieces.push(file.finish());
    saveFile(`${name}.zip`, /** @type {BlobPart[]} */ (pieces), 'application/zip');
  } catch (failure) {
    console.warn(failure);
    work.complain(text.writingFailed);
  }
}

/** Photos that no record names, offered for removal. @param {Session} session */
function createStrays(session) {
  const said = make('p');
  /** @type {string[]} */
  let names = [];
  async function look() {
    const here = (await namesOfPhotos()) ?? [];
    const view = here.length > 0 ? session.ask((seam) => seam.strayPhotos(here)) : undefined;
    names = view?.names ?? [];
    setText(said, view?.text ?? '');
    show(root, names.length > 0);
  }
  async function remove() {
    await look();
    await removePhotos(names);
    await look();
  }
  const root = make('div', { hidden: true }, said, button(text.removeStrays, remove));
  return { root, look };
}

/** The names of the photos on this device; nothing if the browser does not let them be read. */
async function namesOfPhotos() {
  try {
    return await listPhotos();
  } catch (failure) {
    console.warn(failure);
    return undefined;
  }
}
