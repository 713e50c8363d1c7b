import { inLanguage } from './language.ts';
import { stationsEn } from './stations.en.ts';
import { stationsEs } from './stations.es.ts';

/** The words of Stations and traps in the language in use. */
export const stationsWords = inLanguage({ en: stationsEn, es: stationsEs });
