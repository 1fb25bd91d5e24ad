// @ts-check

// The post as it reads, and as it is printed.

import { draw, make } from '../../dom/element.js';

/** @typedef {import('../../seam/stillroom.js').PostView} PostView */
/** @typedef {import('../../seam/stillroom.js').PostBlockView} PostBlockView */

export function createArticle() {
  const root = make('article', { class: 'post-article' });
  return {
    root,
    /** @param {PostView} view */
    show(view) {
      const sections = view.sections.map(({ part, title, blocks }) =>
        make('section', { 'data-part': part }, make('h5', {}, title), ...blocks.map(drawBlock)),
      );
      root.replaceChildren(
        make('h4', { dir: 'auto' }, view.title),
        make('p', { class: 'quiet' }, view.about),
        ...sections,
      );
    },
  };
}

/** @param {PostBlockView} block @returns {Element} */
function drawBlock(block) {
  switch (block.kind) {
    case 'list':
    case 'steps':
      return make(
        block.kind === 'steps' ? 'ol' : 'ul',
        {},
        ...block.items.map(({ lead, text }) =>
          lead === '' ? make('li', {}, text) : make('li', {}, make('strong', {}, lead), ' ', text),
        ),
      );
    case 'table':
      return drawTable(block);
    case 'link':
      return make('p', {}, make('a', { href: block.address }, block.text));
    case 'snippet':
      return make('pre', { tabindex: '0' }, make('code', {}, block.text));
    case 'code':
      return drawCode(block);
    default:
      return make('p', {}, block.text);
  }
}

/** @param {PostBlockView} block */
function drawTable({ text, heads, rows }) {
  return make(
    'div',
    { class: 'post-table', tabindex: '0', role: 'group', 'aria-label': text },
    make(
      'table',
      {},
      make('caption', {}, text),
      make('thead', {}, make('tr', {}, ...heads.map((head) => make('th', { scope: 'col' }, head)))),
      make(
        'tbody',
        {},
        ...rows.map(({ kind, cells: [first = '', ...others] }) =>
          make(
            'tr',
            { 'data-kind': kind },
            kind === 'phase'
              ? make('th', { colspan: heads.length, scope: 'colgroup' }, first)
              : make('th', { scope: 'row', dir: 'auto' }, first),
            ...others.map((cell) => make('td', {}, cell)),
          ),
        ),
      ),
    ),
  );
}

/** @param {PostBlockView} block */
function drawCode({ text, code }) {
  if (!code) return make('p', {}, text);
  const { side, path, millimetres } = code;
  const drawing = draw(
    'svg',
    {
      class: 'post-code',
      role: 'img',
      viewBox: `0 0 ${side} ${side}`,
      'aria-label': text,
      'shape-rendering': 'crispEdges',
    },
    draw('path', { fill: '#000', d: path }),
  );
  drawing.style.setProperty('--code-width', `${millimetres}mm`);
  return make('p', {}, drawing);
}
