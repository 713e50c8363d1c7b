import { en } from './en.ts';

/** The words of the language in use. A second language is a second object of this shape. */
export type Words = typeof en;
export const words: Words = en;
