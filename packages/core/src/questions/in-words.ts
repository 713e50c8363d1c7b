/** A question in words: what is odd, how odd, and what to ask whom. */

import type { IsoDay } from '../base/day.ts';
import type { Language } from '../people/person.ts';
import { questionWordsEn } from './question-words.en.ts';
import { questionWordsEs } from './question-words.es.ts';
import type { QuestionWords } from './question-words.ts';
import type { RecordQuestion } from './types.ts';

const WORDS = { en: questionWordsEn, es: questionWordsEs } as const;

/**
 * Two or three sentences; names stay as the records have them.
 *
 * @param write how a day is written; as the records write it when left out
 */
export function questionInWords(
  question: RecordQuestion,
  language: Language,
  write: (day: IsoDay) => string = (day) => day,
): string {
  const words = WORDS[language];
  return [words.oddity(question, write), chance(question, words), words.asks[question.kind]]
    .filter((part) => part !== '')
    .join(' ');
}

function chance({ probability, inSeason }: RecordQuestion, words: QuestionWords): string {
  if (probability === null || inSeason === null) return '';
  return inSeason < 1e-6 ? words.hardlyEver : words.atMost(inSeason.toPrecision(1));
}
