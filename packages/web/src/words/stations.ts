import { type StationsWords, stationsEn } from './stations.en.ts';

/** The words of Stations and traps in the language in use. A second language is a second object of this shape. */
export const stationsWords: StationsWords = stationsEn;
