import { inLanguage } from './language.ts';
import { reviewEn } from './review.en.ts';
import { reviewEs } from './review.es.ts';

/** The words of the season's review in the language in use. */
export const reviewWords = inLanguage({ en: reviewEn, es: reviewEs });
