import { inLanguage } from './language.ts';
import { recordPageEn } from './record-page.en.ts';
import { recordPageEs } from './record-page.es.ts';

/** The words of what a grower writes down on a phone in the language in use. */
export const recordPageWords = inLanguage({ en: recordPageEn, es: recordPageEs });
