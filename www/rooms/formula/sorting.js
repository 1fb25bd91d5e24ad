// @ts-check

// Moving a line by its handle, with a finger or a mouse. The list is not touched until the line is let go.

import { make } from '../../dom/element.js';

/** Pixels from the edge of the screen within which the page scrolls along. */
const EDGE = 72;
const SCROLL = 12;

/**
 * @param {HTMLElement} root holds lists marked `data-phase` of lines marked `data-line`
 * @param {{ onMove: (line: number, phase: number, position: number) => void }} options
 */
export function makeSortable(root, { onMove }) {
  const marker = make('li', { class: 'marker', 'aria-hidden': 'true' });
  /** @type {{ line: HTMLElement, handle: HTMLElement, pointer: number } | undefined} */
  let moving;

  root.addEventListener('pointerdown', (event) => {
    const handle = event.target instanceof Element ? event.target.closest('.handle') : null;
    const line = handle?.closest('[data-line]');
    if (!(handle instanceof HTMLElement) || !(line instanceof HTMLElement) || event.button !== 0) return;
    event.preventDefault();
    handle.setPointerCapture(event.pointerId);
    moving = { line, handle, pointer: event.pointerId };
    line.classList.add('moving');
  });

  root.addEventListener('pointermove', (event) => {
    if (!moving || event.pointerId !== moving.pointer) return;
    if (event.clientY < EDGE) scrollBy(0, -SCROLL);
    if (event.clientY > innerHeight - EDGE) scrollBy(0, SCROLL);
    const list = listAt(event.clientY);
    if (!list) return;
    const others = [...list.querySelectorAll(':scope > [data-line]:not(.moving)')];
    const below = others.find((other) => {
      const box = other.getBoundingClientRect();
      return event.clientY < box.top + box.height / 2;
    });
    list.insertBefore(marker, below ?? null);
  });

  /** @param {number} y */
  function listAt(y) {
    const lists = [.../** @type {NodeListOf<HTMLElement>} */ (root.querySelectorAll('[data-phase]'))];
    /** @param {HTMLElement} list */
    const distance = (list) => {
      const box = list.parentElement?.getBoundingClientRect() ?? list.getBoundingClientRect();
      return y < box.top ? box.top - y : Math.max(0, y - box.bottom);
    };
    return lists.sort((a, b) => distance(a) - distance(b))[0];
  }

  /** @param {boolean} drop */
  function end(drop) {
    if (!moving) return;
    const { line } = moving;
    moving = undefined;
    line.classList.remove('moving');
    const list = marker.parentElement;
    if (drop && list instanceof HTMLElement) {
      const position = [...list.children].filter((child) => child !== line).indexOf(marker);
      marker.remove();
      onMove(Number(line.dataset.line), Number(list.dataset.phase), position);
    }
    marker.remove();
  }

  root.addEventListener('pointerup', () => end(true));
  root.addEventListener('pointercancel', () => end(false));
  root.addEventListener('keydown', (event) => {
    if (event.key === 'Escape') end(false);
  });
}
