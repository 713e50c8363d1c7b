/** Sums over whole seasons that take longer than a request may hold up the others. */
import {
  ASSUMPTIONS,
  day,
  type Entry,
  finished,
  type IsoDay,
  type LearnView,
  learnView,
  type Program,
  type QuestionsView,
  questionsView,
  type ReviewView,
  reviewView,
  type YearsView,
  yearsView,
} from '@duskwatch/core';

export interface Results {
  readonly learn: LearnView;
  readonly review: ReviewView;
  readonly years: YearsView;
  readonly questions: QuestionsView;
}

export type Task = { readonly on: IsoDay } & (
  | { readonly kind: 'learn' | 'review' }
  | { readonly kind: 'years'; readonly insect: string; readonly farm: string | null }
  | { readonly kind: 'questions'; readonly entries: readonly Entry[] }
);

export type ResultOf<T extends Task> = Results[T['kind']];

/** Says how far it has come where it can, and returns the result; the caller decides when to go on. */
export function* work(task: Task, program: Program): Generator<unknown, Results[Task['kind']], undefined> {
  const on = day(task.on);
  switch (task.kind) {
    case 'learn':
      return learnView(program, { on, level: ASSUMPTIONS.intervalLevel.value });
    case 'review':
      return yield* reviewView(program, { on });
    case 'years':
      return yearsView(program, { on, insect: task.insect, farm: task.farm });
    case 'questions':
      return questionsView(program, { on, entries: task.entries });
  }
}

export const workAtOnce = (task: Task, program: Program): Results[Task['kind']] => finished(work(task, program));
