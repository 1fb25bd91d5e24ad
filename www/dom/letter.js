// @ts-check

/** What a phase is called in a procedure, by its place. @param {number} at */
export const letterOf = (at) => 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'[at] ?? '';
