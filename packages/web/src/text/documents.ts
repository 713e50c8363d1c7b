import { documentsEn } from './documents.en.ts';
import { documentsEs } from './documents.es.ts';
import { inLanguage } from './language.ts';

/** The words of labels and checklists in the language in use. */
export const documentsWords = inLanguage({ en: documentsEn, es: documentsEs });
