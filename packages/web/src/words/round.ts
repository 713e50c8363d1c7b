import { type RoundWords, roundEn } from './round.en.ts';

/** The words of the round in the language in use. A second language is a second object of this shape. */
export const roundWords: RoundWords = roundEn;
