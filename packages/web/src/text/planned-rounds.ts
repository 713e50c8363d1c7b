import { inLanguage } from './language.ts';
import { plannedRoundsEn } from './planned-rounds.en.ts';
import { plannedRoundsEs } from './planned-rounds.es.ts';

/** The words of planning rounds in the language in use. */
export const plannedRoundsWords = inLanguage({ en: plannedRoundsEn, es: plannedRoundsEs });
