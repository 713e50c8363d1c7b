import { inLanguage } from './language.ts';
import { scoutingEn } from './scouting.en.ts';
import { scoutingEs } from './scouting.es.ts';

/** The words of the scouting pages at the desk in the language in use. */
export const scoutingWords = inLanguage({ en: scoutingEn, es: scoutingEs });
