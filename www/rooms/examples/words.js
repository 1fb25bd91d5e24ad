// @ts-check

// The fixed texts of the examples, in the language of the page.

import { wordsOf } from '../../dom/language.js';

export const words = /** @type {import('../../words.js').ExamplesWords} */ (await wordsOf('examples'));
