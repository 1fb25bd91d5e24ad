// @ts-check

// Lists that follow what there is to show. What stays, stays as it is: with its focus, its open parts and what is being
// typed in it.

import { arrange, make, setText } from './element.js';

/**
 * What stands for one view.
 * @template View
 * @typedef {{ root: Element, show?: (view: View, at: number) => void, forget?: () => void }} Item
 */

/**
 * Things by key, each made when it is first asked for.
 * @template Key
 * @template {{ root: Element, forget?: () => void }} Thing
 * @param {(key: Key) => Thing} create
 */
export function byKey(create) {
  /** @type {Map<Key, Thing>} */
  const things = new Map();
  return {
    /** @param {Key} key */
    of(key) {
      let thing = things.get(key);
      if (!thing) {
        thing = create(key);
        things.set(key, thing);
      }
      return thing;
    },
    /** @param {Key} key */
    get: (key) => things.get(key),
    all: () => things.values(),
    /** Lets go of all but some. @param {Iterable<Key>} keys */
    keep(keys) {
      const kept = new Set(keys);
      for (const [key, thing] of things) {
        if (kept.has(key)) continue;
        things.delete(key);
        thing.forget?.();
      }
    },
  };
}

/** What stands in each list, by key. @type {WeakMap<Element, Map<unknown, Item<any>>>} */
const standing = new WeakMap();

/**
 * Shows views in a list. What stands for a view is made once and shown the view each time, for as long as a view of its
 * key is there.
 * @template View
 * @param {Element} list
 * @param {readonly View[]} views
 * @param {(view: View, at: number) => Item<View>} create
 * @param {(view: View, at: number) => unknown} [keyOf] tells one view from the next; without it, its place does
 */
export function keyed(list, views, create, keyOf = (_, at) => at) {
  const before = standing.get(list) ?? new Map();
  /** @type {Map<unknown, Item<View>>} */
  const now = new Map();
  const roots = views.map((view, at) => {
    const key = keyOf(view, at);
    const item = before.get(key) ?? create(view, at);
    before.delete(key);
    now.set(key, item);
    item.show?.(view, at);
    return item.root;
  });
  standing.set(list, now);
  // First what is gone, so that nothing that stays has to move.
  for (const item of before.values()) item.root.remove();
  arrange(list, roots);
  // Last, since to forget may bring about another change.
  for (const item of before.values()) item.forget?.();
}

/**
 * Shows lines of text in a list, an element for each.
 * @param {Element} list
 * @param {'li' | 'p'} tag
 * @param {readonly string[]} lines
 * @param {import('./element.js').Properties} [properties]
 */
export function texts(list, tag, lines, properties = {}) {
  keyed(list, lines, () => {
    const root = make(tag, properties);
    return { root, show: (line) => setText(root, line) };
  });
}
