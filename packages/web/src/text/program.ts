import { inLanguage } from './language.ts';
import { programEn } from './program.en.ts';
import { programEs } from './program.es.ts';

/** The words of the program’s own pages in the language in use. */
export const programWords = inLanguage({ en: programEn, es: programEs });
