// @ts-check

// Opens the session and the room that the address names, and connects them.

import { make, setText } from './dom/element.js';
import { answerField, dressTemperatures } from './dom/field.js';
import { icon, pin } from './dom/icon.js';
import { translatePage } from './dom/language.js';
import { createAlerts, createNotices, sayBroken } from './dom/notices.js';
import { words } from './dom/words.js';
import { breath, idle } from './moments.js';
import { rest } from './rest.js';
import { createRooms } from './rooms.js';
import { acceptFiles } from './rooms/share/files.js';
import { go, start as follow } from './router.js';
import { Session } from './session.js';
import { watchStorage } from './storage.js';

async function start() {
  translatePage().catch(console.warn);
  const session = await Session.open((problem, broken) => {
    console.error(problem);
    if (broken) sayBroken(words.alerts.broken);
    else say(words.alerts.failed);
  });
  // First of all the fields hear what became of their text, then the rooms show what changed.
  session.listen(dressTemperatures);
  session.listen(answerField);
  const say = createNotices(session);
  const alerts = createAlerts(session);
  createHistory(session);
  markWorst(session);

  const main = /** @type {HTMLElement} */ (document.getElementById('main'));
  const rooms = createRooms(session, main);
  await breath();
  // The session works the shelf out only while somebody looks at it; until told otherwise, somebody does.
  let seesShelf = true;
  await follow(async (place, former) => {
    document.getElementById('opening')?.remove();
    if (seesShelf !== (place === 'shelf')) {
      seesShelf = place === 'shelf';
      session.send({ do: 'look-at-shelf', looking: seesShelf });
    }
    await rooms.enter(place, former);
  });
  document.body.dataset.ready = 'true';

  acceptFiles(async (file) => {
    go('share');
    await (await rooms.open('share'))?.readFile?.(file);
  });
  watchStorage(session, say);
  void session.complete.then(() => {
    document.body.dataset.complete = 'true';
  });
  rest.begin(async () => {
    // What a hand is likely to ask for next, then the checks, then all of it for use without a network.
    await idle();
    await session.desk().catch(console.warn);
    await rooms.fetchAhead(['formula', 'jar', 'bench', 'findings']);
    await idle();
    await session.whole().catch(console.warn);
    await idle();
    const offline = rest.keep({
      onReady: () => say(words.alerts.ready),
      onUpdate: () => alerts.offerUpdate(() => offline.takeOver()),
      onFailure: (failure) => {
        if (failure !== 'unsupported') say(words.alerts.offlineFailed);
      },
    });
  });
}

/** Says at the view of the findings how many there are, and how serious the worst of them is. @param {Session} session */
function markWorst(session) {
  session.listen(({ findings }) => {
    if (!findings) return;
    // While the amounts make no whole nothing is checked, and what was found before is no warning.
    const { worst, items } = findings.waiting ? { worst: '', items: [] } : findings;
    for (const link of document.querySelectorAll('a[data-to="findings"]')) {
      const count = link.querySelector('.count') ?? link.appendChild(make('span', { class: 'count' }));
      if (link.getAttribute('data-worst') !== worst) {
        link.setAttribute('data-worst', worst);
        const grade = words.grades[/** @type {keyof typeof words.grades} */ (worst)];
        count.replaceChildren(
          make('b'),
          ...(grade ? [pin(worst), make('span', { class: 'unseen' }, ` ${grade}`)] : []),
        );
      }
      setText(/** @type {Element} */ (count.firstChild), String(items.length));
    }
  });
}

/** @param {Session} session */
function createHistory(session) {
  /** @param {'undo' | 'redo'} act */
  const key = (act) =>
    make(
      'button',
      { type: 'button', class: 'icon-act', disabled: true, onclick: () => session.send({ do: act }) },
      icon(act),
    );
  const undo = key('undo');
  const redo = key('redo');
  const more = make('a', { class: 'icon-act', href: '#share', 'aria-label': words.rooms.share }, icon('more'));
  document.getElementById('history')?.append(undo, redo, more);
  /** @param {HTMLButtonElement} key @param {string | undefined} act @param {string} nothing */
  const name = (key, act, nothing) => {
    key.disabled = act === undefined;
    key.title = act ?? nothing;
    key.setAttribute('aria-label', act ?? nothing);
  };
  session.listen(({ history }) => {
    if (!history) return;
    name(undo, history.undo, words.nothingToUndo);
    name(redo, history.redo, words.nothingToRedo);
  });
  addEventListener('keydown', (event) => {
    // In a field the browser's own undo takes back letters.
    const typing = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
    if (typing || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
    event.preventDefault();
    session.send({ do: event.shiftKey ? 'redo' : 'undo' });
  });
}

start().catch((problem) => {
  console.error(problem);
  document.getElementById('opening')?.remove();
  sayBroken(words.alerts.cannotOpen);
});
