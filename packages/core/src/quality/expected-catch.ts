/** What each visit should have found, going by the other traps in the same nights and by the trap's own habit. */
import type { CatchInterval } from '../catch/types.ts';
import { countTable, maximiseK } from '../statistics/negative-binomial.ts';
import { formatDay } from '../units/day.ts';
import { QUALITY_ASSUMPTIONS } from './assumptions.ts';
import { atLeast, atMost, type CountBelief, joint } from './counts.ts';
import { type NightsOfKind, nightsOfKind, type Others, readOthers, type TrapOfSeason } from './nights-of-kind.ts';
import type { AskedCheck } from './types.ts';

/** What the other traps lead one to expect at a place of habit 1, and how counts scatter about habit × that. */
export interface ByOthers {
  readonly byOthers: number;
  readonly dispersion: number;
}

/** One visit that can be held against others. */
export interface Look extends ByOthers {
  readonly trap: TrapOfSeason;
  readonly interval: CatchInterval;
  readonly count: number;
  /** What this trap should have found, its other visits giving its habit. */
  readonly belief: CountBelief;
  readonly kind: Kind;
}

/** Traps that are held against one another, and the scatter k of one visit among them. */
interface Kind {
  readonly nights: NightsOfKind;
  readonly k: number;
}

/** A dispersion beyond this is none. */
const POISSON = 1e6;
/** A count less probable than this, by a first fit, does not speak for the scatter of the others. */
const FAR_OUT = 1e-6;
const SHAPE = QUALITY_ASSUMPTIONS.placeShape.value;

/**
 * Visits of traps of one insect, one design and one flight, each judged without itself: nights are read from the other
 * traps only, the habit of the place from the trap's other visits. Nights that fewer than two others saw are left out.
 */
export function expectedCatch(traps: readonly TrapOfSeason[]): Look[] {
  if (traps.every(({ intervals }) => intervals.length === 0)) return [];
  const nights = nightsOfKind(traps);
  const drafts = traps.flatMap((trap) => {
    const visits = trap.intervals.flatMap((interval) => {
      const others = readOthers(nights, interval, [trap]);
      return others ? [{ trap, interval, count: interval.count!, others }] : [];
    });
    const total = visits.reduce((sum, { count }) => sum + count, 0);
    const expected = visits.reduce((sum, { others }) => sum + others.expected, 0);
    return visits.map((visit) => {
      const rest = SHAPE + total - visit.count;
      return { ...visit, rest, mean: (visit.others.expected * rest) / (SHAPE + expected - visit.others.expected) };
    });
  });
  const kind = { nights, k: scatterOf(drafts) };
  return drafts.map(({ trap, interval, count, others, rest, mean }) => {
    const by = scattered(kind, others);
    return { trap, interval, count, ...by, belief: { mean, k: joint(by.dispersion, rest) }, kind };
  });
}

/** The nights of a visit as read without another trap too; null when too few are left to read them from. */
export function readWithout({ kind, trap, interval }: Look, other: TrapOfSeason): ByOthers | null {
  const others = readOthers(kind.nights, interval, [trap, other]);
  return others && scattered(kind, others);
}

/** The scatter of the visit itself, of the others' visits it is held against, and of the few moths they caught. */
const scattered = ({ k }: Kind, { expected, moths, traps }: Others): ByOthers => ({
  byOthers: expected,
  dispersion: joint(k, k * traps, moths + 0.25),
});

/** Two-sided: how often a count lies as far out on its side, doubled. */
export const oddness = ({ count, belief }: Look): number =>
  Math.min(1, 2 * Math.min(atLeast(count, belief), atMost(count, belief)));

/** k by likelihood, once more without the visits that are far out: they are the ones in question. */
function scatterOf(visits: readonly { readonly count: number; readonly mean: number }[]): number {
  const fit = (kept: typeof visits) =>
    Math.min(
      POISSON,
      maximiseK(
        countTable(kept.map(({ count }) => count))!,
        Float64Array.from(kept, ({ mean }) => mean),
      ),
    );
  if (visits.length === 0) return POISSON;
  const first = fit(visits);
  const usual = visits.filter(({ count, mean }) => atLeast(count, { mean, k: first }) > FAR_OUT);
  return fit(usual);
}

export const askedCheck = ({ interval, belief }: Look): AskedCheck => ({
  trapId: interval.trapId,
  checkedOn: formatDay(interval.to),
  count: interval.count!,
  others: interval.others,
  expected: belief.mean,
});
