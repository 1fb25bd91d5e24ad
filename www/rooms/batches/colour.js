// @ts-check

// The colour of a product, read from a photo against white paper.

import { button, make, say, setText } from '../../dom/element.js';
import { putPhoto, removePhotos, shrinkPhoto } from './photos.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */

/** Half the side of the patch that is read around a tap, in pixels of the photo. */
const PATCH = 8;

/**
 * A photo on which first the white and then the product are tapped.
 * @param {Session} session
 */
export function createColourReader(session) {
  const hint = make('p', { class: 'reader-hint', role: 'status' });
  const problem = make('p', { class: 'message', hidden: true });
  const stage = make('div', { class: 'reader-stage' });
  const root = make(
    'dialog',
    { class: 'reader', 'aria-label': text.colour },
    hint,
    problem,
    stage,
    make(
      'div',
      { class: 'acts' },
      button(text.again, () => start()),
      button(text.close, () => root.close(), { class: 'main-act' }),
    ),
  );
  /** @type {Uint8Array | undefined} */
  let white;
  let entry = 0;

  function start() {
    white = undefined;
    setText(hint, text.tapWhite);
    say(problem, '');
  }

  /** @param {HTMLCanvasElement} canvas @param {PointerEvent} event */
  function patchAt(canvas, event) {
    const box = canvas.getBoundingClientRect();
    const x = Math.round(((event.clientX - box.left) * canvas.width) / box.width) - PATCH;
    const y = Math.round(((event.clientY - box.top) * canvas.height) / box.height) - PATCH;
    const inside = (/** @type {number} */ at, /** @type {number} */ size) =>
      Math.max(0, Math.min(at, size - 2 * PATCH - 1));
    const pixels = canvas
      .getContext('2d')
      ?.getImageData(inside(x, canvas.width), inside(y, canvas.height), 2 * PATCH + 1, 2 * PATCH + 1);
    return new Uint8Array(pixels?.data.buffer ?? new ArrayBuffer(0));
  }

  return {
    root,
    /** @param {number} of @param {string} name @param {File} file */
    async read(of, name, file) {
      entry = of;
      start();
      stage.replaceChildren();
      root.showModal();
      try {
        const { canvas, blob } = await shrinkPhoto(file);
        await putPhoto(name, blob);
        const refused = session.send({ do: 'add-photo', entry, name }).answer?.error;
        if (refused) {
          await removePhotos([name]);
          setText(hint, '');
          say(problem, refused);
          return;
        }
        canvas.addEventListener('click', (event) => {
          const patch = patchAt(canvas, /** @type {PointerEvent} */ (event));
          if (!white) {
            white = patch;
            setText(hint, text.tapProduct);
            return;
          }
          const paper = white;
          const answer = session.act((seam) => seam.readColour(entry, patch, paper)).answer;
          say(problem, answer?.error);
          if (!answer?.error) return root.close();
          white = undefined;
          setText(hint, text.tapWhite);
        });
        stage.replaceChildren(canvas);
      } catch (failure) {
        console.warn(failure);
        say(problem, text.photoFailed);
      }
    },
  };
}
