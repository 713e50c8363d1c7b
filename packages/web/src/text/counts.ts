import { countsEn } from './counts.en.ts';
import { countsEs } from './counts.es.ts';
import { inLanguage } from './language.ts';

/** The words of the sheet of counts in the language in use. */
export const countsWords = inLanguage({ en: countsEn, es: countsEs });
