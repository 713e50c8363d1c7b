import { inLanguage } from './language.ts';
import { weekSheetEn } from './week-sheet.en.ts';
import { weekSheetEs } from './week-sheet.es.ts';

/** The words of the printed week in the language in use. */
export const weekSheetWords = inLanguage({ en: weekSheetEn, es: weekSheetEs });
