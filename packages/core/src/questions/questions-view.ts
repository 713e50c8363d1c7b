/** The season's questions with what was answered to them. */

import { type Day, day, daysBetween, formatDay } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import type { AnswerRecord } from '../records/schema.ts';
import { QUALITY_ASSUMPTIONS } from './assumptions.ts';
import type { Entry } from './entries.ts';
import { recordQuestions } from './questions.ts';
import type { AskedQuestion, QuestionsView, RecordQuestion } from './types.ts';

export function questionsView(
  program: Program,
  { on, entries = [] }: { readonly on: Day; readonly entries?: readonly Entry[] },
): QuestionsView {
  const { season, questions, visits, compared } = recordQuestions(program, { on, entries });
  const answers = new Map(program.answers.map((answer) => [answer.question, answer]));
  const asked = questions.map((question): AskedQuestion => {
    const key = questionKey(question, season.year);
    const said = answers.get(key);
    return {
      key,
      question,
      answer: said && holds(said, on) ? { answer: said.answer, answeredOn: said.answeredOn, note: said.note } : null,
    };
  });
  return {
    on: formatDay(on),
    year: season.year,
    visits,
    compared,
    open: asked.filter(({ answer }) => answer === null),
    settled: asked.filter(({ answer }) => answer !== null),
  };
}

/** An answer holds for good; one put off until it is time to ask again. */
const holds = ({ answer, answeredOn }: AnswerRecord, on: Day): boolean =>
  answer !== 'later' || daysBetween(day(answeredOn), on) < QUALITY_ASSUMPTIONS.askAgainDays.value;

/** Other figures make another question; what grows with the season (a silent trap, rounded counts) is asked once in it. */
export function questionKey(question: RecordQuestion, year: number): string {
  const [first] = question.checks;
  const at = first ? `${first.trapId} ${first.checkedOn}` : '';
  const about = () => {
    switch (question.kind) {
      case 'unlikely-count':
        return `${at} ${first!.count}`;
      case 'columns-swapped':
        return `${at} ${first!.count} ${first!.others}`;
      case 'repeated-count':
        return `${at} ${question.value}`;
      case 'same-count-everywhere':
        return `${question.farm ?? ''} ${first!.checkedOn} ${question.value}`;
      case 'entered-in-bulk':
        return `${question.author} ${at} ${question.checks.length}`;
      case 'rounded-counts':
        return `${question.farm ?? ''} ${year}`;
      case 'silent-trap':
      case 'loud-trap':
        return `${first!.trapId} ${year}`;
      case 'swapped-traps':
        return `${[...question.traps].sort().join(' ')} ${year}`;
    }
  };
  return `${question.kind} ${about()}`;
}
