import { historyEn } from './history.en.ts';
import { historyEs } from './history.es.ts';
import { inLanguage } from './language.ts';

/** The words of histories and conflicts in the language in use. */
export const historyWords = inLanguage({ en: historyEn, es: historyEs });
