// @ts-check

// The fixed texts that belong to no room, in the language of the page.

import { wordsOf } from './language.js';

export const words = /** @type {import('../words.js').CommonWords} */ (await wordsOf('common'));
