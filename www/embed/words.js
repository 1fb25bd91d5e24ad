// @ts-check

// The fixed texts of a shared formula, in the language of the page it stands on, or of the reader.

const LANGUAGES = ['en', 'de', 'fr'];

/** The language of an embedded formula: of the page around it, if it says one that there is. */
export const language =
  [document.documentElement.lang, ...navigator.languages]
    .map((tag) => tag.toLowerCase().split('-')[0] ?? '')
    .find((tag) => LANGUAGES.includes(tag)) ?? 'en';

/** @type {{ words: import('../words.js').EmbedWords }} */
const said = await import(new URL(`../words/${language}/embed.js`, import.meta.url).href);

export const words = said.words;

/**
 * A table of texts of the session.
 * @param {'main' | 'share' | 'whole' | 'swap' | 'names' | 'words'} piece
 */
export async function tableOf(piece) {
  const answer = await fetch(new URL(`../texts/${language}-${piece}.txt`, import.meta.url));
  if (!answer.ok) throw new Error(`the texts of ${piece} answered ${answer.status}`);
  return answer.text();
}
