// @ts-check

// What is due today: batches to look at, and materials to use before their day.

import { button, make, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';
import { go } from '../../router.js';
import { words } from './words.js';

/** @typedef {import('../../seam/stillroom.js').DueToday} DueToday */

/** @param {import('../../session.js').Session} session */
export function createDue(session) {
  const list = make('ul', { class: 'due-today' });
  const root = make('section', { hidden: true }, make('div', { class: 'shelf-head' }, make('h2', {}, words.due)), list);
  /** @param {DueToday} view */
  const see = ({ act, key }) => {
    if (act === 'look') session.send({ do: 'open-batch', batch: key });
    else session.send({ do: 'open-material', material: key });
    go(act === 'look' ? 'batches' : 'materials');
  };
  return {
    root,
    /** @param {DueToday[]} views */
    show(views) {
      show(root, views.length > 0);
      keyed(
        list,
        views,
        (view) => {
          const name = make('span');
          const about = make('small');
          const act = button(view.act === 'look' ? words.dueLook : words.dueUse, () => see(view));
          return {
            root: make('li', {}, make('span', {}, name, about), act),
            show(now) {
              setText(name, now.name);
              setText(about, now.about);
              about.className = now.late ? 'is-late' : '';
            },
          };
        },
        ({ act, key }) => `${act} ${key}`,
      );
    },
  };
}
