// @ts-check

// Opens the session and the rooms, and connects them.

import { button, make, setText, show } from './element.js';
import { answerField } from './field.js';
import { registerOffline } from './offline.js';
import { createAlerts, createNotices, sayBroken } from './parts/notices.js';
import { createPicker } from './parts/picker.js';
import { createBench } from './rooms/bench.js';
import { createFormula } from './rooms/formula.js';
import { createJar } from './rooms/jar.js';
import { createRooms, wide } from './rooms/rooms.js';
import { createShelf } from './rooms/shelf.js';
import { Session } from './session.js';
import { words } from './words.js';

async function start() {
  const session = await Session.open((problem, broken) => {
    console.error(problem);
    if (broken) sayBroken(words.alerts.broken);
    else say(words.alerts.failed);
  });
  // First of all the fields hear what became of their text, then the rooms show what changed.
  session.listen(answerField);
  const say = createNotices(session);
  const alerts = createAlerts(session);
  createHistory(session);
  const ask = createPicker(session);
  const rooms = createRooms((room) => {
    look(room);
    void entered.get(room)?.();
  });
  const { go } = rooms;
  /** What is worked out only while somebody looks at it. @param {string} room */
  function look(room) {
    session.send({ do: 'look-at-shelf', looking: room === 'shelf' });
    session.send({ do: 'look-at-extracts', looking: room === 'extracts' });
  }

  /** What to do when a room is entered. @type {Map<string, () => Promise<void>>} */
  const entered = new Map();

  /**
   * What lies beyond the main job: script and whole seam are fetched when it is first asked for.
   * @param {HTMLElement} place where it says so while it is fetched, or that it could not be
   * @param {() => Promise<() => { enter?: () => void } | void>} fetchRoom fulfilled with what furnishes the place
   * @param {string} notFetched
   */
  function later(place, fetchRoom, notFetched = words.notFetched) {
    const opening = make('p', { class: 'opening' }, words.opening);
    place.append(opening);
    /** @type {Promise<{ enter?: () => void }> | undefined} */
    let furnished;
    const fetchNow = async () => {
      setText(opening, words.opening);
      const [furnish] = await Promise.all([fetchRoom(), session.whole()]);
      opening.remove();
      const room = furnish() ?? {};
      // The whole seam has taken the place of the first, and nobody has told it yet where the person is.
      look(document.body.dataset.room ?? '');
      session.introduce();
      return room;
    };
    const enter = async () => {
      try {
        furnished ??= fetchNow();
        (await furnished).enter?.();
      } catch (problem) {
        console.warn(problem);
        furnished = undefined;
        show(place, true);
        opening.replaceChildren(notFetched, ' ', button(words.again, again));
      }
    };
    // A browser may not ask twice for a module that failed to arrive: where there is a network, the page loads once more.
    const again = async () => {
      const { ok } = await fetch(document.baseURI, { cache: 'no-store' }).catch(() => ({ ok: false }));
      if (ok) location.reload();
      else await enter();
    };
    return enter;
  }

  /**
   * @param {string} name
   * @param {() => Promise<(place: HTMLElement) => { enter?: () => void }>} fetchRoom
   */
  function laterRoom(name, fetchRoom) {
    const place = make('section', { class: 'room', 'data-room': name });
    entered.set(name, later(place, async () => {
      const furnish = await fetchRoom();
      return () => furnish(place);
    }));
    return place;
  }
  const materials = laterRoom('materials', async () => {
    const { createMaterials } = await import('./whole/materials.js');
    return (place) => createMaterials(session, { ask }, place);
  });
  const extracts = laterRoom('extracts', async () => {
    const { createExtracts } = await import('./whole/extract.js');
    return (place) => createExtracts(session, { ask }, place);
  });
  const batches = laterRoom('batches', async () => {
    const { createBatches } = await import('./whole/run.js');
    return (place) => createBatches(session, place);
  });

  const findings = make('section', { class: 'room sheet', 'data-room': 'findings', 'aria-labelledby': 'findings-title' },
    make('h2', { id: 'findings-title' }, words.findings));
  const checks = later(findings, async () => {
    const { createFindings } = await import('./whole/findings.js');
    return () => createFindings(session, findings);
  });

  const main = /** @type {HTMLElement} */ (document.getElementById('main'));
  main.replaceChildren(
    createShelf(session, go),
    materials,
    extracts,
    batches,
    make('div', { class: 'desk' }, createFormula(session, { go, ask }), createJar(session), createBench(session, { ask }), findings),
  );
  placeFindings(findings);
  document.body.dataset.ready = 'true';
  session.showEverything();
  rooms.enter();
  // The checks, sharing and the rest come once the main job can be done. Whoever came by a link waits for it in sight.
  const more = make('div', { class: 'alert note', role: 'status', hidden: document.body.dataset.room !== 'reading' });
  document.getElementById('alerts')?.append(more);
  void later(more, async () => {
    const { addMore } = await import('./whole/more.js');
    return () => {
      more.remove();
      addMore(session, { go, say });
    };
  }, words.moreNotFetched)();
  void checks();

  const offline = registerOffline({
    onReady: () => say(words.alerts.ready),
    onUpdate: () => alerts.offerUpdate(() => offline.takeOver()),
    onFailure: (failure) => {
      if (failure !== 'unsupported') say(words.alerts.offlineFailed);
    },
  });
}

/** On a wide screen the findings stand under the jar, on a phone in a room of their own. @param {HTMLElement} findings */
function placeFindings(findings) {
  const place = () => document.querySelector(wide.matches ? '.after-jar' : '.desk')?.append(findings);
  wide.addEventListener('change', place);
  place();
}

/** @param {Session} session */
function createHistory(session) {
  const undo = button('↶', () => session.send({ do: 'undo' }), { disabled: true });
  const redo = button('↷', () => session.send({ do: 'redo' }), { disabled: true });
  document.getElementById('history')?.append(undo, redo);
  session.listen(({ history }) => {
    if (!history) return;
    undo.disabled = history.undo === undefined;
    redo.disabled = history.redo === undefined;
    for (const [key, label] of /** @type {const} */ ([[undo, history.undo ?? words.nothingToUndo], [redo, history.redo ?? words.nothingToRedo]])) {
      key.title = label;
      key.setAttribute('aria-label', label);
    }
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
