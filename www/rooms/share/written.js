// @ts-check

// The open formula written out as a file.

import { button, make, say } from '../../dom/element.js';
import { fileName, saveFile } from '../../dom/save.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

/** @param {Session} session */
export function createWritten(session) {
  const text = words.write;
  let formula = '';
  let name = '';
  const key = (
    /** @type {'markdown' | 'html' | 'text' | 'csv'} */ form,
    /** @type {string} */ label,
    /** @type {string} */ ending,
    /** @type {string} */ type,
  ) =>
    button(label, async () => {
      say(failed, undefined);
      const whole = withSubstitutions.checked;
      try {
        if (whole) await session.swap();
      } catch (problem) {
        console.warn(problem);
        say(failed, text.failed);
        return;
      }
      const written = session.ask((seam) =>
        whole ? seam.writeUpWithSubstitutions(formula, form) : seam.writeUp(formula, form),
      );
      if (written !== undefined) saveFile(`${fileName(name)}.${ending}`, [written], type);
    });
  const withSubstitutions = make('input', { type: 'checkbox' });
  const failed = make('p', { class: 'message', role: 'alert', hidden: true });
  return {
    root: make(
      'section',
      { class: 'no-print' },
      make('h3', {}, text.title),
      make('p', {}, make('a', { href: '#post' }, text.post)),
      make('p', { class: 'quiet' }, text.postAbout),
      make(
        'div',
        { class: 'acts' },
        key('markdown', text.markdown, 'md', 'text/markdown'),
        key('html', text.html, 'html', 'text/html'),
        key('text', text.text, 'txt', 'text/plain'),
        key('csv', text.csv, 'csv', 'text/csv'),
      ),
      make('label', { class: 'check' }, withSubstitutions, make('span', {}, text.substitutions)),
      failed,
    ),
    /** @param {string} id @param {string} called */
    show(id, called) {
      formula = id;
      name = called;
    },
  };
}
