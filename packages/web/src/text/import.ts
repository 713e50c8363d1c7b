import { sheetEnglish, sheetSpanish } from '@duskwatch/core';
import { importEn } from './import.en.ts';
import { importEs } from './import.es.ts';
import { inLanguage } from './language.ts';

/** The words of the import page in the language in use. */
export const importWords = inLanguage({ en: importEn, es: importEs });
/** The core's sentences about a sheet. */
export const sheetWords = inLanguage({ en: sheetEnglish, es: sheetSpanish });
