// @ts-check

// Opens the session and the rooms, and connects them.

import { button, make } from './element.js';
import { answerField } from './field.js';
import { registerOffline } from './offline.js';
import { createAlerts, createNotices, sayBroken } from './parts/notices.js';
import { createPicker } from './parts/picker.js';
import { createBench } from './rooms/bench.js';
import { createFormula } from './rooms/formula.js';
import { createJar } from './rooms/jar.js';
import { createRooms } from './rooms/rooms.js';
import { createShelf } from './rooms/shelf.js';
import { Session } from './session.js';
import { words } from './words.js';

async function start() {
  const session = await Session.open((problem) => {
    console.error(problem);
    sayBroken(words.alerts.broken);
  });
  // First of all the fields hear what became of their text, then the rooms show what changed.
  session.listen(answerField);
  const say = createNotices(session);
  const alerts = createAlerts(session);
  createHistory(session);
  const ask = createPicker(session);
  const rooms = createRooms((room) => {
    session.send({ do: 'look-at-shelf', looking: room === 'shelf' });
    if (room === 'materials') void enterMaterials();
  });
  const { go } = rooms;
  const materialsPlace = make('section', { class: 'room', 'data-room': 'materials' }, make('p', { class: 'opening' }, words.opening));
  /** @type {ReturnType<typeof import('./whole/materials.js').createMaterials> | undefined} */
  let materials;

  /** A room beyond the main job: its script and the whole seam are fetched when it is first entered. */
  async function enterMaterials() {
    const [room] = await Promise.all([import('./whole/materials.js'), session.whole()]);
    if (!materials) {
      materials = room.createMaterials(session, { ask });
      materialsPlace.replaceChildren(materials.root);
      session.showEverything();
    }
    materials.enter();
  }

  const main = /** @type {HTMLElement} */ (document.getElementById('main'));
  main.replaceChildren(
    createShelf(session, go),
    materialsPlace,
    make('div', { class: 'desk' }, createFormula(session, { go, ask }), createJar(session), createBench(session, { ask })),
  );
  document.body.dataset.ready = 'true';
  session.showEverything();
  rooms.enter();

  const offline = registerOffline({
    onReady: () => say(words.alerts.ready),
    onUpdate: () => alerts.offerUpdate(() => offline.takeOver()),
    onFailure: (failure) => {
      if (failure !== 'unsupported') say(words.alerts.offlineFailed);
    },
  });
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
  sayBroken(words.alerts.cannotOpen);
});
