import { type MapWords, mapEn } from './map.en.ts';

/** The words of the map in the language in use. A second language is a second object of this shape. */
export const mapWords: MapWords = mapEn;
