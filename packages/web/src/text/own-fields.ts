import { inLanguage } from './language.ts';
import { ownFieldsEn } from './own-fields.en.ts';
import { ownFieldsEs } from './own-fields.es.ts';

/** The words of a grower's own fields in the language in use. */
export const ownFieldsWords = inLanguage({ en: ownFieldsEn, es: ownFieldsEs });
