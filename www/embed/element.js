// @ts-check

// <stillroom-formula>: a shared formula as a weigh sheet on somebody else's page. Everything is in its shadow; the link
// inside it stands for readers without scripts. One copy of the seam serves every element of a page, and is fetched when
// the first of them comes into sight.

import { make } from '../dom/element.js';
import { createSheet } from './sheet.js';
import { style } from './style.js';
import { language, tableOf, words } from './words.js';

/** Where the formula opens at the reader's own bench. */
const bench = new URL('../../', import.meta.url);
const NAME = 'stillroom-formula';

/** @type {Promise<typeof import('../seam/stillroom.js')> | undefined} */
let seam;
/** Tells one attempt from the next: a browser may not ask twice for a module that failed to arrive. */
let attempt = '';

/** The seam, fetched once for every element of the page. */
function fetchSeam() {
  seam ??= (async () => {
    const form = /** @type {typeof import('../seam/stillroom.js')} */ (await import(`../seam/stillroom.js${attempt}`));
    /** @type {('main' | 'share' | 'names')[]} */
    const tables = language === 'en' ? ['main', 'share'] : ['main', 'share', 'names'];
    const [texts] = await Promise.all([Promise.all(tables.map(tableOf)), form.default()]);
    form.speak(language);
    tables.forEach((piece, at) => form.takeTexts(piece, texts[at] ?? ''));
    if (!(await new Promise((came) => form.fetchPiece('share', came))))
      throw new Error('what reads a link could not be fetched');
    return form;
  })().catch((problem) => {
    // Without a network now: the next element, or the next look, tries again.
    seam = undefined;
    attempt = `?${Date.now()}`;
    throw problem;
  });
  return seam;
}

/** @type {Promise<void> | undefined} */
let swap;

/** What finds something to take instead, fetched when a reader first lacks something. */
function fetchSwap() {
  swap ??= (async () => {
    const form = await fetchSeam();
    // What the checks find is said with the texts of the rooms beyond.
    /** @type {('whole' | 'swap' | 'words')[]} */
    const tables = language === 'en' ? ['whole', 'swap'] : ['whole', 'swap', 'words'];
    const [texts, came] = await Promise.all([
      Promise.all(tables.map(tableOf)),
      new Promise((done) => form.fetchPiece('swap', done)),
    ]);
    if (!came) throw new Error('what finds something to take instead could not be fetched');
    tables.forEach((piece, at) => form.takeTexts(piece, texts[at] ?? ''));
  })().catch((problem) => {
    swap = undefined;
    throw problem;
  });
  return swap;
}

/** @type {CSSStyleSheet | undefined} */
let styleSheet;

function sharedStyle() {
  if (!styleSheet) {
    styleSheet = new CSSStyleSheet();
    styleSheet.replaceSync(style);
  }
  return styleSheet;
}

const watcher = new IntersectionObserver(
  (entries) => {
    for (const { isIntersecting, target } of entries) {
      if (isIntersecting && target instanceof StillroomFormula) target.show();
    }
  },
  { rootMargin: '200px' },
);

/**
 * Attributes: `link` (an address, its fragment, or what stands behind `#f=`; without it the first link inside counts),
 * `batch` (as typed, such as `250 g`), `unit` (`g`, `oz`, `kg`, `lb`), `temperature` (`C`, `F`), `mark` (`point`, `comma`) and `without` (what a reader
 * lacks, as the sheet hands it to the page it prints).
 */
class StillroomFormula extends HTMLElement {
  static observedAttributes = ['link', 'batch', 'unit', 'temperature', 'mark', 'without'];

  /** @type {ShadowRoot} */
  #root;
  #shown = false;

  constructor() {
    super();
    this.#root = this.attachShadow({ mode: 'open' });
    this.#root.adoptedStyleSheets = [sharedStyle()];
    this.#root.append(make('div', { class: 'waiting' }, words.fetching));
  }

  connectedCallback() {
    watcher.observe(this);
  }

  disconnectedCallback() {
    watcher.unobserve(this);
  }

  attributeChangedCallback() {
    if (this.#shown) void this.#draw();
  }

  /** Draws the sheet; called when it comes into sight. */
  show() {
    if (this.#shown) return;
    this.#shown = true;
    watcher.unobserve(this);
    void this.#draw();
  }

  async #draw() {
    const link = this.getAttribute('link') ?? this.querySelector('a[href*="#f="]')?.getAttribute('href') ?? '';
    const letters = /^[\w=-]*$/.exec(link.slice(link.lastIndexOf('#') + 1))?.[0] ?? '';
    const fragment = letters.startsWith('f=') ? letters : `f=${letters}`;
    if (link === '') {
      this.#root.replaceChildren(make('p', { class: 'waiting' }, words.noFormula));
      return;
    }
    const address = `${bench.href}#${fragment}`;
    try {
      const { readShared, readSharedWithout } = await fetchSeam();
      const { root, show, settle } = createSheet({
        words,
        lacking: { fetch: fetchSwap, read: (options, lacks) => readSharedWithout(link, options, lacks) },
        without: this.getAttribute('without') ?? undefined,
        // The link itself, so that what is wrong with it is said rightly.
        read: (options) => readShared(link, options),
        batch: this.getAttribute('batch') ?? undefined,
        unit: this.getAttribute('unit') ?? 'g',
        temperature: this.getAttribute('temperature') === 'F' ? '°F' : '°C',
        mark:
          this.getAttribute('mark') === 'comma'
            ? 'comma'
            : this.getAttribute('mark') === 'point'
              ? 'point'
              : usualMark(),
        bench: address,
        print: ({ batch, massUnit, temperatureUnit, decimalMark }, without) => {
          const page = new URL('embed/frame.html', bench);
          page.search = new URLSearchParams({
            batch: batch ?? '',
            unit: massUnit ?? '',
            temperature: temperatureUnit === '°F' ? 'F' : 'C',
            mark: decimalMark ?? '',
            without,
            print: 'yes',
          }).toString();
          page.hash = fragment;
          return openApart(page.href);
        },
        heading: 'h3',
      });
      show();
      this.#root.replaceChildren(root);
      await settle();
      this.dispatchEvent(new CustomEvent('stillroom-shown', { bubbles: true }));
    } catch (problem) {
      console.warn(problem);
      this.#shown = false;
      this.#root.replaceChildren(
        make('p', { class: 'waiting' }, words.failed, ' ', make('a', { href: address, rel: 'noopener' }, words.open)),
      );
      addEventListener('online', () => this.show(), { once: true });
    }
  }
}

/**
 * Opens a page beside this one. Says whether the page around this one let that be; asked for a page without an opener, a
 * browser would not say.
 * @param {string} address
 */
function openApart(address) {
  const opened = open(address, '_blank');
  if (opened) opened.opener = null;
  return opened !== null;
}

/** The reader's decimal mark. @returns {'point' | 'comma'} */
function usualMark() {
  const parts = new Intl.NumberFormat(navigator.language).formatToParts(1.5);
  return parts.find((part) => part.type === 'decimal')?.value === ',' ? 'comma' : 'point';
}

// A second script tag, or a page that has such a name already, is left as it is.
if (!customElements.get(NAME)) customElements.define(NAME, StillroomFormula);
