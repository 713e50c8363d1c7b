import { fieldPageEn } from './field-page.en.ts';
import { fieldPageEs } from './field-page.es.ts';
import { inLanguage } from './language.ts';

/** What a field's page says in the language in use. */
export const fieldPageWords = inLanguage({ en: fieldPageEn, es: fieldPageEs });
