import { inLanguage } from './language.ts';
import { moreEn } from './more.en.ts';
import { moreEs } from './more.es.ts';

/** The words of the page that leads to all else on a phone in the language in use. */
export const moreWords = inLanguage({ en: moreEn, es: moreEs });
