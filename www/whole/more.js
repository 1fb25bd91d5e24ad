// @ts-check

// What joins the page once the whole seam is there: sharing, reading what was shared, files dropped on the page, storage
// that lasts.

import { button, make } from '../element.js';
import { dress } from './look.js';
import { createReading } from './reading.js';
import { createShare } from './share.js';
import { watchStorage } from './storage.js';
import { words } from './words-share.js';

/** @typedef {import('../session.js').Session} Session */

/**
 * @param {Session} session
 * @param {{ go: (room: string) => void, say: (text: string) => void }} page
 */
export function addMore(session, page) {
  // Where the whole seam could not be fetched there is nothing behind these rooms.
  if (!session.ask((seam) => 'linkOf' in seam)) return;
  const share = createShare(session, page);
  const reading = createReading(session, page);
  dress([share.room, reading.room], 'share');
  document.getElementById('main')?.append(share.room, reading.room);

  /** The rooms of this module, by how the address names them. */
  function enter() {
    const here = location.hash === '#share' ? share : location.hash.startsWith('#f=') ? reading : undefined;
    if (!here) return;
    document.body.dataset.room = here.room.dataset.room;
    document.body.dataset.desk = 'false';
    for (const link of document.querySelectorAll('nav [aria-current]')) link.removeAttribute('aria-current');
    here.enter();
    scrollTo(0, 0);
  }
  addEventListener('hashchange', enter);
  document.querySelector('.formula-head')?.append(button(words.share, () => page.go('share'), { class: 'share-act' }));
  document.querySelector('.room[data-room="shelf"] .acts')?.append(button(words.backup.title, () => page.go('share')));
  document.querySelector('.room[data-room="shelf"] .small-print')?.append(' ', noticesLink());

  const shared = sharedByAnotherApp();
  if (shared) history.replaceState(null, '', `./${shared}`);
  acceptFiles(share.readBackup, () => page.go('share'));
  watchStorage(session, page.say);
  session.introduce();
  enter();
}

/** Leads to the page that names the work of others. */
function noticesLink() {
  return make('a', { href: new URL('../notices.html', import.meta.url).href }, words.notices);
}

/** The link that another app shared with this one: it stands in the query then, as the manifest says. */
function sharedByAnotherApp() {
  const texts = [...new URLSearchParams(location.search).values()];
  return texts.map((text) => /#f=[\w-]+/.exec(text)?.[0]).find(Boolean);
}

/**
 * Takes files dropped anywhere on the page, and those another app shared with this one.
 * @param {(file: Blob) => Promise<void>} read
 * @param {() => void} go
 */
function acceptFiles(read, go) {
  const holdsFile = (/** @type {DragEvent} */ event) => event.dataTransfer?.types.includes('Files') ?? false;
  addEventListener('dragover', (event) => {
    if (!holdsFile(event)) return;
    event.preventDefault();
    document.body.classList.add('dropping');
  });
  addEventListener('dragleave', (event) => {
    if (!event.relatedTarget) document.body.classList.remove('dropping');
  });
  addEventListener('drop', (event) => {
    document.body.classList.remove('dropping');
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    go();
    void read(file);
  });
  // A file this app was opened with, where the system offers that.
  const queue = /** @type {{ setConsumer: (take: (launched: { files?: { getFile: () => Promise<File> }[] }) => void) => void } | undefined} */ (Reflect.get(globalThis, 'launchQueue'));
  queue?.setConsumer(async ({ files }) => {
    const handle = files?.[0];
    if (!handle) return;
    go();
    await read(await handle.getFile());
  });
}
