import { inLanguage } from './language.ts';
import { seasonEn } from './season.en.ts';
import { seasonEs } from './season.es.ts';

/** The words of the season pages in the language in use. */
export const seasonWords = inLanguage({ en: seasonEn, es: seasonEs });
