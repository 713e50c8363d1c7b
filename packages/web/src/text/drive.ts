import { driveEn } from './drive.en.ts';
import { driveEs } from './drive.es.ts';
import { inLanguage } from './language.ts';

/** The words of the drive in the language in use. */
export const driveWords = inLanguage({ en: driveEn, es: driveEs });
