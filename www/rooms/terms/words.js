// @ts-check

// The words of the trade with their meanings, in the language of the page.

import { wordsOf } from '../../dom/language.js';

export const words = /** @type {import('../../words.js').TermsWords} */ (await wordsOf('terms'));
