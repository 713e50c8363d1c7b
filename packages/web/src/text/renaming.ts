import { inLanguage } from './language.ts';
import { renamingEn } from './renaming.en.ts';
import { renamingEs } from './renaming.es.ts';

/** The words of changing an identifier in the language in use. */
export const renamingWords = inLanguage({ en: renamingEn, es: renamingEs });
