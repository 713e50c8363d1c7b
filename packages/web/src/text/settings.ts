import { inLanguage } from './language.ts';
import { settingsEn } from './settings.en.ts';
import { settingsEs } from './settings.es.ts';

/** The words of the settings in the language in use. */
export const settingsWords = inLanguage({ en: settingsEn, es: settingsEs });
