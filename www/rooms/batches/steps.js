// @ts-check

// All steps of a run, and the record so far: shown in place of the card.

import { make, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';
import { words as text } from './words.js';

/** @typedef {import('../../seam/stillroom.js').RunView} RunView */
/** @typedef {RunView['steps'][number]} Step */

/**
 * @param {HTMLElement} opener
 * @param {HTMLElement} card
 * @param {(step: string) => void} onStep
 */
export function createSteps(opener, card, onStep) {
  const steps = make('ol', { class: 'run-steps' });
  const soFar = make('div', { class: 'so-far' });
  const root = make(
    'div',
    { class: 'run-list', hidden: true },
    steps,
    make('details', { class: 'scales' }, make('summary', {}, text.showRecord), soFar),
  );
  /** @type {RunView | undefined} */
  let run;

  /** @param {boolean} opened */
  function open(opened) {
    show(root, opened);
    show(card, !opened);
    opener.setAttribute('aria-expanded', String(opened));
    if (opened && run) keyed(soFar, run.record.log, createLogged);
  }
  opener.setAttribute('aria-expanded', 'false');
  opener.addEventListener('click', () => open(root.hasAttribute('hidden')));

  return {
    root,
    isOpen: () => !root.hidden,
    close: () => open(false),
    /** @param {RunView} view */
    show(view) {
      run = view;
      keyed(
        steps,
        view.steps,
        ({ step }) => createStep(() => onStep(step)),
        ({ step }) => step,
      );
    },
  };
}

function createLogged() {
  const root = make('p');
  return {
    root,
    /** @param {RunView['record']['log'][number]} line */
    show(line) {
      root.className = line.takenBack ? 'taken-back' : '';
      setText(root, `${line.time} ${line.text}`);
    },
  };
}

/** @param {() => void} go */
function createStep(go) {
  const tick = make('span', { class: 'tick', 'aria-hidden': 'true' });
  const label = make('span');
  const done = make('span', { class: 'unseen' }, ` ${text.done}`);
  const about = make('small', { class: 'number' });
  const open = make('button', { type: 'button', onclick: go }, tick, make('span', {}, label, done), about);
  const root = make('li', {}, open);
  return {
    root,
    /** @param {Step} step */
    show(step) {
      root.dataset.kind = step.phase;
      root.dataset.done = String(step.done);
      if (step.here) open.setAttribute('aria-current', 'step');
      else open.removeAttribute('aria-current');
      setText(tick, step.done ? '✓' : '');
      setText(label, step.label);
      show(done, step.done);
      setText(about, step.about);
    },
  };
}
