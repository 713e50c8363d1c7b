import { inLanguage } from './language.ts';
import { otherProgramEn } from './other-program.en.ts';
import { otherProgramEs } from './other-program.es.ts';

/** The words of the way from one program to the other in the language in use. */
export const otherProgramWords = inLanguage({ en: otherProgramEn, es: otherProgramEs });
