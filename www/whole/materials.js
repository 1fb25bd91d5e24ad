// @ts-check

// Materials: the catalogue, the maker's own, and a card for each with what is known of it and from where.

import { arrange, button, freshId, make, setText, show } from '../element.js';
import { Field, chooser } from '../field.js';
import { hitList } from '../parts/picker.js';
import { words } from '../words.js';

/** @typedef {import('../session.js').Session} Session */
/** @typedef {import('../seam/stillroom.js').MaterialView} MaterialView */

const text = words.materials;

/**
 * @param {Session} session
 * @param {{ ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 * @param {HTMLElement} place
 */
export function createMaterials(session, page, place) {
  const searchId = freshId();
  /** @param {{ id: string }} hit */
  const openHit = (hit) => {
    session.send({ do: 'open-material', material: hit.id });
    card.root.scrollIntoView({ block: 'nearest' });
  };
  const own = hitList({ onChoice: openHit, nothing: text.noOwn });
  const found = hitList({ onChoice: openHit, nothing: text.nothing });
  const foundPart = make('div', {}, make('h3', {}, text.found), found.root);
  let kind = '';
  const filter = chooser({
    label: text.filterClass,
    choices: { '': text.everyClass, ...words.classes },
    onChoice: (chosen) => {
      kind = chosen;
      find();
    },
  });
  let phaseKind = '';
  const phaseFilter = chooser({
    label: text.filterPhase,
    choices: { '': text.everyPhase, ...words.formula.phaseKinds },
    onChoice: (chosen) => {
      phaseKind = chosen;
      find();
    },
  });
  const search = make('input', {
    id: searchId,
    type: 'search',
    autocomplete: 'off',
    spellcheck: 'false',
    oninput: () => find(),
  });
  const card = createCard(session, page);
  const list = make(
    'div',
    { class: 'materials-list' },
    make('div', { class: 'grid' }, make('div', { class: 'field' }, make('label', { for: searchId }, text.search), search), filter.root, phaseFilter.root),
    make('h3', {}, text.own),
    make(
      'div',
      { class: 'acts' },
      button(text.newComposite, () => describe(true)),
      button(text.newSimple, () => describe(false)),
      make('a', { class: 'to-extracts', href: '#extracts' }, words.rooms.extracts),
    ),
    own.root,
    createTables(session),
    foundPart,
    createSources(session),
  );
  const none = make('p', { class: 'sheet quiet nothing-open' }, text.none);
  place.append(
    make('h2', {}, text.title),
    make('div', { class: 'materials' }, none, card.root, list),
  );

  /** @param {boolean} composite */
  function describe(composite) {
    session.send({ do: 'new-material', composite, name: '' });
    card.focusName();
  }

  function find() {
    const classes = kind ? [/** @type {any} */ (kind)] : [];
    const phases = phaseKind ? [/** @type {any} */ (phaseKind)] : [];
    found.show(session.search(search.value, { classes, phases }));
  }

  let everShown = false;
  session.listen((update) => {
    if (update.ownMaterials) {
      own.show(update.ownMaterials);
      if (everShown) find();
    }
    if (update.material) {
      card.show(update.material);
      show(none, update.material.id === undefined);
    }
  });

  return {
    enter() {
      everShown = true;
      find();
    },
  };
}

/**
 * @param {Session} session
 * @param {{ ask: ReturnType<typeof import('../parts/picker.js').createPicker> }} page
 */
function createCard(session, page) {
  let material = '';
  /**
   * @param {import('../seam/stillroom.js').MaterialField} field
   * @param {string} label
   * @param {Partial<import('../field.js').FieldOptions>} [more]
   */
  const textField = (field, label, more = {}) =>
    new Field({
      field: `material.${field}`,
      label,
      keyboard: 'text',
      onText: (typed) => session.send({ do: 'set-material-text', field, text: typed }),
      ...more,
    });
  const title = make('h3', { class: 'card-title' });
  const about = make('p', { class: 'quiet' });
  const name = textField('name', text.name, { class: 'wide' });
  const inci = textField('inci', text.inci, { class: 'wide' });
  const density = textField('density', text.density, { keyboard: 'decimal', unit: 'g/mL' });
  const note = textField('note', text.note, { long: true, class: 'wide' });
  const kind = chooser({ label: text.class, choices: words.classes, onChoice: (chosen) => session.send({ do: 'set-material-class', class: chosen }) });
  const phase = chooser({
    label: text.phase,
    choices: words.formula.phaseKinds,
    onChoice: (chosen) => session.send({ do: 'set-material-phase', kind: chosen }),
  });
  const problems = make('div', {});
  const partsList = make('ul', { class: 'parts' });
  const partsTotal = make('p', { class: 'total' });
  const addPart = button(text.addPart, () =>
    page.ask(
      text.addPart,
      (taken) => {
        const made = session.send({ do: 'add-part', material: taken }).answer?.made;
        /** @type {HTMLElement | null} */ (document.querySelector(`[data-field="part:${made}"]`))?.focus();
      },
      (id) => id !== material,
    ),
  );
  const parts = make('div', {}, make('h4', {}, text.parts), partsList, partsTotal, addPart);
  const constituents = make('ul', { class: 'brought' });
  const brings = make('div', {}, make('h4', {}, text.brings), constituents);
  const values = make('dl', { class: 'values' });
  const valuesPart = make('div', {}, make('h4', {}, text.values), make('p', { class: 'quiet' }, text.valuesHelp), values);
  const noValues = make('p', { class: 'quiet' }, text.noValues);
  const holding = createHolding(session, () => material);
  const usedIn = make('ul', { class: 'used-in' });
  const notUsed = make('p', { class: 'quiet' }, text.notUsed);
  const copy = button(text.copy, () => session.send({ do: 'copy-material', material }));
  const remove = button(text.remove, () => session.send({ do: 'delete-material', material }), { class: 'take-out' });
  const fields = make('div', { class: 'grid' }, name.root, inci.root, kind.root, phase.root, density.root, note.root);
  const root = make(
    'article',
    { class: 'sheet material-card', hidden: true },
    make('div', { class: 'card-head' }, title, button(words.close, () => session.send({ do: 'close-material' }), { class: 'plain' })),
    about,
    problems,
    fields,
    parts,
    brings,
    valuesPart,
    noValues,
    holding.root,
    make('h4', {}, text.usedIn),
    usedIn,
    notUsed,
    make('div', { class: 'acts' }, copy, remove),
  );
  /** @type {ReturnType<typeof createPart>[]} */
  const rows = [];

  return {
    root,
    focusName() {
      name.input.focus();
      name.input.select();
    },
    /** @param {MaterialView} view */
    show(view) {
      show(root, view.id !== undefined);
      if (view.id === undefined) return;
      material = view.id;
      setText(title, view.name);
      setText(about, [view.inci, view.classLabel, view.phaseLabel].filter(Boolean).join(' · '));
      show(fields, view.own);
      name.show(view.name);
      inci.show(view.inci);
      show(inci.root, !view.composite);
      kind.show(view.class ?? 'other');
      phase.show(view.phaseKind ?? 'heated-water');
      density.show(view.density);
      note.show(view.note);
      problems.replaceChildren(...view.problems.map((problem) => make('p', { class: 'finding caution' }, problem)));
      show(parts, view.composite && view.own);
      while (rows.length > view.parts.length) rows.pop()?.forget();
      view.parts.forEach((part, at) => {
        rows[at] ??= createPart(session, at);
        rows[at].show(part);
      });
      arrange(partsList, rows.map((row) => row.root));
      setText(partsTotal, `${text.partsTotal} ${view.partsTotal}\u00a0%`);
      show(brings, view.constituents.length > 0);
      constituents.replaceChildren(
        ...view.constituents.map((each) => make('li', {}, make('span', {}, each.inci), make('span', { class: 'number' }, `${each.percent}\u00a0%`))),
      );
      show(valuesPart, view.values.length > 0);
      show(noValues, view.values.length === 0 && !view.own);
      values.replaceChildren(
        ...view.values.flatMap((value) => [
          make('dt', {}, value.label),
          make('dd', {}, make('span', {}, value.value), make('small', {}, `${value.basis} · ${value.source}`)),
        ]),
      );
      show(holding.root, !view.id.startsWith('f'));
      holding.show(view.holding);
      usedIn.replaceChildren(...view.usedIn.map((each) => make('li', {}, each)));
      show(notUsed, view.usedIn.length === 0);
      show(remove, view.own);
      show(copy, !view.id.startsWith('f'));
    },
  };
}

/**
 * @param {Session} session
 * @param {number} part
 */
function createPart(session, part) {
  const name = make('span', { class: 'line-name' });
  const remark = make('small', { class: 'remark' });
  const amount = new Field({
    field: `part:${part}`,
    label: text.partOf,
    labelHidden: true,
    class: 'amount',
    unit: '%',
    onText: (typed) => session.send({ do: 'set-part-amount', part, text: typed }),
  });
  const remove = button('×', () => session.send({ do: 'remove-part', part }), { class: 'plain' });
  return {
    root: make('li', { class: 'part' }, make('span', {}, name, remark), amount.root, remove),
    forget: () => amount.forget(),
    /** @param {import('../seam/stillroom.js').PartView} view */
    show(view) {
      setText(name, view.name);
      setText(remark, view.quantumSatis ? words.formula.qs : '');
      setText(amount.label, `${text.partOf} ${view.name}`);
      amount.show(view.amount);
      remove.setAttribute('aria-label', `${text.removePart} ${view.name}`);
    },
  };
}

/**
 * What the maker has of the open material.
 * @param {Session} session
 * @param {() => string} material
 */
function createHolding(session, material) {
  /**
   * @param {import('../seam/stillroom.js').HoldingField} field
   * @param {string} label
   * @param {Partial<import('../field.js').FieldOptions>} [more]
   */
  const field = (field, label, more = {}) =>
    new Field({
      field: `holding.${field}`,
      label,
      onText: (typed) => {
        // With no material open there is nothing to note anything about.
        if (material()) session.send({ do: 'set-holding', material: material(), field, text: typed });
      },
      ...more,
    });
  const price = field('price', text.price);
  const currency = field('currency', text.currency, { keyboard: 'text' });
  const pack = field('pack', text.pack);
  const stock = field('stock', text.stock);
  const lot = field('lot', text.lot, { keyboard: 'text' });
  const expiry = field('expiry', text.expiry, { keyboard: 'text' });
  expiry.input.setAttribute('type', 'date');
  const density = field('density', text.ownDensity, { unit: 'g/mL' });
  const usual = field('usual', text.ownUsual, { keyboard: 'text' });
  const note = field('note', text.ownNote, { keyboard: 'text', long: true, class: 'wide' });
  const remarks = make('div', {});
  const all = { price, currency, pack, stock, lot, expiry, density, usual, note };
  return {
    root: make(
      'details',
      { class: 'scales' },
      make('summary', {}, text.holding),
      remarks,
      make('div', { class: 'grid' }, ...Object.values(all).map((each) => each.root)),
    ),
    /** @param {import('../seam/stillroom.js').HoldingView} view */
    show(view) {
      for (const [name, each] of Object.entries(all)) each.show(view[/** @type {keyof typeof all} */ (name)]);
      remarks.replaceChildren(...view.remarks.map((remark) => make('p', { class: 'quiet' }, remark)));
    },
  };
}

/** @param {Session} session */
function createTables(session) {
  const report = make('div', { class: 'report', role: 'status' });
  const input = make('input', { type: 'file', accept: '.csv,.tsv,text/csv', hidden: true, onchange: () => readFile() });

  async function readFile() {
    const file = input.files?.[0];
    input.value = '';
    if (!file) return;
    const view = session.readTable(new Uint8Array(await file.arrayBuffer()));
    if (!view) return;
    report.replaceChildren(
      make('p', { class: view.ready ? 'finding note' : 'finding caution' }, view.summary),
      make('ul', { class: 'table-problems' }, ...view.problems.map((problem) => make('li', {}, problem))),
    );
    if (view.ready) {
      report.append(
        button(text.takeIn, () => {
          session.send({ do: 'import-table' });
          report.replaceChildren();
        }, { class: 'main-act' }),
      );
    }
  }

  function saveFile() {
    const address = URL.createObjectURL(new Blob([session.writeTable()], { type: 'text/csv;charset=utf-8' }));
    const link = make('a', { href: address, download: text.tableName });
    link.click();
    URL.revokeObjectURL(address);
  }

  return make(
    'details',
    { class: 'scales tables' },
    make('summary', {}, text.table),
    make('p', { class: 'quiet' }, text.tableHelp),
    make('div', { class: 'acts' }, button(text.readTable, () => input.click()), button(text.writeTable, saveFile)),
    input,
    report,
  );
}

/** @param {Session} session */
function createSources(session) {
  const list = make('ol', { class: 'sources' });
  const root = make('details', { class: 'scales' }, make('summary', {}, text.sources), make('p', { class: 'quiet' }, text.sourcesHelp), list);
  root.addEventListener('toggle', () => {
    if (!root.open || list.childElementCount > 0) return;
    list.append(...session.sources().map((source) => make('li', {}, make('span', {}, source.citation), make('small', {}, source.about))));
  });
  return root;
}
