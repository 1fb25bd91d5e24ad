// @ts-check

// Where the files of this build lie. A script cannot tell by its own address: what is fetched together is joined.

/** The folder that is named by the content of the build. */
export const build = new URL('./', import.meta.url);
/** The site. */
export const site = new URL('../', build);
