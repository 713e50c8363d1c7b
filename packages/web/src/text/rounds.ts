import { inLanguage } from './language.ts';
import { roundsEn } from './rounds.en.ts';
import { roundsEs } from './rounds.es.ts';

/** The words of planning rounds in the language in use. */
export const roundsWords = inLanguage({ en: roundsEn, es: roundsEs });
