// @ts-check

// Choosing a material for something else: a search as one types, in a dialog over the page.

import { button, freshId, make, setText, show } from '../../dom/element.js';
import { words as common } from '../../dom/words.js';
import { hitList } from './hits.js';
import { words } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').PhaseKind} PhaseKind */

const text = words.picker;

/**
 * What is asked for.
 * @typedef {object} Wanted
 * @property {string} heading
 * @property {(material: string) => void} onTaken
 * @property {(material: string) => boolean} [onlyIf]
 * @property {PhaseKind} [phase] of the line it is for
 * @property {{ label: string, go: () => void }} [onward] where Enter leads while nothing is typed
 */

/** One dialog serves every room. @type {ReturnType<typeof createPicker> | undefined} */
let picker;

/**
 * Asks for a material.
 * @param {Session} session
 * @param {Wanted} wanted
 */
export function askForMaterial(session, wanted) {
  picker ??= createPicker(session);
  picker.ask(wanted);
}

/** @param {Session} session */
function createPicker(session) {
  /** @type {Wanted | undefined} */
  let wanted;
  const searchId = freshId();
  const titleId = freshId();
  const title = make('h2', { id: titleId });
  const input = make('input', {
    id: searchId,
    type: 'search',
    autocomplete: 'off',
    spellcheck: 'false',
    placeholder: text.search,
    maxlength: 80,
    oninput: () => find(),
  });
  const hits = hitList({ onChoice: choose, nothing: text.nothing });
  // What nobody knows yet is described later: the line has it by its name.
  const describe = button('', () => void describeOwn(), { class: 'hit', hidden: true });
  const onward = button('', goOnward, { class: 'plain onward', hidden: true });
  const dialog = make(
    'dialog',
    { class: 'picker', 'aria-labelledby': titleId },
    make(
      'div',
      { class: 'picker-head' },
      title,
      button(common.close, () => dialog.close(), { class: 'plain' }),
      make('label', { for: searchId, class: 'unseen' }, text.search),
      input,
      onward,
    ),
    hits.root,
    describe,
  );
  document.body.append(dialog);
  dialog.addEventListener('keydown', (event) => {
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
    const buttons = [...hits.list.querySelectorAll('button')];
    const at = buttons.indexOf(/** @type {any} */ (document.activeElement));
    const next = event.key === 'ArrowDown' ? buttons[at + 1] : (buttons[at - 1] ?? input);
    next?.focus();
    event.preventDefault();
  });
  input.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    // The key ends here: the button that asked gets the focus back, and would be pressed by it.
    event.preventDefault();
    // Nor does a key that is held go on and on.
    if (event.repeat) return;
    if (wanted?.onward && input.value.trim() === '') goOnward();
    else (hits.list.querySelector('button') ?? describe).click();
  });

  function goOnward() {
    dialog.close();
    wanted?.onward?.go();
  }

  function find() {
    const { onlyIf = () => true, phase } = wanted ?? {};
    const found = session.search(input.value, { lineOf: phase }).filter((hit) => onlyIf(hit.id));
    hits.show(found);
    const name = input.value.trim();
    show(describe, found.length === 0 && name !== '');
    setText(describe, text.describe({ name }));
  }

  async function describeOwn() {
    const name = input.value.trim();
    if (!name) return;
    await session.whole();
    const { made } = session.send({ do: 'new-material', composite: false, name }).answer ?? {};
    session.send({ do: 'close-material' });
    if (made) choose(made);
  }

  /** @param {string} material */
  function choose(material) {
    dialog.close();
    wanted?.onTaken(material);
  }

  // Until everything is here a material, or what else it is called, may be looked for in vain.
  session.complete.then(find, console.warn);

  return {
    /** @param {Wanted} asked */
    ask(asked) {
      wanted = asked;
      setText(title, asked.heading);
      input.value = '';
      show(onward, asked.onward !== undefined);
      setText(onward, asked.onward?.label ?? '');
      find();
      dialog.showModal();
      input.focus();
    },
  };
}
