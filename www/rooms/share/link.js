// @ts-check

// The link that holds the open formula, as an address and as a code.

import { site } from '../../address.js';
import { createChecks } from '../../dom/checks.js';
import { button, draw, freshId, make, say, setText, show } from '../../dom/element.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

/** @param {Session} session */
export function createLink(session) {
  const text = words.link;
  const heading = make('p', { class: 'print-title' });
  const problem = make('p', { class: 'message', role: 'alert', hidden: true });
  const address = make('textarea', {
    class: 'share-address',
    readonly: true,
    id: freshId(),
    spellcheck: 'false',
    onfocus: () => address.select(),
  });
  const about = make('p', { class: 'quiet no-print' });
  const path = draw('path', { fill: '#000' });
  const code = draw('svg', { class: 'share-code', role: 'img', 'shape-rendering': 'crispEdges' }, path);
  const notes = createChecks('share-notes no-print', (_, there) => write(there));
  const codeAbout = make('p', { class: 'quiet no-print' });
  const copied = make('p', { class: 'quiet no-print', role: 'status' });
  const acts = make(
    'div',
    { class: 'acts no-print' },
    button(
      text.copy,
      async () => {
        try {
          await navigator.clipboard.writeText(address.value);
          setText(copied, text.copied);
        } catch {
          address.select();
          setText(copied, text.cannotCopy);
        }
      },
      { class: 'main-act' },
    ),
  );
  let name = '';
  let formula = '';
  if ('share' in navigator) {
    acts.append(button(text.send, () => void navigator.share({ title: name, url: address.value }).catch(() => {})));
  }
  const print = button(text.print, () => globalThis.print());
  const embed = make('a', {}, text.embed);
  acts.append(print);
  const whole = make(
    'div',
    { class: 'share-link' },
    make('label', { for: address.id, class: 'no-print' }, text.address),
    address,
    about,
    notes.root,
    acts,
    copied,
    code,
    codeAbout,
    make('p', { class: 'no-print' }, embed),
  );
  return {
    root: make(
      'section',
      {},
      make('h3', {}, text.title),
      make('p', { class: 'no-print' }, text.intro),
      problem,
      heading,
      whole,
    ),
    /** @param {string} id */
    show(id) {
      formula = id;
      // What is for its maker alone goes along only where that is chosen, and each time anew.
      write(false);
    },
  };

  /** @param {boolean} withNotes */
  function write(withNotes) {
    const view = session.ask((seam) => seam.linkOf(formula, location.href, withNotes));
    if (!view) return;
    const check = { field: 'share.notes', there: withNotes, text: text.withNotes, remark: view.keptBack };
    notes.show(view.keptBack === '' ? [] : [check]);
    name = view.name;
    setText(copied, '');
    setText(heading, view.name);
    say(problem, view.error);
    show(whole, view.error === undefined);
    address.value = view.address;
    setText(about, view.about);
    show(/** @type {any} */ (code), view.code !== undefined);
    show(print, view.code !== undefined);
    setText(codeAbout, view.code?.about ?? view.codeProblem);
    embed.href = `${new URL('embed/index.html', site).href}#${view.fragment}`;
    if (view.code) {
      const { side, path: modules, millimetres } = view.code;
      code.setAttribute('viewBox', `0 0 ${side} ${side}`);
      code.setAttribute('aria-label', text.codeIs({ name: view.name }));
      code.style.setProperty('--code-width', `${millimetres}mm`);
      path.setAttribute('d', modules);
    }
  }
}
