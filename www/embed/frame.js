// @ts-check

// The formula of the address as a page of its own: for a frame on somebody else's page, and for printing.

import './element.js';
import { make } from '../dom/element.js';
import { words } from './words.js';

const asked = new URLSearchParams(location.search);

/** Draws the formula of the address. */
function draw() {
  const element = make(/** @type {'div'} */ (/** @type {string} */ ('stillroom-formula')), { link: location.hash });
  for (const name of ['batch', 'unit', 'temperature', 'mark', 'without']) {
    const value = asked.get(name);
    if (value) element.setAttribute(name, value);
  }
  element.addEventListener('stillroom-shown', () => {
    sayHeight();
    if (asked.get('print') === 'yes') printOrSay();
  });
  document.body.replaceChildren(element);
}

/** Milliseconds in which a browser that prints has begun to. */
const BEGINS_WITHIN = 1000;

/** Prints, or says that the page is not let: a frame without leave for dialogs hands that on to what it opens. */
function printOrSay() {
  const wait = setTimeout(
    () => document.body.prepend(make('p', { class: 'remark', role: 'alert' }, words.cannotPrintHere)),
    BEGINS_WITHIN,
  );
  addEventListener('beforeprint', () => clearTimeout(wait), { once: true });
  print();
}

/** Tells the page around how high this one is, if it wants to know. Nothing else is said, and nothing is listened to. */
function sayHeight() {
  if (parent !== window)
    parent.postMessage({ type: 'stillroom-height', height: document.documentElement.scrollHeight }, '*');
}

addEventListener('hashchange', draw);
new ResizeObserver(sayHeight).observe(document.body);
draw();
