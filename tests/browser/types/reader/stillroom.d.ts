// Where the page's scripts look for the generated seam, the type check finds its kept types.
export * from '../../../../www/seam.js';
export { default } from '../../../../www/seam.js';
