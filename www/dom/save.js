// @ts-check

// Files that leave the page.

import { make } from './element.js';

/** Milliseconds within which a browser has begun to save what it was handed. */
const BEGINS_WITHIN = 10_000;

/**
 * Hands a file to the browser to keep.
 * @param {string} name
 * @param {BlobPart[]} content
 * @param {string} type
 */
export function saveFile(name, content, type) {
  const address = URL.createObjectURL(new Blob(content, { type }));
  const anchor = make('a', { href: address, download: name });
  document.body.append(anchor);
  anchor.click();
  anchor.remove();
  setTimeout(() => URL.revokeObjectURL(address), BEGINS_WITHIN);
}

/**
 * A name that every file system takes.
 * @param {string} name
 */
export function fileName(name) {
  return (
    name
      .normalize('NFC')
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'formula'
  );
}
