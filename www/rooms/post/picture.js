// @ts-check

// The formula as a picture: shown, and saved as a drawing or as pixels. Its geometry comes from the session.

import { button, make, say } from '../../dom/element.js';
import { fileName, saveFile } from '../../dom/save.js';
import { words as text } from './words.js';

/** @typedef {import('../../seam/stillroom.js').PostPictureView} PostPictureView */

/** @param {(field: string, text: string) => void} send */
export function createPicture(send) {
  /** @type {PostPictureView | undefined} */
  let shown;
  let name = '';
  let address = '';
  const image = make('img', { class: 'post-picture' });
  const failed = make('p', { class: 'message', role: 'alert', hidden: true });
  const box = make('input', {
    type: 'checkbox',
    onchange: () => shown && send(shown.field, box.checked ? 'yes' : ''),
  });
  return {
    root: make(
      'div',
      {},
      image,
      make('label', { class: 'check' }, box, make('span', {}, text.withLink)),
      make(
        'div',
        { class: 'acts' },
        button(text.saveSvg, () => shown && saveFile(`${fileName(name)}.svg`, [shown.svg], 'image/svg+xml')),
        button(text.savePng, async () => {
          const painted = shown && (await paint(image, shown).catch(() => undefined));
          say(failed, painted ? undefined : text.notPainted);
          if (painted) saveFile(`${fileName(name)}.png`, [painted], 'image/png');
        }),
      ),
      failed,
    ),
    /** @param {PostPictureView} view @param {string} title */
    show(view, title) {
      name = title;
      box.checked = view.linked;
      if (shown?.svg === view.svg) return;
      shown = view;
      URL.revokeObjectURL(address);
      address = URL.createObjectURL(new Blob([view.svg], { type: 'image/svg+xml' }));
      image.src = address;
      image.width = view.width;
      image.height = view.height;
      image.alt = view.description;
    },
  };
}

/**
 * The picture in pixels.
 * @param {HTMLImageElement} image
 * @param {PostPictureView} view
 * @returns {Promise<Blob | undefined>}
 */
async function paint(image, { width, height }) {
  await image.decode();
  const canvas = make('canvas', { width, height });
  const context = canvas.getContext('2d');
  if (!context) return undefined;
  context.drawImage(image, 0, 0, width, height);
  return new Promise((painted) => canvas.toBlob((blob) => painted(blob ?? undefined), 'image/png'));
}
