// @ts-check

// A recipe that a maker already has: pasted, typed or from a file, read as one types, and made a formula.

import { button, freshId, make, say, setText, show } from '../../dom/element.js';
import { keyed } from '../../dom/list.js';
import { go } from '../../router.js';
import { explained } from '../terms/explained.js';
import { createColumns } from './columns.js';
import { createLine, createQuestion } from './line.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').RecipeView} RecipeView */
/** @typedef {RecipeView['meaning']} Meaning */

/** Milliseconds without a key after which the text is read. */
const PAUSE = 120;

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const textId = freshId();
  const area = make('textarea', {
    id: textId,
    rows: 10,
    spellcheck: 'false',
    autocapitalize: 'off',
    maxlength: 100000,
    placeholder: words.placeholder,
    oninput: () => readSoon(),
  });
  const file = make('input', {
    type: 'file',
    accept: '.csv,.tsv,.txt,.md,text/*',
    hidden: true,
    onchange: () => void readFile(),
  });
  const clear = button(words.clear, () => fill(''), { class: 'plain' });
  /** What stood in the area before a file or nothing took its place. */
  let before = '';
  const bringBack = button(words.bringBack, () => fill(before), { class: 'plain', hidden: true });
  const said = make('p', { class: 'quiet', role: 'status', hidden: true });
  const columns = createColumns((place, holds) => draw(session.ask((seam) => seam.setRecipeColumn(place, holds))));
  /** What the maker says that numbers without a unit are. @type {Meaning | ''} */
  let meaning = '';
  const meanings = choices(words.numbers, (chosen) => {
    meaning = chosen;
    read();
  });
  const summary = make('p', { class: 'recipe-summary', role: 'status' });
  const error = make('p', { class: 'error', hidden: true });
  const nothing = make('p', { class: 'quiet' }, words.nothing);
  const asked = make('ul', { class: 'recipe-lines' });
  const toChoose = make('div', { class: 'recipe-asked', hidden: true }, make('h4', {}, words.choose), asked);
  const phases = make('div', { class: 'recipe-phases' });
  const others = make('ul', { class: 'recipe-others' });
  const otherLines = make('details', { hidden: true }, make('summary', {}, words.others), others);
  const name = make('span', { class: 'recipe-name', dir: 'auto' });
  const total = make('span', { class: 'recipe-total number' });
  const leftOpen = make('p', { class: 'quiet', hidden: true });
  const makeIt = button(words.make, () => makeFormula(), { class: 'main-act' });
  const result = make(
    'section',
    { class: 'recipe-result', 'aria-label': words.recognised, hidden: true },
    make('h3', {}, name, total),
    summary,
    toChoose,
    phases,
    otherLines,
    leftOpen,
    make('p', { class: 'quiet' }, words.caution),
    make('div', { class: 'acts recipe-take' }, makeIt),
  );
  place.setAttribute('aria-labelledby', 'paste-title');
  place.append(
    make('h2', { id: 'paste-title' }, words.title),
    make(
      'div',
      { class: 'paste-room' },
      make(
        'section',
        { class: 'recipe-text' },
        make('label', { for: textId }, words.text),
        make('div', { class: 'box' }, area),
        file,
        make(
          'div',
          { class: 'acts' },
          button(words.file, () => file.click()),
          clear,
          bringBack,
        ),
        said,
        meanings.root,
        error,
        columns.root,
        nothing,
        make('p', { class: 'quiet recipe-by-hand' }, words.dropHere),
        explained('qs', 'phase'),
      ),
      result,
    ),
  );

  let timer = 0;
  function readSoon() {
    clearTimeout(timer);
    timer = setTimeout(read, PAUSE);
  }

  function read() {
    clearTimeout(timer);
    timer = 0;
    draw(session.ask((seam) => seam.readRecipe(area.value, meaning)));
  }

  /** @param {string} text */
  function fill(text) {
    before = area.value;
    area.value = text;
    meaning = '';
    say(said, '');
    read();
    show(bringBack, before !== '' && before !== text);
    area.focus();
  }

  async function readFile() {
    const chosen = file.files?.[0];
    file.value = '';
    if (chosen) await take(chosen);
  }

  /** @param {File} chosen */
  async function take(chosen) {
    const bytes = new Uint8Array(await chosen.arrayBuffer());
    const view = session.ask((seam) => seam.readRecipeFile(bytes));
    if (view?.text !== undefined) fill(view.text);
    say(said, view?.said ?? '');
  }

  // A file can be dropped anywhere in the room; elsewhere on the page it is taken for a backup.
  place.addEventListener('dragover', (event) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.stopPropagation();
    document.body.classList.remove('dropping');
    place.classList.add('recipe-drop');
  });
  place.addEventListener('dragleave', () => place.classList.remove('recipe-drop'));
  place.addEventListener('drop', (event) => {
    place.classList.remove('recipe-drop');
    const [first, ...others] = event.dataTransfer?.files ?? [];
    if (!first) return;
    event.preventDefault();
    event.stopPropagation();
    if (others.length > 0) say(said, words.oneFile);
    else void take(first);
  });

  /** @param {number} line @param {string} material */
  const choose = (line, material) => draw(session.ask((seam) => seam.chooseInRecipe(line, material)));

  function makeFormula() {
    // What was typed last counts, too.
    if (timer) read();
    if (!session.send({ do: 'make-of-recipe' }).answer?.made) return;
    area.value = '';
    before = '';
    meaning = '';
    say(said, '');
    show(bringBack, false);
    read();
    go('formula');
  }

  /** @param {RecipeView | undefined} view */
  function draw(view) {
    if (!view) return;
    say(error, view.error ?? '');
    show(nothing, !view.ready && !view.error);
    show(result, view.ready);
    show(clear, area.value !== '');
    columns.show(view.columns, view.leftOut);
    area.wrap = view.columns.length > 0 ? 'off' : 'soft';
    meanings.show(view.hasBare, view.meaning);
    setText(name, view.name);
    setText(total, `${view.total}\u00a0%`);
    setText(summary, [view.summary, view.toChoose, view.size].filter(Boolean).join(' · '));
    show(toChoose, view.asked.length > 0);
    keyed(
      asked,
      view.asked,
      () => createQuestion(session, choose),
      ({ key, written }) => `${key} ${written}`,
    );
    keyed(phases, view.phases, () => createPhase(session, choose));
    show(otherLines, view.others.length > 0);
    keyed(others, view.others, createOther);
    say(leftOpen, view.leftOpen);
    makeIt.disabled = !view.ready;
  }

  show(clear, false);
}

/**
 * What numbers without a unit are: one of three.
 * @param {string} label
 * @param {(chosen: Meaning) => void} onChoice
 */
function choices(label, onChoice) {
  const group = freshId();
  /** @type {[Meaning, string][]} */
  const all = [
    ['percent', words.percent],
    ['grams', words.grams],
    ['parts', words.parts],
  ];
  const inputs = all.map(([value]) =>
    make('input', { type: 'radio', name: group, value, onchange: () => onChoice(value) }),
  );
  const root = make(
    'fieldset',
    { class: 'recipe-meaning', hidden: true },
    make('legend', {}, label),
    ...inputs.map((input, at) => make('label', {}, input, all[at]?.[1])),
  );
  return {
    root,
    /** @param {boolean} matters @param {Meaning} chosen */
    show(matters, chosen) {
      show(root, matters);
      for (const input of inputs) input.checked = input.value === chosen;
    },
  };
}

/**
 * @param {Session} session
 * @param {(line: number, material: string) => void} choose
 */
function createPhase(session, choose) {
  const name = make('span', { dir: 'auto' });
  const about = make('small');
  const lines = make('ul', { class: 'recipe-lines' });
  return {
    root: make('div', {}, make('h4', {}, name, ' ', about), lines),
    /** @param {RecipeView['phases'][number]} phase */
    show(phase) {
      setText(name, phase.name);
      setText(about, phase.about);
      keyed(
        lines,
        phase.lines,
        () => createLine(session, choose),
        ({ key }) => key,
      );
    },
  };
}

function createOther() {
  const raw = make('span', { dir: 'auto' });
  const taken = make('small');
  return {
    root: make('li', {}, raw, ' ', taken),
    /** @param {RecipeView['others'][number]} other */
    show(other) {
      setText(raw, other.raw);
      setText(taken, other.takenFor);
    },
  };
}
