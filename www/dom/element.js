// @ts-check

// Making and changing elements. Text only ever goes in as text.

/**
 * What an element is made with: `class`, `data-*`, `aria-*` and other attributes; `on…` are listeners.
 * @typedef {Record<string, string | number | boolean | undefined | ((event: any) => void)>} Properties
 */

/**
 * Makes an element.
 * @template {keyof HTMLElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {Properties} [properties]
 * @param {...(Node | string | undefined)} children
 * @returns {HTMLElementTagNameMap[Tag]}
 */
export function make(tag, properties = {}, ...children) {
  const element = document.createElement(tag);
  dress(element, properties);
  element.append(...children.filter((child) => child !== undefined));
  return element;
}

/**
 * Makes an element of a drawing.
 * @template {keyof SVGElementTagNameMap} Tag
 * @param {Tag} tag
 * @param {Properties} [properties]
 * @param {...Node} children
 * @returns {SVGElementTagNameMap[Tag]}
 */
export function draw(tag, properties = {}, ...children) {
  const element = document.createElementNS('http://www.w3.org/2000/svg', tag);
  dress(element, properties);
  element.append(...children);
  return element;
}

/**
 * @param {Element} element
 * @param {Properties} properties
 */
function dress(element, properties) {
  for (const [name, value] of Object.entries(properties)) {
    if (typeof value === 'function') {
      element.addEventListener(name.slice(2), value);
    } else if (value === true) {
      element.setAttribute(name, '');
    } else if (value !== undefined && value !== false) {
      element.setAttribute(name, String(value));
    }
  }
}

/**
 * Makes a button.
 * @param {string} label
 * @param {(event: MouseEvent) => void} act
 * @param {Properties} [properties]
 */
export function button(label, act, properties = {}) {
  return make('button', { type: 'button', onclick: act, ...properties }, label);
}

/** Numbers that changed a moment ago, and are seen to. @type {Set<Element>} */
const changed = new Set();
/** How long a number that changed is seen to have changed, counted from the last key. In milliseconds. */
const SEEN_FOR = 700;
/** When the last of them changed. */
let lastChange = 0;

/** Lets the numbers that changed be like all others again, once nothing has changed for a while. */
function forgetChanges() {
  const left = lastChange + SEEN_FOR - performance.now();
  if (left > 0) {
    setTimeout(forgetChanges, left);
    return;
  }
  for (const element of changed) element.classList.replace('changed', 'settled');
  changed.clear();
}

/**
 * Puts a text into an element if it is another one. A number that changes is seen to change.
 * @param {Element} element
 * @param {string} text
 * @param {boolean} [seen]
 */
export function setText(element, text, seen = false) {
  if (element.textContent === text) return;
  const before = element.textContent;
  element.textContent = text;
  if (!seen || !before) return;
  // A class that stays while somebody types: an animation of each number would paint them all anew in every frame.
  lastChange = performance.now();
  if (changed.size === 0) setTimeout(forgetChanges, SEEN_FOR);
  if (!changed.has(element)) {
    changed.add(element);
    element.classList.add('changed');
  }
}

/**
 * Puts elements into a parent in an order, moving as few as it can: an element that stands right keeps its focus.
 * @param {Element} parent
 * @param {Iterable<Element>} children
 */
export function arrange(parent, children) {
  /** @type {ChildNode | null} */
  let next = parent.firstChild;
  for (const child of children) {
    if (child === next) {
      next = next.nextSibling;
    } else if ('moveBefore' in parent && child.isConnected && child.parentNode === parent) {
      // Where a browser can: what is moved keeps its focus, too.
      /** @type {{ moveBefore: (child: Node, next: Node | null) => void }} */ (
        /** @type {unknown} */ (parent)
      ).moveBefore(child, next);
    } else {
      parent.insertBefore(child, next);
    }
  }
  while (next) {
    const after = next.nextSibling;
    next.remove();
    next = after;
  }
}

/**
 * @param {Element} element
 * @param {boolean} shown
 */
export function show(element, shown) {
  element.toggleAttribute('hidden', !shown);
}

/**
 * Lets a button open a part of the page and shut it again. What is in the part is made when it is first opened: most never
 * are.
 * @param {HTMLElement} opener
 * @param {HTMLElement} part
 * @param {() => void} fill
 */
export function discloses(opener, part, fill) {
  let isFilled = false;
  opener.setAttribute('aria-expanded', 'false');
  show(part, false);
  opener.addEventListener('click', () => {
    const opened = opener.getAttribute('aria-expanded') !== 'true';
    if (opened && !isFilled) {
      isFilled = true;
      fill();
    }
    opener.setAttribute('aria-expanded', String(opened));
    show(part, opened);
  });
}

/**
 * Says something in an element that is there only while there is something to say.
 * @param {Element} element
 * @param {string | undefined} text
 */
export function say(element, text) {
  setText(element, text ?? '');
  show(element, Boolean(text));
}

let lastNumber = 0;

/** An id nothing else on the page has. */
export function freshId() {
  lastNumber += 1;
  return `e${lastNumber}`;
}
