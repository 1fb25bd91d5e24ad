// @ts-check

// The journal of a batch: what was seen on which day, with photos whose colour is read against a white.

import { arrange, button, freshId, make, setText, show } from '../element.js';
import { createCardFields, createCurve, figure, saveFile } from './card-fields.js';
import { getPhoto, paint, putPhoto, removePhotos, shrinkPhoto } from './photos.js';
import { runWords as text } from './words-run.js';

/** @typedef {import('../session.js').Session} Session */
/** @typedef {import('../seam/stillroom.js').JournalView} JournalView */
/** @typedef {import('../seam/stillroom.js').EntryView} EntryView */

/** Half the side of the patch that is read around a tap, in pixels of the photo. */
const PATCH = 8;

/** @param {Session} session */
export function createJournal(session) {
  const due = make('ol', { class: 'due' });
  const dayId = freshId();
  const day = make('input', { type: 'date', id: dayId, class: 'date' });
  const dayProblem = make('p', { class: 'message', hidden: true });
  const entries = make('div', { class: 'entries' });
  const figures = make('div', { class: 'figures' });
  const curve = createCurve();
  const remind = button(text.reminders, () => {
    if (view) saveFile(view.calendarName, view.calendar, 'text/calendar;charset=utf-8');
  });
  const reader = createColourReader(session);
  const root = make(
    'section',
    { class: 'journal sheet no-print' },
    make('h2', {}, text.journal),
    make('p', { class: 'quiet' }, text.journalIntro),
    due,
    make(
      'div',
      { class: 'row' },
      button(text.lookToday, () => begin(''), { class: 'main-act' }),
      make('div', { class: 'field' }, make('label', { for: dayId }, text.onDay), day, dayProblem),
      button(text.write, () => begin(day.value)),
      remind,
    ),
    figures,
    curve.root,
    entries,
    reader.root,
  );
  /** @type {JournalView | undefined} */
  let view;
  let of = '';
  /** @type {Map<string, ReturnType<typeof createEntry>>} */
  const shown = new Map();

  /** @param {string} typed */
  function begin(typed) {
    const { answer } = session.send({ do: 'act-on-batch', act: 'entry-new', on: '', text: typed });
    setText(dayProblem, answer?.error ?? '');
    show(dayProblem, Boolean(answer?.error));
    if (answer?.made) entries.querySelector(`[data-entry="${answer.made}"]`)?.scrollIntoView({ block: 'center' });
  }

  return {
    root,
    /** @param {JournalView} journal */
    show(journal) {
      view = journal;
      if (journal.id === undefined) return;
      if (of !== journal.id) {
        of = journal.id;
        shown.clear();
      }
      due.replaceChildren(
        ...journal.due.map((each) =>
          make('li', { 'data-state': each.state },
            make('button', { type: 'button', onclick: () => begin(each.day) },
              make('b', {}, each.label), make('small', {}, each.date), make('small', {}, each.about)))),
      );
      figures.replaceChildren(...journal.colour.map(figure));
      curve.show(journal.curve);
      arrange(
        entries,
        journal.entries.map((each) => {
          const key = String(each.entry);
          let entry = shown.get(key);
          if (!entry) {
            entry = createEntry(session, key, (file) => reader.read(key, `${of}-${Date.now().toString(36)}`, file));
            shown.set(key, entry);
          }
          entry.show(each);
          return entry.root;
        }),
      );
    },
  };
}

/**
 * @param {Session} session
 * @param {string} key
 * @param {(file: File) => void} onPhoto
 */
function createEntry(session, key, onPhoto) {
  const title = make('h3', {});
  const fields = createCardFields(session);
  const swatch = make('span', { class: 'swatch', hidden: true });
  const colour = make('span', {});
  const photos = make('div', { class: 'photos' });
  const fileId = freshId();
  const file = make('input', {
    type: 'file',
    id: fileId,
    accept: 'image/*',
    class: 'unseen',
    onchange: () => {
      const chosen = file.files?.[0];
      if (chosen) onPhoto(chosen);
      file.value = '';
    },
  });
  let drawn = '';
  return {
    root: make(
      'article',
      { class: 'entry', 'data-entry': key },
      make('div', { class: 'entry-head' }, title, button('×', () => session.send({ do: 'act-on-batch', act: 'entry-remove', on: key, text: '' }), { class: 'plain', 'aria-label': text.takeOut })),
      make('p', { class: 'entry-colour' }, swatch, colour),
      photos,
      make('label', { for: fileId, class: 'photo-label' }, text.addPhoto),
      file,
      make('p', { class: 'quiet' }, text.photoHelp),
      fields.root,
    ),
    /** @param {EntryView} view */
    show(view) {
      setText(title, view.title);
      fields.show(view.fields);
      setText(colour, view.colour);
      show(swatch, view.swatch !== '');
      swatch.style.setProperty('--swatch', view.swatch);
      if (drawn !== view.photos.join()) {
        drawn = view.photos.join();
        photos.replaceChildren(...view.photos.map(thumbnail));
      }
    },
  };
}

/** @param {string} name */
function thumbnail(name) {
  const place = make('div', { class: 'photo' });
  getPhoto(name)
    .then(async (photo) => {
      if (!photo) throw new Error(name);
      const canvas = paint(await createImageBitmap(photo.blob));
      canvas.setAttribute('role', 'img');
      canvas.setAttribute('aria-label', text.photoOf);
      place.append(canvas);
    })
    .catch(() => place.append(make('p', { class: 'quiet' }, text.noPhoto)));
  return place;
}

/**
 * A photo on which first the white and then the product are tapped.
 * @param {Session} session
 */
function createColourReader(session) {
  const hint = make('p', { class: 'reader-hint', role: 'status' });
  const problem = make('p', { class: 'message', hidden: true });
  const stage = make('div', { class: 'reader-stage' });
  const root = make(
    'dialog',
    { class: 'reader', 'aria-label': text.colour },
    hint,
    problem,
    stage,
    make('div', { class: 'acts' }, button(text.again, () => start()), button(text.close, () => root.close(), { class: 'main-act' })),
  );
  /** @type {Uint8Array | undefined} */
  let white;
  let entry = '';

  function start() {
    white = undefined;
    setText(hint, text.tapWhite);
    show(problem, false);
  }

  /** @param {HTMLCanvasElement} canvas @param {PointerEvent} event */
  function patchAt(canvas, event) {
    const box = canvas.getBoundingClientRect();
    const x = Math.round(((event.clientX - box.left) * canvas.width) / box.width) - PATCH;
    const y = Math.round(((event.clientY - box.top) * canvas.height) / box.height) - PATCH;
    const inside = (/** @type {number} */ at, /** @type {number} */ size) => Math.max(0, Math.min(at, size - 2 * PATCH - 1));
    const pixels = canvas.getContext('2d')?.getImageData(inside(x, canvas.width), inside(y, canvas.height), 2 * PATCH + 1, 2 * PATCH + 1);
    return new Uint8Array(pixels?.data.buffer ?? new ArrayBuffer(0));
  }

  return {
    root,
    /** @param {string} of @param {string} name @param {File} file */
    async read(of, name, file) {
      entry = of;
      start();
      stage.replaceChildren();
      root.showModal();
      try {
        const { canvas, blob } = await shrinkPhoto(file);
        await putPhoto(name, blob);
        const refused = session.send({ do: 'act-on-batch', act: 'entry-photo', on: entry, text: name }).answer?.error;
        if (refused) {
          await removePhotos([name]);
          setText(hint, '');
          setText(problem, refused);
          show(problem, true);
          return;
        }
        canvas.addEventListener('click', (event) => {
          const patch = patchAt(canvas, /** @type {PointerEvent} */ (event));
          if (!white) {
            white = patch;
            setText(hint, text.tapProduct);
            return;
          }
          const paper = white;
          const answer = session.act((seam) => seam.readColour(entry, patch, paper)).answer;
          setText(problem, answer?.error ?? '');
          show(problem, Boolean(answer?.error));
          if (answer?.error) setText(hint, text.tapWhite), (white = undefined);
          else root.close();
        });
        stage.replaceChildren(canvas);
      } catch (failure) {
        console.warn(failure);
        setText(problem, text.photoFailed);
        show(problem, true);
      }
    },
  };
}
