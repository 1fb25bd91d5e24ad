// @ts-check

// Work on a file: one at a time, with how far it is, a way to stop, and what went wrong.

import { button, make, say, setText, show } from '../../dom/element.js';
import { words } from './words.js';

const text = words.backup;

export function createWork() {
  const doing = make('p', { class: 'quiet', role: 'status' });
  const bar = make('progress', { max: 1, value: 0, 'aria-label': text.progress });
  const progress = make(
    'div',
    { class: 'restoring', hidden: true },
    bar,
    button(text.stop, () => {
      isStopped = true;
    }),
  );
  const problem = make('p', { class: 'message', role: 'alert', hidden: true });
  let isBusy = false;
  let isStopped = false;
  // Whoever leaves in the middle is asked first; what was put here by then is offered for removal the next time.
  const stay = (/** @type {Event} */ event) => event.preventDefault();

  return {
    parts: [doing, progress, problem],
    problem,
    /**
     * Does one thing with a file, unless another is being done.
     * @param {string} what
     * @param {() => Promise<void>} act
     */
    async alone(what, act) {
      if (isBusy) return say(problem, text.busy);
      isBusy = true;
      isStopped = false;
      say(problem, undefined);
      setText(doing, what);
      addEventListener('beforeunload', stay);
      try {
        await act();
      } finally {
        isBusy = false;
        setText(doing, '');
        show(progress, false);
        removeEventListener('beforeunload', stay);
      }
    },
    /** @param {string | undefined} sentence */
    complain: (sentence) => say(problem, sentence),
    /**
     * Goes on to what can no longer be stopped; fulfilled once that has been drawn, or could have been.
     * @param {string} what
     */
    async goOn(what) {
      show(progress, false);
      setText(doing, what);
      await drawn();
    },
    isStopped: () => isStopped,
    /** Says how far it is. @param {number} done @param {number} of */
    reach(done, of) {
      bar.max = of;
      bar.value = done;
      if (progress.hidden && of > 0) {
        show(progress, true);
        progress.scrollIntoView({ block: 'nearest' });
      }
    },
  };
}

/** Fulfilled once what was changed has been drawn, or could have been. */
export function drawn() {
  return new Promise((resolve) => setTimeout(resolve, document.hidden ? 0 : 32));
}
