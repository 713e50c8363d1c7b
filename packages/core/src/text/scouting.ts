/** The words of scouting plans and sheets, by language. */
import type { Language } from '../people/person.ts';
import { scoutingEn } from './scouting.en.ts';
import { scoutingEs } from './scouting.es.ts';
import type { ScoutingWording } from './scouting-types.ts';

export const scoutingWording = (language: Language): ScoutingWording => ({ en: scoutingEn, es: scoutingEs })[language];
