/** An id for an element, of words that people chose: lists of ids have spaces between, so that one with a space in it names nothing. */
export const domId = (...words: readonly string[]): string =>
  words.map((word) => word.replace(/[^\p{L}\p{N}-]/gu, (sign) => `_${sign.codePointAt(0)!.toString(16)}`)).join('__');
