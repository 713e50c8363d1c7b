import { en } from './en.ts';
import { es } from './es.ts';
import { inLanguage, locale } from './language.ts';

export type { Words } from './en.ts';
/** The words of the language in use. Every area has a file of them in each language, of one shape. */
export const words = { ...inLanguage({ en, es }), locale };
