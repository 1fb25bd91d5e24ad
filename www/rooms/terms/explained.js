// @ts-check

// Words of the trade explained where they stand: shut until somebody opens them.

import { make, setText } from '../../dom/element.js';
import { words as common } from '../../dom/words.js';

/** @param {...import('./room.js').Term} terms the words that stand nearby */
export function explained(...terms) {
  const place = make('div', {});
  const root = make('details', { class: 'explained' }, make('summary', {}, common.plainWords), place);
  root.addEventListener('toggle', async () => {
    if (!root.open || place.querySelector('dl')) return;
    try {
      const { meanings } = await import('./room.js');
      place.replaceChildren(meanings(terms));
    } catch (problem) {
      console.warn(problem);
      setText(place, common.notFetched);
    }
  });
  return root;
}
