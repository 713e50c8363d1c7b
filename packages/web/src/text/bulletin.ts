import { bulletinPageEn } from './bulletin.en.ts';
import { bulletinPageEs } from './bulletin.es.ts';
import { inLanguage } from './language.ts';

/** The words of the bulletin's page in the language in use; the bulletin itself has one of its own. */
export const bulletinWords = inLanguage({ en: bulletinPageEn, es: bulletinPageEs });
