// @ts-check

// Sharing the open formula, writing it out, earlier versions of it, and the backup of everything.

import { button, draw, freshId, make, setText, show } from '../element.js';
import { getPhoto, listPhotos, putPhotos, removePhotos } from './photos.js';
import { words } from './words-share.js';

/** @typedef {import('../session.js').Session} Session */
/** @typedef {import('../seam/stillroom.js').ComparisonView} ComparisonView */
/** @typedef {import('../seam/stillroom.js').BackupView} BackupView */
/** @typedef {{ go: (room: string) => void, say: (text: string) => void }} Page */

/** Photos of a backup that are put on this device together. */
const AT_ONCE = 16;

/**
 * Furnishes the room.
 * @param {Session} session
 * @param {Page} page
 */
export function createShare(session, page) {
  const link = createLink(session, page);
  const written = createWritten(session);
  const versions = createVersions(session, page);
  const backup = createBackup(session, page);
  const none = make('p', { class: 'quiet' }, words.none);
  const formula = make('div', {}, link.root, written.root, versions.root);
  let open = '';
  let name = '';
  session.listen((update) => {
    if (!update.formula) return;
    open = update.formula.id ?? '';
    name = update.formula.name;
  });
  const room = make(
    'section',
    { class: 'room', 'data-room': 'share', 'aria-labelledby': 'share-title' },
    make(
      'div',
      { class: 'share-room' },
      make('h2', { id: 'share-title' }, words.title),
      make('p', { class: 'no-print' }, button(words.back, () => page.go('formula'), { class: 'plain' })),
      none,
      formula,
      backup.root,
    ),
  );
  return {
    room,
    enter() {
      backup.enter();
      show(none, open === '');
      show(formula, open !== '');
      if (open === '') return;
      link.show(open);
      written.show(open, name);
      versions.show(open);
    },
    /** @param {Blob} file */
    readBackup: (file) => backup.read(file),
  };
}

/**
 * @param {Session} session
 * @param {Page} page
 */
function createLink(session, page) {
  const text = words.link;
  const heading = make('p', { class: 'print-title' });
  const problem = make('p', { class: 'message', role: 'alert', hidden: true });
  const address = make('textarea', { class: 'share-address', readonly: true, id: freshId(), spellcheck: 'false', onfocus: () => address.select() });
  const about = make('p', { class: 'quiet no-print' });
  const path = draw('path', { fill: '#000' });
  const code = draw('svg', { class: 'share-code', role: 'img', 'shape-rendering': 'crispEdges' }, path);
  const codeAbout = make('p', { class: 'quiet no-print' });
  const copied = make('p', { class: 'quiet no-print', role: 'status' });
  const acts = make(
    'div',
    { class: 'acts no-print' },
    button(text.copy, async () => {
      try {
        await navigator.clipboard.writeText(address.value);
        setText(copied, text.copied);
      } catch {
        address.select();
        setText(copied, text.cannotCopy);
      }
    }, { class: 'main-act' }),
  );
  let name = '';
  if ('share' in navigator) {
    acts.append(button(text.send, () => void navigator.share({ title: name, url: address.value }).catch(() => {})));
  }
  const print = button(text.print, () => globalThis.print());
  const embed = make('a', {}, text.embed);
  acts.append(print);
  const whole = make('div', { class: 'share-link' }, make('label', { for: address.id, class: 'no-print' }, text.address), address, about, acts, copied, code, codeAbout, make('p', { class: 'no-print' }, embed));
  return {
    root: make('section', {}, make('h3', {}, text.title), make('p', { class: 'no-print' }, text.intro), problem, heading, whole),
    /** @param {string} formula */
    show(formula) {
      const view = session.ask((seam) => seam.linkOf(formula, location.href));
      if (!view) return;
      name = view.name;
      setText(copied, '');
      setText(heading, view.name);
      setText(problem, view.error ?? '');
      show(problem, view.error !== undefined);
      show(whole, view.error === undefined);
      address.value = view.address;
      setText(about, view.about);
      show(/** @type {any} */ (code), view.code !== undefined);
      show(print, view.code !== undefined);
      setText(codeAbout, view.code?.about ?? view.codeProblem);
      embed.href = `${new URL('../../embed/index.html', import.meta.url).href}#${view.fragment}`;
      if (view.code) {
        const { side, path: modules, millimetres } = view.code;
        code.setAttribute('viewBox', `0 0 ${side} ${side}`);
        code.setAttribute('aria-label', `${text.codeIs} ${view.name}`);
        code.style.setProperty('--code-width', `${millimetres}mm`);
        path.setAttribute('d', modules);
      }
    },
  };
}

/** @param {Session} session */
function createWritten(session) {
  const text = words.write;
  let formula = '';
  let name = '';
  const key = (/** @type {'markdown' | 'text' | 'csv'} */ form, /** @type {string} */ label, /** @type {string} */ ending, /** @type {string} */ type) =>
    button(label, () => {
      const written = session.ask((seam) => seam.writeUp(formula, form));
      if (written !== undefined) saveFile(`${fileName(name)}.${ending}`, [written], type);
    });
  return {
    root: make(
      'section',
      { class: 'no-print' },
      make('h3', {}, text.title),
      make('div', { class: 'acts' }, key('markdown', text.markdown, 'md', 'text/markdown'), key('text', text.text, 'txt', 'text/plain'), key('csv', text.csv, 'csv', 'text/csv')),
    ),
    /** @param {string} id @param {string} called */
    show(id, called) {
      formula = id;
      name = called;
    },
  };
}

/**
 * @param {Session} session
 * @param {Page} page
 */
function createVersions(session, page) {
  const text = words.versions;
  const list = make('ul', { class: 'versions' });
  const none = make('p', { class: 'quiet' }, text.none);
  const compared = make('div', { 'aria-live': 'polite' });
  return {
    root: make('section', { class: 'no-print' }, make('h3', {}, text.title), none, list, compared),
    /** @param {string} formula */
    show(formula) {
      const views = session.ask((seam) => seam.versionsOf(formula)) ?? [];
      show(none, views.length === 0);
      compared.replaceChildren();
      list.replaceChildren(
        ...views.map(({ version, text: about }) =>
          make(
            'li',
            {},
            make('span', {}, about),
            make(
              'span',
              { class: 'acts' },
              button(text.compare, () => {
                const view = session.ask((seam) => seam.compareVersion(formula, version));
                compared.replaceChildren(...(view ? [drawComparison(view, words.compare.before, words.compare.after)] : []));
              }),
              button(text.restore, () => {
                session.send({ do: 'restore-version', formula, version });
                page.go('formula');
              }),
            ),
          ),
        ),
      );
    },
  };
}

/**
 * Draws what is different between two versions.
 * @param {ComparisonView} view
 * @param {string} before
 * @param {string} after
 */
export function drawComparison(view, before, after) {
  const text = words.compare;
  const table = (/** @type {string} */ caption, /** @type {ComparisonView['lines']} */ changes) =>
    changes.length === 0
      ? undefined
      : make(
          'table',
          { class: 'changes' },
          make('caption', {}, caption),
          make('thead', {}, make('tr', {}, make('th', { scope: 'col' }), ...[before, after, text.difference].map((head) => make('th', { scope: 'col' }, `${head} %`)))),
          make(
            'tbody',
            {},
            ...changes.map((change) =>
              make('tr', {}, make('th', { scope: 'row', dir: 'auto' }, change.name), make('td', {}, change.before || '–'), make('td', {}, change.after || '–'), make('td', { class: 'difference' }, change.difference)),
            ),
          ),
        );
  return make(
    'div',
    { class: 'comparison' },
    make('p', {}, view.summary),
    table(text.lines, view.lines),
    table(text.composition, view.composition),
    view.others.length > 0 ? make('p', {}, `${text.others}:`) : undefined,
    view.others.length > 0 ? make('ul', {}, ...view.others.map((other) => make('li', { dir: 'auto' }, other))) : undefined,
  );
}

/**
 * @param {Session} session
 * @param {Page} page
 */
function createBackup(session, page) {
  const text = words.backup;
  const file = make('input', {
    type: 'file',
    class: 'unseen',
    id: freshId(),
    accept: '.json,application/json,.zip,application/zip',
    'aria-label': text.read,
    tabindex: -1,
    onchange: async () => {
      const chosen = file.files?.[0];
      if (chosen) await read(chosen);
      file.value = '';
    },
  });
  const problem = make('p', { class: 'message', role: 'alert', hidden: true });
  const summary = make('p', {});
  const photos = make('p', {});
  const items = make('ul', { class: 'backup-items' });
  const differing = make('select', { id: freshId() }, make('option', { value: 'both' }, text.both), make('option', { value: 'theirs' }, text.theirs));
  const choice = make('p', {}, make('label', { for: differing.id }, `${text.differing}: `), differing);
  const preview = make(
    'div',
    { hidden: true },
    make('h4', { tabindex: -1 }, text.preview),
    summary,
    photos,
    items,
    choice,
    make(
      'div',
      { class: 'acts' },
      button(text.take, () => take(), { class: 'main-act' }),
      button(text.cancel, () => {
        session.ask((seam) => seam.forgetBackup());
        show(preview, false);
      }),
    ),
  );

  const working = make('p', { class: 'quiet', role: 'status' });
  const bar = make('progress', { max: 1, value: 0, 'aria-label': text.progress });
  const stop = button(text.stop, () => {
    stopped = true;
  });
  const progress = make('div', { class: 'restoring', hidden: true }, bar, stop);
  /** One file at a time: while one is read, restored or written, no other is taken. */
  let busy = false;
  let stopped = false;
  // Whoever leaves in the middle is asked first; what was put here by then is offered for removal the next time.
  const stay = (/** @type {Event} */ event) => event.preventDefault();

  /**
   * Does one thing with a file, unless another is being done.
   * @param {string} doing
   * @param {() => Promise<void>} act
   */
  async function alone(doing, act) {
    if (busy) return complain(text.busy);
    busy = true;
    stopped = false;
    complain(undefined);
    setText(working, doing);
    addEventListener('beforeunload', stay);
    try {
      await act();
    } finally {
      busy = false;
      setText(working, '');
      show(progress, false);
      removeEventListener('beforeunload', stay);
    }
  }

  const strayText = make('p', {});
  const strays = make('div', { hidden: true }, strayText, button(text.removeStrays, removeStrays));
  /** Photos of the file that are to be put on this device. @type {string[]} */
  let wanted = [];
  /** @type {string[]} */
  let strayNames = [];

  /** @param {Blob} chosen */
  const read = (chosen) => alone(text.opening, async () => {
    show(preview, false);
    const [bytes, here] = await Promise.all([chosen.arrayBuffer().catch(console.warn), namesOfPhotos()]);
    if (!bytes) return complain(text.notRead);
    await drawn();
    const view = session.ask((seam) => seam.readBackup(new Uint8Array(bytes), here ?? []));
    if (!view) return;
    complain(view.error);
    show(preview, view.error === undefined);
    setText(summary, view.summary);
    setText(photos, view.photos);
    show(photos, view.photos !== '');
    wanted = view.newPhotos;
    show(choice, view.items.some((item) => item.fate === 'differs'));
    items.replaceChildren(
      ...view.items.map((item) => make('li', { 'data-fate': item.fate }, make('span', { dir: 'auto' }, item.name ? `${item.kind}: ${item.name}` : item.kind), make('small', {}, item.text || text.fates[item.fate]))),
    );
    (view.error === undefined ? preview : problem).scrollIntoView({ block: 'nearest' });
  });

  /** Photos first: a record never names one that is still to come. */
  const take = () => alone(text.reading, async () => {
    show(preview, false);
    show(progress, wanted.length > 0);
    progress.scrollIntoView({ block: 'nearest' });
    bar.max = wanted.length;
    /** @type {string[]} */
    const put = [];
    for (let at = 0; at < wanted.length && !stopped; at += AT_ONCE) {
      bar.value = at;
      await putFromBackup(wanted.slice(at, at + AT_ONCE), put);
    }
    if (stopped) {
      session.ask((seam) => seam.forgetBackup());
      const removed = await removePhotos(put).then(() => true, () => false);
      await lookForStrays();
      return complain(removed ? text.stopped : text.notRemoved);
    }
    // From here on it is one act, which is done at once and can be undone.
    show(progress, false);
    setText(working, text.records);
    await drawn();
    session.send({ do: 'restore-backup', differing: differing.value === 'theirs' ? 'theirs' : 'both' });
    page.go('shelf');
  });

  /**
   * Puts photos of the backup on this device.
   * @param {string[]} names
   * @param {string[]} put where the names go of those that are there
   */
  async function putFromBackup(names, put) {
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

  const write = () => alone(text.writing, async () => {
    const site = new URL('../../', import.meta.url).href;
    const name = `stillroom-${new Date().toISOString().slice(0, 10)}`;
    const names = await namesOfPhotos();
    if (!names) complain(text.noPhotos);
    // What could not be read again is not written.
    const written = session.ask((seam) => seam.writeBackup(site));
    if (written === '') {
      complain(text.tooMuch);
      return;
    }
    if (!names?.length) {
      if (written !== undefined) saveFile(`${name}.json`, [written], 'application/json');
      return;
    }
    try {
      const file = session.ask((seam) => seam.beginBackup(site));
      if (!file) return;
      const pieces = [file.records()];
      for (const each of names) {
        const photo = await getPhoto(each);
        if (photo) pieces.push(file.photo(each, photo.takenAt, new Uint8Array(await photo.blob.arrayBuffer())));
      }
      pieces.push(file.finish());
      saveFile(`${name}.zip`, /** @type {BlobPart[]} */ (pieces), 'application/zip');
    } catch (failure) {
      console.warn(failure);
      complain(text.writingFailed);
    }
  });

  /** @param {string | undefined} sentence */
  function complain(sentence) {
    setText(problem, sentence ?? '');
    show(problem, sentence !== undefined);
  }

  async function lookForStrays() {
    const here = (await namesOfPhotos()) ?? [];
    const view = here.length > 0 ? session.ask((seam) => seam.strayPhotos(here)) : undefined;
    strayNames = view?.names ?? [];
    setText(strayText, view?.text ?? '');
    show(strays, strayNames.length > 0);
  }

  async function removeStrays() {
    await lookForStrays();
    await removePhotos(strayNames);
    await lookForStrays();
  }

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
        button(text.read, () => file.click()),
        file,
      ),
      make('p', { class: 'quiet' }, text.drop),
      working,
      progress,
      problem,
      preview,
      strays,
    ),
    read,
    enter: lookForStrays,
  };
}

/** Fulfilled once what was changed has been drawn, or could have been. */
function drawn() {
  return new Promise((resolve) => setTimeout(resolve, document.hidden ? 0 : 32));
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

/**
 * Hands a file to the browser to keep.
 * @param {string} name
 * @param {BlobPart[]} content
 * @param {string} type
 */
function saveFile(name, content, type) {
  const address = URL.createObjectURL(new Blob(content, { type }));
  const anchor = make('a', { href: address, download: name });
  document.body.append(anchor);
  anchor.click();
  anchor.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/**
 * A name that every file system takes.
 * @param {string} name
 */
function fileName(name) {
  return name.normalize('NFC').replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '').slice(0, 60) || 'formula';
}
