import { firstEn } from './first.en.ts';
import { firstEs } from './first.es.ts';
import { inLanguage } from './language.ts';

/** The words of a program's first steps in the language in use. */
export const firstWords = inLanguage({ en: firstEn, es: firstEs });
