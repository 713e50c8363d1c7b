import { inLanguage } from './language.ts';
import { tableEn } from './table.en.ts';
import { tableEs } from './table.es.ts';

/** What every table offers, in the language in use. */
export const tableWords = inLanguage({ en: tableEn, es: tableEs });
