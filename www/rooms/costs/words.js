// @ts-check

// The fixed texts of the room, in the language of the page.

import { wordsOf } from '../../dom/language.js';

export const words = /** @type {import('../../words.js').CostsWords} */ (await wordsOf('costs'));
