// @ts-check

// A timer that is looked at while it runs, and heard and felt when it stops.

import { button, make, setText, show } from '../../dom/element.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').TimerView} TimerView */

/** How often it is looked at, in milliseconds. */
const TICK = 250;

/** @param {Session} session */
export function createTimer(session) {
  const clock = make('p', { class: 'clock', role: 'timer' });
  const bar = make('progress', { max: 100, 'aria-label': text.of });
  const stop = make('p', { class: 'at-stop', role: 'alert' });
  const toggle = button(
    '',
    () => {
      bell.wake();
      if (view) session.send({ do: view.running ? 'stop-timer' : 'resume-timer', step: view.step });
    },
    { class: 'main-act' },
  );
  const root = make('div', { class: 'timer', hidden: true }, clock, bar, stop, toggle);
  /** @type {TimerView | undefined} */
  let view;
  /** @type {ReturnType<typeof setInterval> | undefined} */
  let ticking;
  const bell = createBell();
  addEventListener('pointerdown', () => {
    if (!root.hidden) bell.wake();
  });

  return {
    root,
    /** Somebody tapped: from now on the page may be heard. */
    hear: bell.wake,
    /** @param {TimerView | undefined} shown */
    show(shown) {
      const hasEnded = view?.running && shown && !shown.running && shown.step === view.step;
      const called = hasEnded && (shown.over || shown.atPause);
      view = shown;
      show(root, shown !== undefined);
      if (!shown?.running) {
        clearInterval(ticking);
        ticking = undefined;
      } else if (ticking === undefined) {
        ticking = setInterval(() => session.send({ do: 'look-at-step', step: view?.step }), TICK);
      }
      if (!shown) return;
      setText(clock, shown.clock);
      bar.value = shown.share;
      setText(stop, shown.over || shown.atPause ? shown.atStop : '');
      setText(toggle, shown.running ? text.timerStop : text.timerResume);
      show(toggle, !shown.over);
      root.classList.toggle('calls', shown.over || shown.atPause);
      if (called) bell.ring();
    },
  };
}

/** Three tones, and a phone that shakes. A browser lets a page be heard only after a tap, which wakes it. */
function createBell() {
  /** @type {AudioContext | undefined} */
  let sound;
  return {
    wake() {
      try {
        sound ??= new AudioContext();
        void sound.resume();
      } catch {
        // Without sound there is still the screen and the vibration.
      }
    },
    ring() {
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
    },
  };
}
