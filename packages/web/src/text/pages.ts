import { inLanguage } from './language.ts';
import { pagesEn } from './pages.en.ts';
import { pagesEs } from './pages.es.ts';

/** The names of the pages in the language in use. */
export const pagesWords = inLanguage({ en: pagesEn, es: pagesEs });
