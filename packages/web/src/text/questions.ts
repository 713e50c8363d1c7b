import { inLanguage } from './language.ts';
import { questionsEn } from './questions.en.ts';
import { questionsEs } from './questions.es.ts';

/** The words of the questions in the language in use. */
export const questionsWords = inLanguage({ en: questionsEn, es: questionsEs });
