// @ts-check

// The label of the open formula: its ingredients in order, what else it has to say, and how it stands on it.

import { button, make, say, setText, show } from '../../dom/element.js';
import { createChecks } from '../../dom/checks.js';
import { createDescribedFields } from '../../dom/described.js';
import { createFigures, remarks } from '../../dom/figures.js';
import { keyed } from '../../dom/list.js';
import { drawLabel, drawSheets } from './art.js';
import { explained } from '../terms/explained.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').LabelView} LabelView */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const send = (/** @type {string} */ field, /** @type {string} */ typed) =>
    void session.send({ do: 'set-label-field', field, text: typed });
  const fieldsOf = () => createDescribedFields(send, 'label-fields');
  const groups = {
    product: fieldsOf(),
    maker: fieldsOf(),
    link: fieldsOf(),
    print: fieldsOf(),
    nano: fieldsOf(),
  };
  const problem = make('p', { class: 'finding caution', hidden: true });
  const list = createList();
  const said = make('div', { class: 'label-said' });
  const allergens = createAllergens();
  const statements = createChecks('label-statements', (field, there) => send(field, there ? '' : 'yes'));
  const missing = make('div');
  const wording = make('div');
  const drawn = make('div', { class: 'label-drawn', tabindex: '0', role: 'group', 'aria-label': text.drawn });
  const tooSmall = make('p', { class: 'finding caution', role: 'status', hidden: true });
  const link = make('div');
  const lettering = createFigures();
  const sheetAbout = make('p', { class: 'quiet' });
  const sheets = make('div', { class: 'label-sheets', 'aria-hidden': 'true' });
  const print = button(text.print, () => globalThis.print());
  const part = (/** @type {string} */ title, /** @type {Element[]} */ ...parts) =>
    make('section', { class: 'label-part' }, make('h3', {}, title), ...parts);
  const wordingPart = part(text.wording, wording);
  const nanoPart = part(text.nano, groups.nano.root);
  const body = make(
    'div',
    { class: 'label-desk', hidden: true },
    // What comes of it; beside it, or below, what is filled in.
    make(
      'div',
      {},
      make(
        'section',
        { class: 'label-part' },
        make('header', { class: 'label-head' }, make('h3', {}, text.drawn), print),
        drawn,
        tooSmall,
        sheetAbout,
      ),
      part(text.ingredients, list.root, said),
      part(text.missing, missing),
      wordingPart,
      part(text.allergens, allergens.root),
    ),
    make(
      'div',
      {},
      part(text.product, groups.product.root),
      part(text.statements, statements.root),
      nanoPart,
      part(text.maker, make('p', { class: 'quiet' }, text.makerHelp), groups.maker.root),
      part(text.link, make('p', { class: 'quiet' }, text.linkHelp), groups.link.root, link),
      part(text.printing, groups.print.root, lettering.root),
    ),
  );
  place.setAttribute('aria-labelledby', 'label-title');
  const terms = explained(
    'inci',
    'allergen',
    'nominal-content',
    'e-mark',
    'batch-lot',
    'minimum-durability',
    'pao',
    'responsible-person',
    'colour-index',
    'nanomaterial',
  );
  place.append(
    make('h2', { id: 'label-title' }, text.title),
    make('p', { class: 'quiet' }, text.intro),
    make('p', { class: 'acts' }, make('a', { href: '#formula' }, text.toFormula)),
    problem,
    body,
    terms,
    sheets,
  );

  session.listen(({ label }) => {
    if (label) showLabel(label);
  });

  /** @param {LabelView} view */
  function showLabel(view) {
    say(problem, view.problem);
    show(body, view.problem === '');
    show(sheets, view.art !== undefined && view.sheet !== undefined);
    if (view.problem !== '') return;
    for (const [name, group] of Object.entries(groups)) group.show(view.fields.filter((each) => each.group === name));
    show(
      nanoPart,
      view.fields.some((each) => each.group === 'nano'),
    );
    list.show(view);
    remarks(said, view.said);
    allergens.show(view);
    statements.show(view.statements.map(({ why, ...each }) => ({ ...each, remark: why })));
    remarks(missing, view.missing);
    remarks(wording, view.wording);
    show(wordingPart, view.wording.length > 0);
    show(drawn, view.art !== undefined);
    drawn.replaceChildren(...(view.art ? [drawLabel(view.art)] : []));
    say(tooSmall, view.tooSmall);
    remarks(link, view.link);
    lettering.show(view.lettering);
    say(sheetAbout, view.sheet?.about);
    show(print, view.sheet !== undefined);
    sheets.replaceChildren(...(view.art && view.sheet ? drawSheets(view.art, view.sheet) : []));
  }

  // It is worked out only while somebody looks at it.
  return {
    enter: () => void session.send({ do: 'look-at-label', looking: true }),
    leave: () => void session.send({ do: 'look-at-label', looking: false }),
  };
}

/** The ingredients: as they are copied, and name by name. */
function createList() {
  const declaration = make('p', { class: 'label-declaration' });
  const copied = make('span', { class: 'quiet', role: 'status' });
  const copy = button(text.copy, async () => {
    try {
      await navigator.clipboard.writeText(declaration.textContent ?? '');
      setText(copied, text.copied);
    } catch {
      getSelection()?.selectAllChildren(declaration);
      setText(copied, text.notCopied);
    }
  });
  const names = make('ol', { class: 'label-names' });
  return {
    root: make(
      'div',
      {},
      declaration,
      make('p', { class: 'acts' }, copy, ' ', copied),
      make('details', {}, make('summary', {}, text.order), names),
    ),
    /** @param {LabelView} view */
    show(view) {
      if (declaration.textContent !== view.declaration) setText(copied, '');
      setText(declaration, view.declaration);
      keyed(names, view.names, () => {
        const name = make('span', { class: 'label-name' });
        const about = make('small');
        const percent = make('b', { class: 'number' });
        return {
          root: make('li', {}, make('span', {}, name, ' ', about), percent),
          show(each) {
            setText(name, each.name);
            setText(about, [text.places[each.place], each.doubtful ? text.doubtful : ''].filter(Boolean).join(' · '));
            setText(percent, each.percent);
          },
        };
      });
    },
  };
}

function createAllergens() {
  const about = make('p', { class: 'quiet' });
  const rows = make('ul', { class: 'label-allergens' });
  return {
    root: make('div', {}, about, rows),
    /** @param {LabelView} view */
    show(view) {
      setText(about, view.allergensAbout);
      keyed(rows, view.allergens, () => {
        const name = make('span');
        const fate = make('small');
        const amount = make('span', { class: 'number' });
        const root = make('li', {}, make('span', {}, name, ' ', fate), amount);
        return {
          root,
          show(each) {
            root.classList.toggle('named', each.named);
            setText(name, each.name);
            setText(fate, each.fate);
            setText(amount, each.amount);
          },
        };
      });
    },
  };
}
