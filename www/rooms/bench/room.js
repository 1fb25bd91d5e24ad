// @ts-check

// The bench: how large a batch, what to weigh for it, and on which scales.

import { make, show } from '../../dom/element.js';
import { standing } from '../../router.js';
import { createBatch } from './batch.js';
import { createSettings } from './settings.js';
import { createSheet } from './sheet.js';
import { words } from './words.js';

/**
 * @param {HTMLElement} place
 * @param {import('../../session.js').Session} session
 */
export function furnish(place, session) {
  const batch = createBatch(session);
  const sheet = createSheet(session);
  const settings = createSettings(session);
  place.setAttribute('aria-labelledby', 'bench-title');
  place.append(
    make('h2', { id: 'bench-title' }, words.title),
    make('div', { class: 'bench-desk' }, make('div', {}, batch.root, settings.root), sheet.root),
  );
  session.listen(
    (update) => {
      if (update.formula) {
        show(place, update.formula.id !== undefined);
        batch.showUnit(update.formula.massUnit);
        sheet.showFormula(update.formula);
      }
      if (update.settings) {
        batch.showSettings(update.settings);
        settings.show(update.settings);
      }
      if (update.batch) {
        batch.show(update.batch);
        sheet.showBatch(update.batch);
      }
      sheet.showLines(update.lines ?? []);
    },
    () => standing('bench'),
  );
}
