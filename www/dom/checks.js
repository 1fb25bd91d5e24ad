// @ts-check

// A list of what can be ticked, each with a remark beside it.

import { make, setText } from './element.js';
import { keyed } from './list.js';

/**
 * What can be ticked.
 * @typedef {object} Check
 * @property {string} field
 * @property {boolean} there whether it is ticked
 * @property {string} text
 * @property {string} remark
 * @property {boolean} [fixed] whether it stays as it is
 */

/**
 * @param {string} kind
 * @param {(field: string, there: boolean) => void} send
 */
export function createChecks(kind, send) {
  const root = make('div', { class: kind });
  return {
    root,
    /** @param {readonly Check[]} views */
    show(views) {
      keyed(
        root,
        views,
        ({ field, fixed }) => {
          const box = make('input', {
            type: 'checkbox',
            disabled: fixed,
            'data-field': field,
            onchange: () => send(field, box.checked),
          });
          const text = make('span');
          const remark = make('small');
          return {
            root: make('label', { class: 'check' }, box, make('span', {}, text, ' ', remark)),
            show(each) {
              box.checked = each.there;
              setText(text, each.text);
              setText(remark, each.remark);
            },
          };
        },
        ({ field }) => field,
      );
    },
  };
}
