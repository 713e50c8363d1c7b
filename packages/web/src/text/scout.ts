import { scoutingWording } from '@duskwatch/core';
import { inLanguage, language } from './language.ts';
import { scoutEn } from './scout.en.ts';
import { scoutEs } from './scout.es.ts';

/** The words of scouting in the language in use. */
export const scoutWords = inLanguage({ en: scoutEn, es: scoutEs });
/** The core's sentences about plans, in the same language. */
export const planWords = scoutingWording(language);
