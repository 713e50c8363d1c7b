import { barEn } from './bar.en.ts';
import { barEs } from './bar.es.ts';
import { inLanguage } from './language.ts';

/** The words of the bar on a phone in the language in use. */
export const barWords = inLanguage({ en: barEn, es: barEs });
