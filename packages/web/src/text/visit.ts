import { inLanguage } from './language.ts';
import { visitEn } from './visit.en.ts';
import { visitEs } from './visit.es.ts';

/** The words of a visit to a trap in the language in use. */
export const visitWords = inLanguage({ en: visitEn, es: visitEs });
