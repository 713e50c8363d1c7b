import { inLanguage } from './language.ts';
import { trapsEn } from './traps.en.ts';
import { trapsEs } from './traps.es.ts';

/** The words of Stations and traps in the language in use. */
export const trapsWords = inLanguage({ en: trapsEn, es: trapsEs });
