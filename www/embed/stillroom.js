// @ts-check

// The one script of a page that embeds a formula. Its address stays; what it fetches is named by its content, so that a
// page never mixes two versions.

void import(new URL('../assets/embed/element.js', import.meta.url).href);
