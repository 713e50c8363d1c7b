/** A look back at one season, farm by farm and for the program as a whole. */

import type { Verb } from '../advice/types.ts';
import { type Day, day } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import type { Shape } from '../base/shape.ts';
import type { Program } from '../records/program.ts';
import { farmOfTrap } from './farm-of-trap.ts';
import { type GrowingYear, growingYear } from './growing-year.ts';
import type { callsSchema } from './review-schema.ts';
import { type Prices, type SeasonCost, type SeasonWork, seasonCost } from './season-cost.ts';
import { type SeasonTiming, seasonTiming } from './season-timing.ts';
import { readVerbs, type SeasonVerbs, type VerbOptions, type VerbRun } from './season-verbs.ts';
import { type SeasonVisits, seasonVisits } from './season-visits.ts';
import { type TrapWithHistory, trapHistories } from './trap-histories.ts';

export interface Review {
  readonly timing: readonly SeasonTiming[];
  readonly visits: SeasonVisits;
  readonly calls: Calls;
  /** What was used, to be paid for. */
  readonly work: SeasonWork;
  readonly cost: SeasonCost;
}

/** Runs of verbs that asked for something, and what followed. */
export type Calls = Shape<typeof callsSchema>;

export interface FarmReview extends Review {
  readonly farm: string;
}

export interface SeasonReview {
  readonly season: GrowingYear;
  /** Last day looked at; before `season.to` the season is still open. */
  readonly through: Day;
  readonly open: boolean;
  readonly program: Review;
  readonly farms: readonly FarmReview[];
  readonly verbs: SeasonVerbs;
}

export interface ReviewOptions extends VerbOptions {
  /** The season that holds this day, as known on it. */
  readonly on: Day;
  readonly prices?: Prices | null;
}

/** Tells after each day read how far it has come, and returns the review. */
export function* reviewSeason(
  program: Program,
  { on, prices = null, ...verbOptions }: ReviewOptions,
): Generator<{ readonly done: number; readonly of: number }, SeasonReview, undefined> {
  const season = growingYear(program, on);
  const fields = new Map(program.fields.map((field) => [field.fieldId, field]));
  const lures = groupBy(program.lures, ({ trapId }) => trapId);
  const checks = groupBy(program.checks, ({ trapId }) => trapId);
  const traps = trapHistories(program, on).filter(
    ({ trap }) => trap.takenDownOn === null || day(trap.takenDownOn) >= season.from,
  );
  const verbs = yield* readVerbs(program, season, on, verbOptions);
  const samples = program.samples.filter(({ sampledOn }) => season.from <= day(sampledOn) && day(sampledOn) <= on);
  const review = (watched: readonly TrapWithHistory[], runs: readonly VerbRun[], sampled: number): Review => {
    const visits = seasonVisits(watched, lures, checks, season, on);
    const calls = callsOf(runs);
    const decisions = calls.given.decide;
    const work = { traps: watched.length, lures: visits.luresPlaced, visits: visits.visits, samples: sampled, decisions };
    const byInsect = groupBy(watched, ({ trap }) => trap.insect);
    return {
      timing: [...byInsect].map(([insect, own]) => seasonTiming(insect, own, season)),
      visits,
      calls,
      work,
      cost: seasonCost(work, prices),
    };
  };
  const farmOf = ({ trap }: TrapWithHistory) => farmOfTrap(trap, fields) ?? '';
  const farms = [...groupBy(traps, farmOf)].filter(([farm]) => farm !== '');
  return {
    season,
    through: on,
    open: on < season.to,
    program: review(traps, verbs.runs, samples.length),
    farms: farms.map(([farm, own]) => ({
      farm,
      ...review(
        own,
        verbs.runs.filter((run) => run.farm === farm),
        samples.filter(({ fieldId }) => fields.get(fieldId)?.farm === farm).length,
      ),
    })),
    verbs,
  };
}

/** How what was asked was answered. */
export function outcomeOf({ followed }: VerbRun): 'unanswered' | 'late' | 'in-time' {
  const answer = followed?.answer ?? null;
  if (answer === null) return 'unanswered';
  return (answer.daysLate ?? 0) > 0 ? 'late' : 'in-time';
}

function answeredOf(runs: readonly VerbRun[]): Calls['answered'] {
  const asked = runs.filter(({ followed }) => followed !== null);
  const late = asked
    .flatMap(({ followed }) => followed!.answer?.daysLate ?? [])
    .filter((days) => days > 0)
    .sort((a, b) => a - b);
  const count = (outcome: ReturnType<typeof outcomeOf>) => asked.filter((run) => outcomeOf(run) === outcome).length;
  return {
    inTime: count('in-time'),
    late: count('late'),
    unanswered: count('unanswered'),
    middleDaysLate: late.length === 0 ? null : late[late.length >> 1]!,
  };
}

function callsOf(runs: readonly VerbRun[]): Calls {
  const given: Record<Verb, number> = { watch: 0, scout: 0, decide: 0, covered: 0, blind: 0, none: 0 };
  for (const { verb } of runs) given[verb]++;
  const count = (verb: Verb, holds: (run: VerbRun) => boolean) => runs.filter((run) => run.verb === verb && holds(run)).length;
  const samples = new Map(
    runs.flatMap(({ field, insect, followed }) =>
      followed?.sample ? [[`${field}\n${insect}\n${followed.sample.on}`, followed.sample] as const] : [],
    ),
  );
  return {
    given,
    scoutSampled: count('scout', ({ followed }) => followed!.sample !== null),
    decideSampled: count('decide', ({ followed }) => followed!.sample !== null),
    decideTreated: count('decide', ({ followed }) => followed!.treatment !== null),
    answered: answeredOf(runs),
    sampledInfested: [...samples.values()].filter(({ infested }) => infested !== null && infested > 0).length,
  };
}

/** Runs it to the end. */
export function finished<R>(steps: Generator<unknown, R, undefined>): R {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
