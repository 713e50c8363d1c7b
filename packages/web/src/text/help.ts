import { helpEn } from './help.en.ts';
import { helpEs } from './help.es.ts';
import { inLanguage } from './language.ts';

/** The words of the help in the language in use. */
export const helpWords = inLanguage({ en: helpEn, es: helpEs });
