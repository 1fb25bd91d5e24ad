// @ts-check

// The card of a step: what to do now, in large type, with the fields, choices, figures, timer and curve it needs. It is
// drawn without knowing which step it is.

import { make, setText, show } from '../../dom/element.js';
import { createFigures, remarks } from '../../dom/figures.js';
import { keyed, texts } from '../../dom/list.js';
import { createCardFields } from './card-fields.js';
import { createChoice } from './choice.js';
import { createCurve } from './curve.js';
import { createTimer } from './timer.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').CardView} CardView */
/** @typedef {import('../../seam/stillroom.js').RunView} RunView */

/** Steps that are shown around the one in hand. */
const AHEAD = 6;

/**
 * @param {Session} session
 * @param {() => void} goOn what the enter key does in a field that goes along with the large area
 */
export function createCard(session, goOn) {
  const fields = createCardFields(session, { onEnter: goOn });
  const warnings = make('div');
  const eyebrow = make('p', { class: 'eyebrow' });
  const title = make('h2', { class: 'run-title', tabindex: '-1' });
  const big = make('span');
  const unit = make('small');
  const number = make('p', { class: 'run-big plate' }, big, ' ', unit);
  const about = make('ul', { class: 'run-about' });
  const cautions = make('div', { class: 'card-cautions', 'aria-live': 'polite' });
  const ahead = make('ol', { class: 'ahead', 'aria-label': text.ahead.title });
  const choices = make('div', { class: 'choices' });
  const figures = createFigures();
  const curve = createCurve();
  const timer = createTimer(session);
  const root = make(
    'div',
    { class: 'run-card' },
    make(
      'div',
      { class: 'run-main' },
      warnings,
      eyebrow,
      title,
      number,
      timer.root,
      about,
      fields.root,
      curve.root,
      figures.root,
    ),
    make('div', { class: 'run-side' }, cautions, choices, ahead),
  );
  return {
    root,
    fields,
    timer,
    /** Puts the focus on the title, unless it is on a part of the card that is still there. */
    focus() {
      root.parentElement?.scrollTo(0, 0);
      if (!root.contains(document.activeElement) || document.activeElement === document.body) {
        title.focus({ preventScroll: true });
      }
    },
    /** @param {RunView} run */
    show({ card, warnings: ofTheRun, steps }) {
      remarks(warnings, card.kind === 'prepare' ? ofTheRun : []);
      setText(eyebrow, card.eyebrow);
      setText(title, card.title);
      setText(big, card.big);
      setText(unit, card.unit);
      // The longer it is, the smaller it stands: the plate is as wide as the hand's screen.
      number.dataset.long = card.big.length > 7 ? 'very' : card.big.length > 5 ? 'yes' : '';
      show(number, card.big !== '');
      texts(about, 'li', card.about);
      remarks(cautions, card.warnings);
      fields.show(card.fields);
      keyed(
        choices,
        card.choices,
        () => createChoice(session),
        ({ label, command }) => `${card.step} ${command ? JSON.stringify(command) : label}`,
      );
      figures.show(card.figures);
      curve.show(card.curve);
      timer.show(card.timer);
      const here = steps.findIndex((step) => step.here);
      const from = Math.max(0, here - 1);
      keyed(
        ahead,
        steps.slice(from, from + AHEAD).map((step, at) => ({ step, after: from + at - here })),
        createAhead,
      );
    },
    /** Nothing is to be done any more. */
    clear() {
      timer.show(undefined);
      fields.show([]);
    },
  };
}

/** A step before, at or after the one in hand. */
function createAhead() {
  const when = make('span');
  const label = make('span');
  const about = make('b', { class: 'number' });
  const root = make('li', {}, when, label, about);
  return {
    root,
    /** @param {{ step: RunView['steps'][number], after: number }} shown */
    show({ step, after }) {
      const word = after < 0 ? 'done' : after === 0 ? 'now' : after === 1 ? 'next' : 'later';
      root.dataset.when = word;
      setText(when, word === 'later' ? '' : text.ahead[word]);
      setText(label, step.label);
      setText(about, step.about);
    },
  };
}
