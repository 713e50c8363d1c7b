import { type HistoryWords, historyEn } from './history.en.ts';

/** The words of histories and conflicts in the language in use. A second language is a second object of this shape. */
export const historyWords: HistoryWords = historyEn;
