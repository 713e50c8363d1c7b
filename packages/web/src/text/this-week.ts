import { inLanguage } from './language.ts';
import { thisWeekEn } from './this-week.en.ts';
import { thisWeekEs } from './this-week.es.ts';

/** What This week says of itself in the language in use. */
export const thisWeekWords = inLanguage({ en: thisWeekEn, es: thisWeekEs });
