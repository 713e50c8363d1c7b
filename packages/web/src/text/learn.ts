import { inLanguage } from './language.ts';
import { learnEn } from './learn.en.ts';
import { learnEs } from './learn.es.ts';

/** The words of Learn in the language in use. */
export const learnWords = inLanguage({ en: learnEn, es: learnEs });
