import { flightsEn } from './flights.en.ts';
import { flightsEs } from './flights.es.ts';
import { inLanguage } from './language.ts';

/** The words of flights, forecasts and larvae in the language in use. */
export const flightsWords = inLanguage({ en: flightsEn, es: flightsEs });
