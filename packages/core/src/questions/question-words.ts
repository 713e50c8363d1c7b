/** What each language has to say about questions. */
import type { IsoDay } from '../base/day.ts';
import type { RecordQuestion } from './types.ts';

export interface QuestionWords {
  readonly oddity: (question: RecordQuestion, write: (day: IsoDay) => string) => string;
  /** How rarely a sound season shows it. */
  readonly hardlyEver: string;
  readonly atMost: (probability: string) => string;
  readonly asks: Readonly<Record<RecordQuestion['kind'], string>>;
}

/** Moths to be expected, as far as they are known. */
export const expectedText = (value: number | null, unknown: string): string =>
  value === null ? unknown : value < 10 ? value.toFixed(1) : value.toFixed(0);
