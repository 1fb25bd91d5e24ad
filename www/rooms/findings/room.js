// @ts-check

// What the checks found: most serious first, and apart from it what the maker set aside.

import { button, make, setText, show } from '../../dom/element.js';
import { chooser } from '../../dom/choice.js';
import { Field } from '../../dom/field.js';
import { keyed } from '../../dom/list.js';
import { words as common } from '../../dom/words.js';
import { standing } from '../../router.js';
import { explained } from '../terms/explained.js';
import { createFinding } from './finding.js';
import { words } from './words.js';

/** @typedef {import('../../seam/stillroom.js').FindingsView} FindingsView */
/** @typedef {import('../../session.js').Session} Session */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const summary = make('p', { class: 'findings-summary', role: 'status' });
  const list = make('ul', { class: 'found' });
  const aside = createAside(words.asideTitle, words.takeBack);
  const suspended = createAside(words.suspendedTitle, words.dissolves);
  const kind = chooser({
    label: words.kind,
    choices: words.kinds,
    onChoice: (text) => session.send({ do: 'set-kind', text }),
  });
  const measured = new Field({
    field: 'formula.measured-ph',
    label: words.measuredPh,
    class: 'short',
    onText: (text) => session.send({ do: 'set-measured-ph', text }),
  });
  const cold = new Field({
    field: 'findings.cold',
    label: words.cold,
    unit: '°C',
    onText: (text) => session.send({ do: 'set-cold-storage', text }),
  });
  place.setAttribute('aria-labelledby', 'findings-title');
  place.append(
    make('h2', { id: 'findings-title' }, common.rooms.findings),
    summary,
    list,
    make(
      'div',
      { class: 'findings-foot' },
      suspended.root,
      aside.root,
      make('div', { class: 'grid' }, kind.root, measured.root, cold.root),
      explained(
        'solubility',
        'undissociated',
        'inhibitory',
        'challenge-test',
        'hlb',
        'antioxidant',
        'chelator',
        'allergen',
        'patch-test',
      ),
      make('p', { class: 'quiet' }, words.proof),
      make('p', {}, make('a', { href: '#about' }, common.rooms.about)),
    ),
  );

  /** What is weighed in each line, by its number. @type {Map<number, string>} */
  const names = new Map();

  session.listen(
    (update) => {
      for (const line of update.lines ?? []) names.set(line.id, line.name);
      if (update.findings) showFindings(update.findings);
    },
    () => standing('findings'),
  );

  /** @param {FindingsView} view */
  function showFindings(view) {
    setText(summary, view.summary);
    list.classList.toggle('waiting', view.waiting);
    kind.show(view.kind);
    measured.show(view.measuredPh);
    cold.show(view.coldStorage);
    aside.show(
      view.setAside.map(({ key, text, reason }) => ({
        key,
        text: text || words.notFound,
        reason,
        act: () => session.send({ do: 'take-finding-back', key }),
      })),
    );
    suspended.show(
      view.suspended.map(({ line, name }) => ({
        key: String(line),
        text: name,
        act: () => session.send({ do: 'set-suspended', line, suspended: false }),
      })),
    );
    // While the amounts make no whole nothing is checked: what was found stays in sight, and faint.
    if (view.waiting) return;
    keyed(
      list,
      view.items,
      ({ key }) => createFinding(session, key, names),
      ({ key }) => key,
    );
  }
}

/**
 * What was taken out of the findings, each with a way back.
 * @param {string} title
 * @param {string} back
 */
function createAside(title, back) {
  const list = make('ul', { class: 'aside-list' });
  const root = make('div', { hidden: true }, make('h4', {}, title), list);
  return {
    root,
    /** @param {{ key: string, text: string, reason?: string, act: () => void }[]} entries */
    show(entries) {
      show(root, entries.length > 0);
      keyed(
        list,
        entries,
        ({ act }) => {
          const said = make('span');
          const reason = make('q');
          return {
            root: make('li', {}, make('span', {}, said, ' ', reason), button(back, act)),
            show({ text, reason: why }) {
              setText(said, text);
              setText(reason, why ?? '');
              show(reason, why !== undefined);
            },
          };
        },
        ({ key }) => key,
      );
    },
  };
}
