import { findEn } from './find.en.ts';
import { findEs } from './find.es.ts';
import { inLanguage } from './language.ts';

/** The words of the search in the language in use. */
export const findWords = inLanguage({ en: findEn, es: findEs });
