import { inLanguage } from './language.ts';
import { peopleEn } from './people.en.ts';
import { peopleEs } from './people.es.ts';

/** The words of signing in, joining and people in the language in use. */
export const peopleWords = inLanguage({ en: peopleEn, es: peopleEs });
