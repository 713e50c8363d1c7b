import { day, lessonsOf, type Program, reviewSeason, type SeasonReview, yearsAgainst } from '@duskwatch/core';
import { done, misused, type Outcome } from '../outcome.ts';
import { pricesFrom } from '../prices.ts';
import { progressBar } from '../progress.ts';
import { programOnDay, type ReadOptions, titleOf } from '../read-program.ts';
import { print } from '../terminal.ts';
import { jsonWithDays } from '../written-days.ts';
import { lessonLines, reviewLines } from '../written-lessons.ts';

export interface LearnOptions extends ReadOptions {
  readonly prices?: string;
}

/** Names under which core's reviews keep days. */
const DAYS = ['on', 'from', 'to', 'through', 'earliest', 'placedOn', 'dueOn', 'changedOn', 'drawnFrom', 'drawnTo'];

export async function learn(folder: string | undefined, options: LearnOptions): Promise<Outcome> {
  const prices = options.prices === undefined ? null : pricesFrom(options.prices);
  if (prices && !prices.ok) return misused(...prices.problems);
  const read = await programOnDay(folder, options);
  if ('exit' in read) return read;
  const { program } = read;
  const on = day(read.on);
  const review = await watched(reviewSeason(program, { on, prices: prices?.ok ? prices.value : null }));
  const lessons = lessonsOf(program, { on });
  if (options.json) {
    const years = insectsTrapped(program).map((insect) => yearsAgainst(program, { on, insect }));
    print(jsonWithDays({ on: read.on, review, lessons, years }, DAYS));
  } else print([titleOf(read), '', ...reviewLines(review), '', ...lessonLines(lessons)].join('\n'));
  return done;
}

const insectsTrapped = ({ traps }: Program): string[] => [...new Set(traps.map(({ insect }) => insect))].sort();

async function watched(steps: ReturnType<typeof reviewSeason>): Promise<SeasonReview> {
  const bar = await progressBar('days read');
  for (;;) {
    const step = steps.next();
    if (step.done) {
      bar.stop();
      return step.value;
    }
    bar.update(step.value.done, step.value.of);
  }
}
