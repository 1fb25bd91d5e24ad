// @ts-check

// A run: one step at a time over everything else, with one large area that leads on.

import { button, make, setText, show } from '../../dom/element.js';
import { icon } from '../../dom/icon.js';
import { keyed } from '../../dom/list.js';
import { guardBack, inSight } from '../../router.js';
import { createWakeLock } from './awake.js';
import { createCard } from './card.js';
import { createSteps } from './steps.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').ChoiceAct} ChoiceAct */
/** @typedef {import('../../seam/stillroom.js').Command} Command */
/** @typedef {import('../../seam/stillroom.js').RunView} RunView */

/** @param {Session} session */
export function createRun(session) {
  /** @type {RunView | undefined} */
  let view;
  const card = createCard(session, goOn);
  const opener = make('button', { type: 'button', class: 'icon-act', 'aria-label': text.list }, icon('formula'));
  const steps = createSteps(opener, card.root, goTo);
  const leaving = createLeaving(leave);
  const bar = createBar(session, opener, () => leaving.ask(bar.isKept()));
  const nextLabel = make('span');
  const next = make(
    'button',
    { type: 'button', class: 'run-next', onclick: goOn },
    nextLabel,
    make('small', { class: 'on-desk' }, text.hint),
  );
  const troubles = createTroubles();
  const awake = make('small', { class: 'awake', hidden: true }, text.awake);
  const body = make('div', { class: 'run-body' }, troubles.root, leaving.root, bar.cells, steps.root, card.root, awake);
  const root = make('div', { class: 'run', hidden: true }, bar.root, body, make('div', { class: 'slab' }, next));
  const light = createWakeLock((on) => show(awake, on));
  const isInSight = () => !root.hidden && inSight('batches');
  // The phone's back button asks first: a wet finger slips easily. The run is kept either way.
  const guard = guardBack(isInSight, () => leaving.ask(bar.isKept()));

  function goOn() {
    if (!view || view.card.next.refused) return;
    const { step, next } = view.card;
    card.timer.hear();
    // What was typed beside the large area is a reading, too. If it has led on already, there is nothing left to do here.
    if (!card.fields.keep() || view.card.step !== step) return;
    const { answer } = sendNext(next);
    if (!answer?.error) card.fields.taken();
  }

  /**
   * Does what the large area says, with what was typed beside it.
   * @param {ChoiceAct} next
   */
  function sendNext({ command }) {
    if (!command) return {};
    return session.send(/** @type {Command} */ ({ ...command, ...card.fields.typed() }));
  }

  /** Takes in everything that was filled in, before the step is left otherwise. Says whether all of it was understood. */
  function keepTyped() {
    if (!view) return true;
    if (!card.fields.keep()) return false;
    if (!card.fields.waits() || view.card.next.refused) return true;
    const { answer } = sendNext(view.card.next);
    if (answer?.error) return false;
    card.fields.taken();
    return true;
  }

  /** @param {string} step */
  function goTo(step) {
    steps.close();
    if (!keepTyped()) return;
    session.send({ do: 'look-at-step', step });
    steps.close();
  }

  function leave() {
    if (!keepTyped()) return;
    guard.letGo();
    session.send({ do: 'close-batch' });
  }

  /** What follows from whether the run is in sight. */
  function look() {
    troubles.place(isInSight());
    light.wish(isInSight());
    guard.hold();
  }

  addEventListener('keydown', (event) => {
    if (isInSight() && !leaving.isAsking() && !steps.isOpen() && leadsOn(event)) {
      event.preventDefault();
      goOn();
    }
  });

  return {
    root,
    look,
    /** @param {RunView} shown */
    show(shown) {
      const isRunning = shown.id !== undefined && !shown.finished;
      const hasMoved = isRunning && (view?.card.step !== shown.card.step || view?.id !== shown.id);
      view = isRunning ? shown : undefined;
      show(root, isRunning);
      document.body.classList.toggle('at-bench', isRunning);
      look();
      if (!isRunning) {
        guard.letGo();
        card.clear();
        return;
      }
      bar.show(shown);
      steps.show(shown);
      root.dataset.kind = shown.card.phase;
      root.dataset.step = shown.card.step;
      card.show(shown);
      setText(nextLabel, shown.card.next.label);
      next.disabled = shown.card.next.refused;
      if (hasMoved) {
        steps.close();
        card.focus();
      }
    },
  };
}

/** Whether a key leads on, as the large area does. @param {KeyboardEvent} event */
function leadsOn({ target, key }) {
  const isTyping =
    target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
  const isPressing =
    target instanceof HTMLButtonElement || (target instanceof HTMLElement && target.tagName === 'SUMMARY');
  // Foot pedals and presenters send the page keys.
  const isPedal = key === 'PageDown' || key === 'ArrowRight';
  if (isTyping || (isPressing && !isPedal)) return false;
  return key === ' ' || key === 'Enter' || isPedal;
}

/**
 * The bar at the head: leaving, what is made, whether it is kept, taking back, all steps.
 * @param {Session} session
 * @param {HTMLElement} opener
 * @param {() => void} onLeave
 */
function createBar(session, opener, onLeave) {
  const name = make('span', { class: 'run-name' });
  const kept = make('small', { class: 'run-kept', role: 'status' });
  const progress = make('progress', { class: 'unseen', 'aria-label': text.done });
  const takeBack = make(
    'button',
    { type: 'button', class: 'icon-act', onclick: () => session.send({ do: 'take-back' }) },
    icon('undo'),
  );
  const close = make(
    'button',
    { type: 'button', class: 'icon-act', 'aria-label': text.leave, onclick: onLeave },
    icon('close'),
  );
  const cells = make('div', { class: 'cells', 'aria-hidden': 'true' });
  let state = 'keeping';
  session.listen(({ status }) => {
    if (!status) return;
    state = status.state;
    setText(kept, state === 'kept' ? status.text : state === 'keeping' ? '' : text.notKept);
  });
  return {
    root: make('header', { class: 'run-bar' }, close, make('div', {}, name, kept), takeBack, opener, progress),
    cells,
    isKept: () => state === 'kept',
    /** @param {RunView} view */
    show(view) {
      setText(name, `${view.name} · ${view.lot}`);
      progress.max = view.of;
      progress.value = view.done;
      keyed(cells, view.steps, () => {
        const cell = make('i');
        return { root: cell, show: ({ done, here }) => void (cell.className = here ? 'here' : done ? 'done' : '') };
      });
      takeBack.disabled = view.takeBack === '';
      takeBack.title = text.back({ act: view.takeBack });
      takeBack.setAttribute('aria-label', takeBack.title);
    },
  };
}

/** Asks before the run is left. @param {() => void} leave */
function createLeaving(leave) {
  const said = make('p');
  const stay = button(text.stay, () => show(root, false), { class: 'main-act' });
  const go = button(text.go, () => {
    show(root, false);
    leave();
  });
  const root = make(
    'div',
    { class: 'leaving', role: 'alertdialog', 'aria-label': text.leave, hidden: true },
    said,
    make('div', { class: 'acts' }, stay, go),
  );
  return {
    root,
    isAsking: () => !root.hidden,
    /** @param {boolean} isKept */
    ask(isKept) {
      setText(said, isKept ? text.left : text.leftUnkept);
      show(root, true);
      stay.focus();
    },
  };
}

/** Trouble lies under a run like everything else: while one is open it stands within. */
function createTroubles() {
  const root = make('div');
  const alerts = document.getElementById('alerts');
  const home = document.createComment('alerts');
  alerts?.before(home);
  return {
    root,
    /** @param {boolean} isInSight */
    place(isInSight) {
      if (!alerts) return;
      if (isInSight) {
        if (alerts.parentElement !== root) root.append(alerts);
      } else if (alerts.previousSibling !== home) {
        home.after(alerts);
      }
    },
  };
}
