import { skipReasonWords } from '@duskwatch/core';
import { inLanguage } from './language.ts';

/** Of traps that were passed by, in the language in use. */
export const skippedWords = inLanguage({
  en: { said: (date: string, reason: string) => `skipped ${date}: ${reason}`, reasons: skipReasonWords.en },
  es: { said: (date: string, reason: string) => `se saltó el ${date}: ${reason}`, reasons: skipReasonWords.es },
});
