import { inLanguage } from './language.ts';
import { recordEn } from './record.en.ts';
import { recordEs } from './record.es.ts';

/** The words of the forms that write records in the language in use. */
export const recordWords = inLanguage({ en: recordEn, es: recordEs });
