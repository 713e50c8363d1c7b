/** What takes longer than a request may hold up the others. */
import {
  ASSUMPTIONS,
  day,
  type Entry,
  finished,
  type IsoDay,
  type LessonsView,
  lessonsView,
  type Program,
  type QuestionsView,
  questionsView,
  type ReviewView,
  type RoundPlace,
  type RoundWay,
  reviewView,
  roundWay,
  type YearsView,
  yearsView,
} from '@duskwatch/core';

export interface Results {
  readonly lessons: LessonsView;
  readonly review: ReviewView;
  readonly years: YearsView;
  readonly questions: QuestionsView;
  readonly way: RoundWay;
}

export type Task =
  | ({ readonly on: IsoDay } & (
      | { readonly kind: 'lessons' | 'review' }
      | { readonly kind: 'years'; readonly insect: string; readonly farm: string | null }
      | { readonly kind: 'questions'; readonly entries: readonly Entry[] }
    ))
  | { readonly kind: 'way'; readonly places: readonly RoundPlace[] };

export type ResultOf<T extends Task> = Results[T['kind']];

/** Says how far it has come where it can, and returns the result; the caller decides when to go on. */
export function* stepsOf(task: Task, given: Program | null): Generator<unknown, Results[Task['kind']], undefined> {
  if (task.kind === 'way') return roundWay(task.places);
  if (given === null) throw new Error(`${task.kind} is about a program`);
  const on = day(task.on);
  switch (task.kind) {
    case 'lessons':
      return lessonsView(given, { on, level: ASSUMPTIONS.intervalLevel.value });
    case 'review':
      return yield* reviewView(given, { on });
    case 'years':
      return yearsView(given, { on, insect: task.insect, farm: task.farm });
    case 'questions':
      return questionsView(given, { on, entries: task.entries });
  }
}

export const workAtOnce = (task: Task, program: Program | null): Results[Task['kind']] => finished(stepsOf(task, program));
