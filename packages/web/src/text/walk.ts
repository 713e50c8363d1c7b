import { scoutingWording } from '@duskwatch/core';
import { inLanguage, language } from './language.ts';
import { walkEn } from './walk.en.ts';
import { walkEs } from './walk.es.ts';

/** The words of scouting in the language in use. */
export const walkWords = inLanguage({ en: walkEn, es: walkEs });
/** The core's sentences about plans, in the same language. */
export const planWords = scoutingWording(language);
