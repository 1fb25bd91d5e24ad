// @ts-check

// The post: the page that a maker publishes about the open formula; what is in it, how it reads, and how it is taken along.

import { site } from '../../address.js';
import { createChecks } from '../../dom/checks.js';
import { createDescribedFields } from '../../dom/described.js';
import { button, make, say, setText, show } from '../../dom/element.js';
import { fileName, saveFile } from '../../dom/save.js';
import { createArticle } from './article.js';
import { createPicture } from './picture.js';
import { explained } from '../terms/explained.js';
import { words as text } from './words.js';

/** @typedef {import('../../session.js').Session} Session */
/** @typedef {import('../../seam/stillroom.js').PostView} PostView */

/**
 * @param {HTMLElement} place
 * @param {Session} session
 */
export function furnish(place, session) {
  const send = (/** @type {string} */ field, /** @type {string} */ typed) =>
    void session.send({ do: 'set-post-field', field, text: typed });
  const problem = make('p', { class: 'finding caution', hidden: true });
  const sizes = createDescribedFields(send, 'post-sizes');
  const parts = createChecks('post-parts', (field, there) => send(field, there ? '' : 'no'));
  const article = createArticle();
  const picture = createPicture(send);
  const failed = make('p', { class: 'message', role: 'alert', hidden: true });
  /** @type {PostView | undefined} */
  let shown;
  const acts = createActs(() => shown);
  const part = (/** @type {string} */ title, /** @type {Element[]} */ ...inside) =>
    make('section', { class: 'post-part no-print' }, make('h3', {}, title), ...inside);
  const body = make(
    'div',
    { class: 'post-desk', hidden: true },
    // What is chosen; beside it, or below, how it reads.
    make(
      'div',
      {},
      part(text.acts, acts),
      part(text.sizes, sizes.root),
      part(text.parts, parts.root, failed),
      part(text.picture, picture.root),
    ),
    make('section', { class: 'post-part' }, make('h3', { class: 'no-print' }, text.preview), article.root),
  );
  place.setAttribute('aria-labelledby', 'post-title');
  place.append(
    make('h2', { id: 'post-title', class: 'no-print' }, text.title),
    make('p', { class: 'quiet no-print' }, text.intro),
    make('p', { class: 'acts no-print' }, make('a', { href: '#share' }, text.back)),
    problem,
    body,
    explained('markdown', 'embedding', 'inci', 'leave-on', 'patch-test'),
  );

  session.listen(({ post }) => {
    if (!post) return;
    shown = post;
    say(problem, post.problem);
    show(body, post.problem === '');
    if (post.problem !== '') return;
    sizes.show(post.sizes);
    parts.show(post.parts.map(({ label, about, ...each }) => ({ ...each, text: label, remark: about })));
    article.show(post);
    if (post.picture) picture.show(post.picture, post.title);
  });

  const look = (/** @type {boolean} */ looking) =>
    void session.send({ do: 'look-at-post', looking, address: site.href });
  let isHere = false;
  // It is worked out only while somebody looks at it. What can be taken instead comes later than all else.
  return {
    async enter() {
      isHere = true;
      look(true);
      try {
        await session.swap();
        say(failed, undefined);
        if (isHere) look(true);
      } catch (problem) {
        console.warn(problem);
        say(failed, text.notFetched);
      }
    },
    leave() {
      isHere = false;
      look(false);
    },
  };
}

/** What is done with the post. @param {() => PostView | undefined} post */
function createActs(post) {
  const said = make('span', { class: 'quiet', role: 'status' });
  const copy = async (/** @type {string} */ content) => {
    try {
      await navigator.clipboard.writeText(content);
      setText(said, text.copied);
    } catch {
      setText(said, text.notCopied);
    }
  };
  return make(
    'div',
    { class: 'acts' },
    button(text.copyMarkdown, () => void copy(post()?.markdown ?? ''), { class: 'main-act' }),
    button(text.copyHtml, () => void copy(post()?.html ?? '')),
    button(text.savePage, () => {
      const view = post();
      if (view) saveFile(`${fileName(view.title)}.html`, [view.page], 'text/html');
    }),
    button(text.print, () => globalThis.print()),
    said,
  );
}
