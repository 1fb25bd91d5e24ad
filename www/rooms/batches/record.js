// @ts-check

// The record of a batch, on screen and on paper.

import { make, setText, show } from '../../dom/element.js';
import { createFigures, remarks } from '../../dom/figures.js';
import { texts } from '../../dom/list.js';
import { createCardFields } from './card-fields.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').RunView} RunView */
/** @typedef {import('../../seam/stillroom.js').PairView} PairView */
/** @typedef {import('../../seam/stillroom.js').RecordLine} RecordLine */

/** @param {Session} session */
export function createRecord(session) {
  const title = make('h2', {});
  const head = make('dl', { class: 'pairs' });
  const body = make('tbody', {});
  const wanted = make('td', { class: 'number' });
  const weighed = make('td', { class: 'number' });
  const columns = [text.material, text.lot, text.expiry, text.percent, text.target, text.weighed, text.deviation];
  const table = make(
    'div',
    { class: 'table-scroll', tabindex: '0', role: 'region', 'aria-label': text.materials },
    make(
      'table',
      { class: 'record-table' },
      make('thead', {}, make('tr', {}, ...columns.map((column) => make('th', { scope: 'col' }, column)))),
      body,
      make(
        'tfoot',
        {},
        make('tr', {}, make('th', { scope: 'row', colspan: 4 }, text.total), wanted, weighed, make('td', {})),
      ),
    ),
  );
  const deviations = make('ul', { class: 'remarks' });
  const none = make('p', {}, text.noDeviations);
  const results = make('dl', { class: 'pairs' });
  const composition = make('dl', { class: 'pairs' });
  const compositionPart = part(text.composition, composition);
  const findings = make('div', {});
  const findingsPart = part(text.findings, findings);
  const dates = createFigures('dates');
  const fields = createCardFields(session);
  const log = make('ol', { class: 'log' });
  const signatures = make('div', { class: 'signatures' });
  const cautions = make('ul', { class: 'small-print' });
  const root = make(
    'div',
    { class: 'record sheet' },
    title,
    head,
    part(text.materials, table),
    part(text.deviations, deviations, none),
    part(text.results, results),
    compositionPart,
    findingsPart,
    part(text.dates, dates.root),
    part(text.fields, fields.root),
    part(text.log, log),
    part(text.signatures, signatures),
    cautions,
  );

  return {
    root,
    /** @param {RunView} view */
    show({ name, record }) {
      setText(title, text.record({ name }));
      head.replaceChildren(...pairs(record.head));
      body.replaceChildren(...record.materials.flatMap(row));
      setText(wanted, record.total.label);
      setText(weighed, record.total.value);
      texts(deviations, 'li', record.deviations);
      show(none, record.deviations.length === 0);
      results.replaceChildren(...pairs(record.results));
      composition.replaceChildren(...pairs(record.composition));
      show(compositionPart, record.composition.length > 0);
      remarks(findings, record.findings);
      show(findingsPart, record.findings.length > 0);
      dates.show(record.dates);
      fields.show(record.fields);
      log.replaceChildren(
        ...record.log.map((line) =>
          make(
            'li',
            { class: line.takenBack ? 'taken-back' : '' },
            make('time', {}, line.time),
            make(
              'span',
              {},
              line.text,
              line.takenBack ? make('span', { class: 'unseen' }, ` (${text.takenBack})`) : undefined,
            ),
          ),
        ),
      );
      texts(signatures, 'p', record.signatures);
      texts(cautions, 'li', record.cautions);
    },
  };
}

/** @param {string} heading @param {...Node} content */
function part(heading, ...content) {
  return make('section', { class: 'record-part' }, make('h3', {}, heading), ...content);
}

/** @param {PairView[]} views */
function pairs(views) {
  return views.map((view) => make('div', {}, make('dt', {}, view.label), make('dd', {}, view.value)));
}

/** @param {RecordLine} line */
function row(line) {
  const cells = [line.lot, line.expiry].map((cell) => make('td', {}, cell));
  const numbers = [line.percent, line.target, line.weighed, line.deviation].map((cell) =>
    make('td', { class: 'number' }, cell),
  );
  const shown = make(
    'tr',
    { class: line.odd ? 'odd' : '' },
    make(
      'th',
      { scope: 'row' },
      line.name,
      line.inci && line.inci !== line.name ? make('small', {}, line.inci) : undefined,
    ),
    ...cells,
    ...numbers,
  );
  return line.phase
    ? [make('tr', { class: 'phase-row' }, make('th', { scope: 'rowgroup', colspan: 7 }, line.phase)), shown]
    : [shown];
}
