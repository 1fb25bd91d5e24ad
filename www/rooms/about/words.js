// @ts-check

// The fixed texts about the numbers, in the language of the page.

import { wordsOf } from '../../dom/language.js';

export const words = /** @type {import('../../words.js').AboutWords} */ (await wordsOf('about'));
