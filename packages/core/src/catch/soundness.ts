/** What a season's records say of whether a trap is sound: it catches hardly anything, or far more, where others do not. */

import type { Day } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { logGamma } from '../statistics/gamma-function.ts';
import { betaCdf } from '../statistics/incomplete-beta.ts';
import type { TrapOfSeason } from './nights-of-kind.ts';
import type { CatchInterval } from './types.ts';

export interface TrapDoubt {
  /** `silent`: nothing while others catch. `loud`: many times what others catch. */
  readonly kind: 'silent' | 'loud';
  /** A strong doubt is one that no place explains; a loud trap is never doubted strongly, for its moths are there. */
  readonly degree: 'moderate' | 'strong';
  /** The nights it rests on: from the first, to the last visit. */
  readonly since: Day;
  readonly to: Day;
  readonly nights: number;
  /** Moths in them, and what each of the other traps caught at the mean. */
  readonly count: number;
  readonly expected: number;
  /** Probability that a sound trap shows this, places differing as they do. */
  readonly chance: number;
}

/** What all traps of a kind saw, night by night, as running totals from the first night on. */
export interface NightsSeen {
  readonly start: Day;
  readonly moths: Float64Array;
  /** Traps that saw each night. */
  readonly watchers: Float64Array;
}

/** Null where no trap has a visit. Moths of a visit are taken as spread evenly over its nights. */
export function nightsSeen(traps: readonly TrapOfSeason[]): NightsSeen | null {
  let [start, end] = [Number.POSITIVE_INFINITY, 0];
  for (const { intervals } of traps)
    for (const { from, to } of intervals) {
      if (from < start) start = from;
      if (to > end) end = to;
    }
  if (start > end) return null;
  const days = end - start;
  const [moths, watchers] = [new Float64Array(days + 1), new Float64Array(days + 1)];
  for (const { intervals } of traps)
    for (const { from, to, nights, count } of intervals)
      for (let d = from - start; d < to - start; d++) {
        moths[d + 1]! += count! / nights;
        watchers[d + 1]!++;
      }
  for (let d = 1; d <= days; d++) {
    moths[d]! += moths[d - 1]!;
    watchers[d]! += watchers[d - 1]!;
  }
  return { start: start as Day, moths, watchers };
}

export interface TrapToJudge {
  /** The trap as it stands among the others of `nights`, which are read without it. */
  readonly among: TrapOfSeason;
  /** Its visits of the season that carry information and were fit, in order. */
  readonly visits: readonly CatchInterval[];
  /** Days on which somebody put the trap right: a new lure, a visit that found it unfit or doubtful. In order. */
  readonly putRight: readonly Day[];
  /** Dispersion of one visit's count. */
  readonly k: number;
}

/**
 * A doubt whether a trap is sound, by the other traps of its kind in the same nights; null where there is none.
 *
 * Places differ: what one catches against the mean is gamma of shape `placeShape`, and so is the mean of the others of as
 * many times that shape; the ratio of the two is a beta variate's odds. The chance of a catch is averaged over it.
 *
 * - *Silent*: the visits since the trap last caught. Where it caught before, its place is known to be at least as poor as
 *   that catch says.
 * - *Loud*: the visits since the trap was last put right.
 * - Put right, a trap has the benefit of the doubt until the others have caught enough for it to show again.
 */
export function trapDoubt(nights: NightsSeen, trap: TrapToJudge): TrapDoubt | null {
  const visits = trap.visits.flatMap((visit) => compared(nights, trap.among, visit) ?? []);
  return silence(visits, trap) ?? loudness(visits, trap);
}

interface Compared {
  readonly visit: CatchInterval;
  readonly count: number;
  /** What each of the other traps caught at the mean. */
  readonly expected: number;
  /** Moths of the others, and how many they were. */
  readonly moths: number;
  readonly places: number;
}

/** Moths the others are taken to have caught where they caught none: their rate is low, not nought. */
const UNSEEN = 0.25;

/** A visit beside what the others saw in its nights; null where too few of them did. */
function compared({ start, moths, watchers }: NightsSeen, among: TrapOfSeason, visit: CatchInterval): Compared | null {
  const { from, to, nights } = visit;
  if (from < start || to - start >= moths.length) return null;
  let caughtByOthers = moths[to - start]! - moths[from - start]!;
  let seen = watchers[to - start]! - watchers[from - start]!;
  for (const own of among.intervals) {
    const shared = Math.min(to, own.to) - Math.max(from, own.from);
    if (shared <= 0) continue;
    caughtByOthers -= (own.count! * shared) / own.nights;
    seen -= shared;
  }
  const places = seen / nights;
  if (places < ASSUMPTIONS.otherTraps.value) return null;
  const found = Math.max(caughtByOthers, UNSEEN);
  return { visit, count: visit.count!, expected: found / places, moths: found, places };
}

function silence(visits: readonly Compared[], { visits: own, putRight, k }: TrapToJudge): TrapDoubt | null {
  // Its last catch ends the silence, whether or not others saw those nights.
  const caughtLast = own.findLast(({ count }) => count! > 0)?.to ?? Number.NEGATIVE_INFINITY;
  const run = visits.filter(({ visit }) => visit.from >= caughtLast);
  if (run.length === 0) return null;
  const before = visits.filter(({ visit }) => visit.from < caughtLast);
  // Before it fell silent it showed how poor its place is; that it was a good one is no reason to doubt it sooner.
  const habit = Math.min(1, (SHAPE + total(before, caught)) / (SHAPE + total(before, expectedOf)));
  const chanceOf = (some: readonly Compared[]) =>
    overPlaces(othersOf(run), (ratio) =>
      some.reduce((chance, { expected }) => chance * (1 + (ratio * habit * expected) / k) ** -k, 1),
    );
  const chance = chanceOf(run);
  const { silentModerate, silentStrong, benefitOfDoubt } = ASSUMPTIONS;
  if (chance > silentModerate.value) return null;
  const mended = putRight.findLast((on) => on > run[0]!.visit.from);
  if (mended !== undefined && chanceOf(run.filter(({ visit }) => visit.from >= mended)) > benefitOfDoubt.value) return null;
  return { kind: 'silent', degree: chance <= silentStrong.value ? 'strong' : 'moderate', ...restingOn(run), chance };
}

function loudness(visits: readonly Compared[], { putRight, k }: TrapToJudge): TrapDoubt | null {
  const mended = putRight.at(-1);
  const run = mended === undefined ? visits : visits.filter(({ visit }) => visit.from >= mended);
  if (run.length === 0) return null;
  // One wild count is a question of its own: the highest is set aside.
  const highest = run.reduce((most, visit) => (visit.count > most.count ? visit : most));
  const usual = run.filter((visit) => visit !== highest);
  if (usual.length === 0) return null;
  const shown = restingOn(usual);
  const { loudTimes, loudMoths } = ASSUMPTIONS;
  if (shown.expected < loudMoths.value || shown.count < loudTimes.value * shown.expected) return null;
  const squares = total(usual, ({ expected }) => expected ** 2);
  const size = (k * shown.expected ** 2) / squares;
  const chance = overPlaces(othersOf(usual), (ratio) => {
    const mean = ratio * shown.expected;
    return betaCdf(mean / (mean + size), shown.count, size);
  });
  return chance <= ASSUMPTIONS.loudChance.value ? { kind: 'loud', degree: 'moderate', ...restingOn(run), chance } : null;
}

const caught = ({ count }: Compared) => count;
const expectedOf = ({ expected }: Compared) => expected;

function total(visits: readonly Compared[], of: (visit: Compared) => number): number {
  return visits.reduce((sum, visit) => sum + of(visit), 0);
}

/** Gamma shape of the mean of the others: by how many places, and by how few moths, it is known. */
const othersOf = (run: readonly Compared[]): number => {
  const places = Math.max(1, total(run, ({ places }) => places) / run.length);
  return 1 / (1 / (SHAPE * places) + 1 / total(run, ({ moths }) => moths));
};

const restingOn = (run: readonly Compared[]) => ({
  since: run[0]!.visit.from,
  to: run.at(-1)!.visit.to,
  nights: total(run, ({ visit }) => visit.nights),
  count: total(run, caught),
  expected: total(run, expectedOf),
});

const SHAPE = ASSUMPTIONS.placeShape.value;
const STEPS = 60;
/** ln of the least and the greatest ratio of one place to others that is looked at. */
const [LEAST, GREATEST] = [-14, 6];

/**
 * Mean of `of` over how one place may stand to the mean of others, by the trapezoidal rule in the ln of the ratio: with
 * gamma shapes a and b of the two, ratio·a/b has the odds of a beta variate.
 */
function overPlaces(b: number, of: (ratio: number) => number): number {
  const a = SHAPE;
  const scale = logGamma(a + b) - logGamma(a) - logGamma(b);
  const step = (GREATEST - LEAST) / STEPS;
  let sum = 0;
  for (let i = 0; i <= STEPS; i++) {
    const logRatio = LEAST + i * step;
    const logOdds = logRatio + Math.log(a / b);
    const density = Math.exp(scale + a * logOdds - (a + b) * Math.log1p(Math.exp(logOdds)));
    sum += density * step * of(Math.exp(logRatio));
  }
  return sum;
}
