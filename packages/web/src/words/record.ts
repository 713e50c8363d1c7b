import { type RecordWords, recordEn } from './record.en.ts';

/** The words of the forms in the language in use. A second language is a second object of this shape. */
export const recordWords: RecordWords = recordEn;
