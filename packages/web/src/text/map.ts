import { inLanguage } from './language.ts';
import { mapEn } from './map.en.ts';
import { mapEs } from './map.es.ts';

/** The words of the map in the language in use. */
export const mapWords = inLanguage({ en: mapEn, es: mapEs });
