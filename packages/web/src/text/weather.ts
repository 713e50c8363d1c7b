import { inLanguage } from './language.ts';
import { weatherEn } from './weather.en.ts';
import { weatherEs } from './weather.es.ts';

/** The words of the page of weather sources in the language in use. */
export const weatherWords = inLanguage({ en: weatherEn, es: weatherEs });
