// @ts-check

// The journal of a batch: what was seen on which day, with photos whose colour is read against a white.

import { button, freshId, make, say, setText, show } from '../../dom/element.js';
import { createFigures } from '../../dom/figures.js';
import { keyed } from '../../dom/list.js';
import { saveFile } from '../../dom/save.js';
import { createCardFields } from './card-fields.js';
import { createColourReader } from './colour.js';
import { createCurve } from './curve.js';
import { getPhoto, paint } from './photos.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').JournalView} JournalView */
/** @typedef {import('../../seam/stillroom.js').EntryView} EntryView */

/** @param {Session} session */
export function createJournal(session) {
  const due = make('ol', { class: 'due' });
  const dayId = freshId();
  const day = make('input', { type: 'date', id: dayId, class: 'date' });
  const dayProblem = make('p', { class: 'message', hidden: true });
  const entries = make('div', { class: 'entries' });
  const figures = createFigures();
  const curve = createCurve();
  const remind = button(text.reminders, () => {
    if (view) saveFile(view.calendarName, [view.calendar], 'text/calendar;charset=utf-8');
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
    figures.root,
    curve.root,
    entries,
    reader.root,
  );
  /** @type {JournalView | undefined} */
  let view;
  let of = '';

  /** @param {string} typed */
  function begin(typed) {
    const { answer } = session.send({ do: 'begin-entry', text: typed });
    say(dayProblem, answer?.error);
    if (answer?.made) entries.querySelector(`[data-entry="${answer.made}"]`)?.scrollIntoView({ block: 'start' });
  }

  return {
    root,
    /** @param {JournalView} journal */
    show(journal) {
      view = journal;
      if (journal.id === undefined) return;
      of = journal.id;
      keyed(due, journal.due, () => createDue(begin));
      figures.show(journal.colour);
      curve.show(journal.curve);
      keyed(
        entries,
        journal.entries,
        ({ entry }) => createEntry(session, entry, `${of}-`, reader),
        ({ entry }) => `${of} ${entry}`,
      );
    },
  };
}

/**
 * A day on which to look.
 * @param {(day: string) => void} begin
 */
function createDue(begin) {
  let day = '';
  const label = make('b');
  const date = make('small');
  const about = make('small');
  const root = make('li', {}, make('button', { type: 'button', onclick: () => begin(day) }, label, date, about));
  return {
    root,
    /** @param {JournalView['due'][number]} view */
    show(view) {
      day = view.day;
      root.dataset.state = view.state;
      setText(label, view.label);
      setText(date, view.date);
      setText(about, view.about);
    },
  };
}

/**
 * @param {Session} session
 * @param {number} key
 * @param {string} photoName how the names of its photos begin
 * @param {ReturnType<typeof createColourReader>} reader
 */
function createEntry(session, key, photoName, reader) {
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
      if (chosen) void reader.read(key, `${photoName}${Date.now().toString(36)}`, chosen);
      file.value = '';
    },
  });
  return {
    root: make(
      'article',
      { class: 'entry', 'data-entry': key },
      make(
        'div',
        { class: 'entry-head' },
        title,
        button('×', () => session.send({ do: 'remove-entry', entry: key }), {
          class: 'plain',
          'aria-label': text.takeOut,
        }),
      ),
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
      keyed(
        photos,
        view.photos,
        (name) => ({ root: thumbnail(name) }),
        (name) => name,
      );
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
