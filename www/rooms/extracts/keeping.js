// @ts-check

// Whether an extract keeps.

import { draw, make, setText, show } from '../../dom/element.js';
import { texts } from '../../dom/list.js';
import { explained } from '../terms/explained.js';
import { words as text } from './words.js';

/** @typedef {import('./form.js').Form} Form */
/** @typedef {import('../../seam/stillroom.js').ChoiceView} ChoiceView */
/** @typedef {import('../../seam/stillroom.js').ExtractView} ExtractView */

/** @param {Form} form */
export function createKeeping(form) {
  const picture = draw('svg', { viewBox: '0 0 360 470', class: 'keep-scale', role: 'img' });
  const verdict = make('p', { class: 'verdict' });
  const useBy = make('p', { class: 'use-by' });
  const remarks = make('ul', { class: 'remarks' });
  const multiply = createOrganisms(text.multiply);
  const heldBack = createOrganisms(text.heldBack);
  const finding = make('div', { class: 'finding' }, verdict, useBy);
  const root = make(
    'section',
    { class: 'sheet', 'aria-label': text.keeps },
    make('h3', {}, text.keeps),
    finding,
    picture,
    make(
      'div',
      { class: 'grid' },
      form.field('ph', text.ph, { unit: '' }).root,
      form.inSight('preserved', text.preserved, text.preserveds).root,
    ),
    remarks,
    multiply.root,
    heldBack.root,
    explained('water-activity'),
  );
  return {
    root,
    /** @param {ExtractView} view */
    show({ keeping, scale }) {
      show(root, keeping !== undefined);
      if (!keeping || !scale) return;
      setText(verdict, keeping.verdict);
      setText(useBy, keeping.useBy);
      finding.className = `finding ${keeping.tone}`;
      texts(remarks, 'li', keeping.remarks);
      multiply.show(keeping.multiply);
      heldBack.show(keeping.heldBack);
      drawScale(picture, scale);
    },
  };
}

/**
 * How much glycerin there must be for it to keep, and where this one stands.
 * @param {SVGSVGElement} picture
 * @param {NonNullable<ExtractView['scale']>} scale
 */
function drawScale(picture, scale) {
  picture.setAttribute('aria-label', scale.description);
  /** @param {number} at */
  const place = (at) => `${at}%`;
  // Places come ready from the session as percent of this inner drawing's height.
  picture.replaceChildren(
    draw('text', { x: 84, y: 14, class: 'end' }, new Text(text.pure)),
    draw('text', { x: 84, y: 466, class: 'end' }, new Text(text.water)),
    draw(
      'svg',
      { x: 0, y: 24, width: 360, height: 420, overflow: 'visible' },
      draw('rect', { x: 74, y: 0, width: 20, height: '100%', rx: 3, class: 'stem' }),
      draw('rect', { x: 74, y: place(scale.top), width: 20, height: place(scale.height), class: 'band' }),
      ...scale.ticks.map((at) => draw('line', { x1: 86, x2: 94, y1: place(at), y2: place(at), class: 'tick' })),
      ...scale.percents.map((mark) =>
        draw('text', { x: 68, y: place(mark.at), dy: 4, class: 'percent' }, new Text(mark.label)),
      ),
      ...scale.marks.flatMap((mark) => [
        draw('line', {
          x1: 74,
          x2: 112,
          y1: place(mark.at),
          y2: place(mark.at),
          class: mark.criterion ? 'mark criterion' : 'mark',
        }),
        draw(
          'text',
          { x: 116, y: place(mark.at), dy: 4, class: mark.criterion ? 'criterion' : '' },
          new Text(mark.label),
        ),
      ]),
      draw(
        'svg',
        { x: 0, y: place(scale.here.at), overflow: 'visible' },
        draw('path', { d: 'M73 0l-12-8v16z', class: 'here' }),
        draw('text', { x: 58, y: 5, class: 'here' }, new Text(scale.here.label)),
      ),
    ),
  );
}

/** @param {(values: { count: string | number }) => string} title */
function createOrganisms(title) {
  const summary = make('summary', {});
  const list = make('dl', { class: 'organisms' });
  return {
    root: make('details', { class: 'scales' }, summary, list),
    /** @param {ChoiceView[]} organisms */
    show(organisms) {
      setText(summary, title({ count: organisms.length }));
      list.replaceChildren(...organisms.flatMap(({ key, label }) => [make('dt', {}, key), make('dd', {}, label)]));
    },
  };
}
