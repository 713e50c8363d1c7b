import { inLanguage } from './language.ts';
import { offlineEn } from './offline.en.ts';
import { offlineEs } from './offline.es.ts';

/** The words of what a device keeps, in the language in use. */
export const offlineWords = inLanguage({ en: offlineEn, es: offlineEs });
