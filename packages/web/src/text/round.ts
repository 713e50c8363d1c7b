import { inLanguage } from './language.ts';
import { roundEn } from './round.en.ts';
import { roundEs } from './round.es.ts';

/** The words of the round in the language in use. */
export const roundWords = inLanguage({ en: roundEn, es: roundEs });
