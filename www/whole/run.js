// @ts-check

// Batches: the list, the run with one thing at a time in large type, and the record.

import { arrange, button, make, setText, show } from '../element.js';
import { dress } from './look.js';
import { choiceButton, createCardFields, createCurve, figure, remark } from './card-fields.js';
import { createJournal } from './journal.js';
import { createRecord } from './record.js';
import { runWords as text } from './words-run.js';

/** @typedef {import('../session.js').Session} Session */
/** @typedef {import('../seam/stillroom.js').RunView} RunView */
/** @typedef {import('../seam/stillroom.js').CardView} CardView */
/** @typedef {import('../seam/stillroom.js').TimerView} TimerView */
/** @typedef {import('../seam/stillroom.js').BatchAct} BatchAct */

/** How often a timer is looked at, in milliseconds. */
const TICK = 250;

/**
 * @param {Session} session
 * @param {HTMLElement} place
 */
export function createBatches(session, place) {
  // Figures with their arithmetic look here as they do among the extracts.
  dress([place], 'extract', 'run');
  /** @param {BatchAct} act @param {string} [on] @param {string} [typed] */
  const act = (act, on = '', typed = '') => session.send({ do: 'act-on-batch', act, on, text: typed });

  const offer = button('', () => act('new'), { class: 'main-act offer' });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const empty = make('p', { class: 'quiet', hidden: true }, text.empty);
  const cards = make('ul', { class: 'batch-cards' });
  /**
   * A record holds what cannot be made again: it asks first.
   * @param {{ id: string, name: string }} card
   * @param {HTMLElement} asked where the focus goes back to
   */
  function askToDelete(card, asked) {
    const question = make('div', { class: 'leaving', role: 'alertdialog', 'aria-label': `${text.remove} ${card.name}` },
      make('p', {}, text.deleteRecord),
      make('div', { class: 'acts' },
        button(text.keepRecord, () => {
          question.remove();
          asked.focus();
        }, { class: 'main-act' }),
        button(text.deleteIt, () => {
          question.remove();
          act('delete', card.id);
        })));
    cards.previousElementSibling?.matches('.leaving') && cards.previousElementSibling.remove();
    cards.before(question);
    question.querySelector('button')?.focus();
  }

  const list = make('div', {}, make('h2', {}, text.title), make('p', { class: 'quiet' }, text.intro), make('div', { class: 'acts' }, offer), problem, empty, cards);

  const run = createRun(session, act);
  const record = createRecord(session);
  const journal = createJournal(session);
  const finished = make(
    'article',
    { class: 'finished', hidden: true },
    make(
      'div',
      { class: 'acts no-print' },
      button(text.toList, () => act('close')),
      button(text.print, () => print(), { class: 'main-act' }),
      button(text.takeBackFinish, () => act('take-back'), { class: 'plain' }),
    ),
    record.root,
    journal.root,
  );
  place.append(list, finished, run.root);

  session.listen(({ batches, run: view, journal: seen }) => {
    if (batches) {
      setText(offer, batches.offer);
      show(offer, batches.offer !== '');
      setText(problem, batches.problem);
      show(problem, batches.problem !== '');
      show(empty, batches.cards.length === 0);
      cards.replaceChildren(
        ...batches.cards.map((card) =>
          make(
            'li',
            { class: 'batch-card', 'data-running': String(card.running) },
            make(
              'button',
              { type: 'button', onclick: () => act('open', card.id) },
              make('span', { class: 'card-name' }, card.name),
              make('small', {}, card.about),
              make('b', {}, card.running ? text.resume : text.open),
            ),
            button('×', (event) => {
              if (card.asks) askToDelete(card, /** @type {HTMLElement} */ (event.currentTarget));
              else act('delete', card.id);
            }, { class: 'plain', 'aria-label': `${text.remove} ${card.name}` }),
          ),
        ),
      );
    }
    if (view) {
      const open = view.id !== undefined;
      show(list, !open);
      show(finished, open && view.finished);
      run.show(view);
      if (open && view.finished) record.show(view);
    }
    if (seen) journal.show(seen);
  });

  // Batches are worked out only while somebody looks at them.
  const look = () => {
    act(document.body.dataset.room === 'batches' ? 'look' : 'look-away');
    run.enter();
  };
  addEventListener('hashchange', look);
  return { enter: look };
}

/**
 * @param {Session} session
 * @param {(act: BatchAct, on?: string, typed?: string) => import('../session.js').Update} act
 */
function createRun(session, act) {
  const fields = createCardFields(session, { onEnter: () => goOn() });
  const name = make('span', { class: 'run-name' });
  const progress = make('progress', { 'aria-label': text.done });
  const takeBack = button('↶', () => act('take-back'), { class: 'bar-act' });
  const opener = button('≡', () => toggleList(), { class: 'bar-act', 'aria-label': text.list, 'aria-expanded': 'false' });
  const left = make('p', {});
  /** What is known of keeping. @type {{ state: string, text: string }} */
  let status = { state: 'keeping', text: '' };
  const kept = make('small', { class: 'run-kept', role: 'status' });
  session.listen((update) => {
    if (!update.status) return;
    status = update.status;
    setText(kept, status.state === 'kept' ? status.text : status.state === 'keeping' ? '' : text.notKept);
  });
  const bar = make('header', { class: 'run-bar' }, button('✕', () => askToLeave(), { class: 'bar-act', 'aria-label': text.leave }), make('div', {}, name, kept), takeBack, opener, progress);
  const leaving = make(
    'div',
    { class: 'leaving', role: 'alertdialog', 'aria-label': text.leave, hidden: true },
    left,
    make('div', { class: 'acts' }, button(text.stay, () => show(leaving, false), { class: 'main-act' }), button(text.go, () => leave())),
  );
  const steps = make('ol', { class: 'run-steps' });
  const soFar = make('div', { class: 'so-far' });
  const list = make('div', { class: 'run-list', hidden: true }, steps, make('details', { class: 'scales' }, make('summary', {}, text.showRecord), soFar));
  const warnings = make('div', {});
  const eyebrow = make('p', { class: 'eyebrow' });
  const title = make('h2', { class: 'run-title', tabindex: '-1' });
  const big = make('span', {});
  const unit = make('small', {});
  const number = make('p', { class: 'run-big' }, big, ' ', unit);
  const about = make('ul', { class: 'run-about' });
  const cautions = make('div', { 'aria-live': 'polite' });
  const choices = make('div', { class: 'choices' });
  const figures = make('div', { class: 'figures' });
  const curve = createCurve();
  const timer = createTimer(act);
  const card = make('div', { class: 'run-card' }, warnings, eyebrow, title, number, timer.root, cautions, about, fields.root, choices, curve.root, figures);
  const nextLabel = make('span', {});
  const next = make('button', { type: 'button', class: 'run-next', onclick: () => goOn() }, nextLabel, make('small', { class: 'on-desk' }, text.hint));
  // Trouble lies under a run like everything else: while one is open it stands within.
  const troubles = make('div', {});
  const alerts = document.getElementById('alerts');
  const alertsPlace = document.createComment('alerts');
  alerts?.before(alertsPlace);
  const awake = make('small', { class: 'awake', hidden: true }, text.awake);
  const root = make('div', { class: 'run', hidden: true }, bar, make('div', { class: 'run-body' }, troubles, leaving, list, card, awake), next);
  const light = createWakeLock((on) => show(awake, on));

  /** @type {RunView | undefined} */
  let view;
  let guarded = false;
  const inSight = () => !root.hidden && document.body.dataset.room === 'batches';

  function goOn() {
    if (!view || view.card.next.refused) return;
    const step = view.card.step;
    const { act: what, on, text: fixed } = view.card.next;
    timer.hear();
    // What was typed beside the large area is a reading, too. If it has led on already, there is nothing left to do here.
    if (!fields.keep() || view.card.step !== step) return;
    const { answer } = act(what, on, fixed || fields.typed());
    if (!answer?.error) fields.taken();
  }

  /** Takes in everything that was filled in, before the step is left otherwise. Says whether all of it was understood. */
  function keepTyped() {
    if (!view) return true;
    if (!fields.keep()) return false;
    if (!fields.waits() || view.card.next.refused) return true;
    const { act: what, on } = view.card.next;
    const { answer } = act(what, on, fields.typed());
    if (answer?.error) return false;
    fields.taken();
    return true;
  }

  function placeAlerts() {
    if (!alerts) return;
    if (inSight()) {
      if (alerts.parentElement !== troubles) troubles.append(alerts);
    } else if (alerts.previousSibling !== alertsPlace) {
      alertsPlace.after(alerts);
    }
  }

  function toggleList() {
    const opened = Boolean(list.hidden);
    show(list, opened);
    show(card, !opened);
    opener.setAttribute('aria-expanded', String(opened));
    if (opened && view) soFar.replaceChildren(...view.record.log.map((line) => make('p', { class: line.takenBack ? 'taken-back' : '' }, `${line.time} ${line.text}`)));
  }

  function askToLeave() {
    setText(left, status.state === 'kept' ? text.left : text.leftUnkept);
    show(leaving, true);
    leaving.querySelector('button')?.focus();
  }

  function leave() {
    show(leaving, false);
    if (!keepTyped()) return;
    guarded = false;
    act('close');
  }

  // The phone's back button asks first: a wet finger slips easily. The run is kept either way.
  function guard() {
    if (guarded || !inSight()) return;
    guarded = true;
    history.pushState({ run: true }, '', location.href);
  }
  addEventListener('popstate', () => {
    if (!guarded) return;
    guarded = false;
    if (!inSight()) return;
    guard();
    askToLeave();
  });
  addEventListener('keydown', (event) => {
    if (!inSight() || !leaving.hidden || !list.hidden) return;
    const target = event.target;
    const typing = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
    const pressing = target instanceof HTMLButtonElement || (target instanceof HTMLElement && target.tagName === 'SUMMARY');
    // Foot pedals and presenters send the page keys.
    const pedal = event.key === 'PageDown' || event.key === 'ArrowRight';
    if (typing || (pressing && !pedal)) return;
    if (event.key === ' ' || event.key === 'Enter' || pedal) {
      event.preventDefault();
      goOn();
    }
  });

  return {
    root,
    enter() {
      placeAlerts();
      light.wish(inSight());
      guard();
    },
    /** @param {RunView} shown */
    show(shown) {
      const running = shown.id !== undefined && !shown.finished;
      const moved = running && (view?.card.step !== shown.card.step || view?.id !== shown.id);
      view = running ? shown : undefined;
      show(root, running);
      document.body.classList.toggle('at-bench', running);
      placeAlerts();
      light.wish(running && document.body.dataset.room === 'batches');
      if (!running) {
        guarded = false;
        timer.show(undefined);
        fields.show([]);
        return;
      }
      guard();
      setText(name, `${shown.name} · ${shown.lot}`);
      progress.max = shown.of;
      progress.value = shown.done;
      takeBack.disabled = shown.takeBack === '';
      takeBack.setAttribute('aria-label', `${text.back}: ${shown.takeBack}`);
      takeBack.title = `${text.back}: ${shown.takeBack}`;
      steps.replaceChildren(...shown.steps.map((step) => stepRow(step)));
      warnings.replaceChildren(...(shown.card.kind === 'prepare' ? shown.warnings : []).map(remark));
      showCard(shown.card);
      if (moved) {
        show(list, false);
        show(card, true);
        opener.setAttribute('aria-expanded', 'false');
        card.parentElement?.scrollTo(0, 0);
        if (!card.contains(document.activeElement) || document.activeElement === document.body) title.focus({ preventScroll: true });
      }
    },
  };

  /** @param {RunView['steps'][number]} step */
  function stepRow(step) {
    return make(
      'li',
      { 'data-kind': step.phase, 'data-done': String(step.done) },
      make(
        'button',
        {
          type: 'button',
          'aria-current': step.here && 'step',
          onclick: () => {
            show(list, false);
            show(card, true);
            if (!keepTyped()) return;
            act('focus', step.step);
            show(list, false);
            show(card, true);
            opener.setAttribute('aria-expanded', 'false');
          },
        },
        make('span', { class: 'tick', 'aria-hidden': 'true' }, step.done ? '✓' : ''),
        make('span', {}, step.label, step.done ? make('span', { class: 'unseen' }, ` ${text.done}`) : undefined),
        make('small', { class: 'number' }, step.about),
      ),
    );
  }

  /** @param {CardView} view */
  function showCard(view) {
    root.dataset.kind = view.phase;
    root.dataset.step = view.step;
    setText(eyebrow, view.eyebrow);
    setText(title, view.title);
    setText(big, view.big);
    setText(unit, view.unit);
    show(number, view.big !== '');
    about.replaceChildren(...view.about.map((line) => make('li', {}, line)));
    cautions.replaceChildren(...view.warnings.map(remark));
    fields.show(view.fields);
    choices.replaceChildren(...view.choices.map((choice) => choiceButton(session, choice)));
    figures.replaceChildren(...view.figures.map(figure));
    curve.show(view.curve);
    timer.show(view.timer);
    setText(nextLabel, view.next.label);
    next.disabled = view.next.refused;
  }
}

/**
 * A timer that is looked at while it runs, and heard and felt when it stops.
 * @param {(act: BatchAct, on?: string, typed?: string) => unknown} act
 */
function createTimer(act) {
  const clock = make('p', { class: 'clock', role: 'timer' });
  const bar = make('progress', { max: 100, 'aria-label': text.of });
  const stop = make('p', { class: 'at-stop', role: 'alert' });
  const toggle = button('', () => {
    hear();
    if (view) act(view.running ? 'stop' : 'resume', view.step);
  }, { class: 'main-act' });
  const root = make('div', { class: 'timer', hidden: true }, clock, bar, stop, toggle);
  /** @type {TimerView | undefined} */
  let view;
  /** @type {AudioContext | undefined} */
  let sound;
  /** @type {ReturnType<typeof setInterval> | undefined} */
  let ticking;

  // A browser lets a page be heard only after a tap.
  function hear() {
    try {
      sound ??= new AudioContext();
      void sound.resume();
    } catch {
      // Without sound there is still the screen and the vibration.
    }
  }
  addEventListener('pointerdown', () => {
    if (!root.hidden) hear();
  });

  function call() {
    navigator.vibrate?.([500, 200, 500, 200, 500]);
    if (!sound) return;
    for (const at of [0, 0.35, 0.7]) {
      const tone = sound.createOscillator();
      const volume = sound.createGain();
      tone.frequency.value = 880;
      volume.gain.value = 0.25;
      tone.connect(volume).connect(sound.destination);
      tone.start(sound.currentTime + at);
      tone.stop(sound.currentTime + at + 0.22);
    }
  }

  return {
    root,
    hear,
    /** @param {TimerView | undefined} shown */
    show(shown) {
      const called = view?.running && shown && !shown.running && shown.step === view.step && (shown.over || shown.atPause);
      view = shown;
      show(root, shown !== undefined);
      if (!shown?.running) {
        clearInterval(ticking);
        ticking = undefined;
      } else if (ticking === undefined) {
        ticking = setInterval(() => act('focus', view?.step), TICK);
      }
      if (!shown) return;
      setText(clock, shown.clock);
      bar.value = shown.share;
      setText(stop, shown.over || shown.atPause ? shown.atStop : '');
      setText(toggle, shown.running ? text.timerStop : text.timerResume);
      show(toggle, !shown.over);
      root.classList.toggle('calls', shown.over || shown.atPause);
      if (called) call();
    },
  };
}

/**
 * Keeps the screen on while a run is in sight.
 * @param {(on: boolean) => void} onChange
 */
function createWakeLock(onChange) {
  let wished = false;
  /** @type {WakeLockSentinel | undefined} */
  let lock;
  let asking = false;
  async function ask() {
    if (asking || lock || !wished || document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
    asking = true;
    try {
      lock = await navigator.wakeLock.request('screen');
      lock.addEventListener('release', () => {
        lock = undefined;
        onChange(false);
      });
      onChange(true);
      if (!wished) void lock.release();
    } catch {
      // The battery is low or the browser does not want to: the run goes on, the screen may go dark.
    } finally {
      asking = false;
    }
  }
  // The lock is lost whenever the page is out of sight.
  document.addEventListener('visibilitychange', () => void ask());
  return {
    /** @param {boolean} on */
    wish(on) {
      wished = on;
      if (on) void ask();
      else void lock?.release();
    },
  };
}
