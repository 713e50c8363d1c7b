/**
 * What each visit should have found: by the other traps in the same nights and the trap's own habit, and by the trap's
 * visits just before and after.
 */

import { formatDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { type NightsOfKind, nightsOfKind, type Others, readOthers } from '../catch/nights-of-kind.ts';
import type { CatchInterval } from '../catch/types.ts';
import { countTable, maximiseK } from '../statistics/negative-binomial.ts';
import { QUALITY_ASSUMPTIONS } from './assumptions.ts';
import { atLeast, atMost, type CountBelief, joint } from './counts.ts';
import type { AskedCheck, TrapOfFarm } from './types.ts';

/** What the other traps lead one to expect at a place of habit 1, and how counts scatter about habit × that. */
export interface ByOthers {
  readonly byOthers: number;
  /** Scatter of one visit, and of the estimate by the others. */
  readonly dispersion: number;
  /** Of the estimate alone. */
  readonly meanShape: number;
}

/** One visit that can be held against others. */
export interface Look extends ByOthers {
  readonly trap: TrapOfFarm;
  readonly interval: CatchInterval;
  readonly count: number;
  /** What this trap should have found, its other visits giving its habit. */
  readonly belief: CountBelief;
  /** The same without the trap's visits just before and after. */
  readonly alone: CountBelief;
  readonly kind: Kind;
}

/** Traps that are held against one another, and the scatter k of one visit among them. */
interface Kind {
  readonly nights: NightsOfKind;
  readonly k: number;
}

/** A dispersion beyond this is none. */
const POISSON = 1e6;
/** Share of the visits, the highest for what is expected, that is set aside at first. */
const SET_ASIDE = 0.02;
/** A count less probable than this stays aside. */
const FAR_OUT = 1e-4;
/** Moths expected at a visit from which on its count tells scatter from chance. */
const TELLING = 5;
/** To begin with. */
const USUAL_K = 2;
const SHAPE = ASSUMPTIONS.placeShape.value;

/**
 * Visits of traps of one insect, one design and one flight, each judged without itself: nights are read from the other
 * traps only, the habit of the place from the trap's other visits. Nights that fewer than two others saw are left out.
 *
 * One wild count would raise what is expected of the others, and the scatter, until it looks usual itself. So the search
 * goes forward: the highest are set aside, all are judged by the rest, and only those then found far too high stay aside.
 */
export function expectedCatch(traps: readonly TrapOfFarm[]): Look[] {
  if (traps.every(({ intervals }) => intervals.length === 0)) return [];
  const all = judged(traps, new Set());
  const highest = all
    .map((look) => ({ look, probability: atLeast(look.count, look.alone) }))
    .sort((a, b) => a.probability - b.probability)
    .slice(0, Math.ceil(SET_ASIDE * all.length));
  const byRest = judged(traps, new Set(highest.map(({ look }) => look.interval)));
  const wild = byRest.filter(({ count, alone }) => atLeast(count, alone) < FAR_OUT).map(({ interval }) => interval);
  return wild.length === 0 ? all : judged(traps, new Set(wild));
}

function judged(traps: readonly TrapOfFarm[], aside: ReadonlySet<CatchInterval>): Look[] {
  const nights = nightsOfKind(traps, aside);
  const readings = traps.flatMap((trap) => {
    const visits = trap.intervals.flatMap((interval) => {
      const others = readOthers(nights, interval, [trap]);
      return others ? [{ trap, interval, count: interval.count!, others }] : [];
    });
    const usual = visits.filter(({ interval }) => !aside.has(interval));
    const total = usual.reduce((sum, { count }) => sum + count, 0);
    const expected = usual.reduce((sum, { others }) => sum + others.expected, 0);
    return visits.map((visit) => {
      const own = aside.has(visit.interval) ? { count: 0, expected: 0 } : { count: visit.count, expected: visit.others.expected };
      const rest = SHAPE + total - own.count;
      const byOthers = (visit.others.expected * rest) / (SHAPE + expected - own.expected);
      return { ...visit, rest, visits: usual.length, byOthers, near: visitsNear(visit.interval, trap.intervals, aside) };
    });
  });
  type Reading = (typeof readings)[number];
  const byOthersAlone = ({ byOthers, others, rest, visits }: Reading, k: number) => ({
    mean: byOthers,
    meanShape: joint(shapeOf(others, k), rest, k * Math.max(1, visits)),
  });
  const withSeason = (reading: Reading, k: number) =>
    together(byOthersAlone(reading, k), reading.near && bySeason(reading.near, reading.interval.nights, k));
  const usual = readings.filter(({ interval }) => !aside.has(interval));
  // Traps are held against one another by what the others say alone: each reading has its own scatter about it.
  const kind = { nights, k: scatterOf(usual, byOthersAlone) };
  const k = scatterOf(usual, withSeason);
  return readings.map((reading) => {
    const { trap, interval, count, others } = reading;
    return {
      trap,
      interval,
      count,
      ...scattered(kind, others),
      belief: { k, ...withSeason(reading, k) },
      alone: { k: kind.k, ...byOthersAlone(reading, kind.k) },
      kind,
    };
  });
}

/** Visits of a trap on either side of one, as far as they reach without a gap. */
interface Near {
  readonly moths: number;
  readonly nights: number;
  readonly visits: number;
}

/** Visits before and after that still tell of the same part of a flight. */
const EACH_SIDE = 2;
/** Shape of a gamma variate of what catch becomes from one visit to the next but one, beside what the others saw of it. */
const DRIFT = QUALITY_ASSUMPTIONS.flightDrift.value;

function visitsNear(visit: CatchInterval, all: readonly CatchInterval[], aside: ReadonlySet<CatchInterval>): Near | null {
  const at = all.indexOf(visit);
  const side = (step: 1 | -1) => {
    const found: CatchInterval[] = [];
    for (let i = at + step; found.length < EACH_SIDE && all[i]; i += step) {
      const [earlier, later] = step === 1 ? [all[i - step]!, all[i]!] : [all[i]!, all[i - step]!];
      if (earlier.to !== later.from) break;
      if (!aside.has(all[i]!)) found.push(all[i]!);
    }
    return found;
  };
  const [before, after] = [side(-1), side(1)];
  // On one side alone the trap cannot tell a rise from an error.
  if (before.length === 0 || after.length === 0) return null;
  const near = [...before, ...after];
  return {
    moths: near.reduce((sum, { count }) => sum + count!, 0),
    nights: near.reduce((sum, { nights }) => sum + nights, 0),
    visits: near.length,
  };
}

function bySeason({ moths, nights, visits }: Near, over: number, k: number): MeanBelief {
  const caught = moths + 0.25;
  return { mean: (over * caught) / nights, meanShape: joint(k * visits, caught, DRIFT) };
}

/** Two estimates of one mean, each counting as much as it is sure, on the scale of logarithms. */
function together(a: MeanBelief, b: MeanBelief | null): MeanBelief {
  if (b === null) return a;
  const meanShape = a.meanShape + b.meanShape;
  return { mean: Math.exp((a.meanShape * Math.log(a.mean) + b.meanShape * Math.log(b.mean)) / meanShape), meanShape };
}

type MeanBelief = Required<Omit<CountBelief, 'k'>>;

/** The nights of a visit as read without another trap too; null when too few are left to read them from. */
export function readWithout({ kind, trap, interval }: Look, other: TrapOfFarm): ByOthers | null {
  const others = readOthers(kind.nights, interval, [trap, other]);
  return others && scattered(kind, others);
}

/** The others' estimate rests on their visits, each as scattered as this one, and on the few moths they caught. */
const shapeOf = ({ visits, moths }: Others, k: number): number => joint(k * visits, moths + 0.25);

function scattered({ k }: Kind, others: Others): ByOthers {
  const meanShape = shapeOf(others, k);
  return { byOthers: others.expected, dispersion: joint(k, meanShape), meanShape };
}

/** Two-sided: how often a count lies as far out on its side, doubled. */
export const oddness = ({ count, belief }: Look): number =>
  Math.min(1, 2 * (count > belief.mean ? atLeast(count, belief) : atMost(count, belief)));

/**
 * k of one visit. Fitted about estimated means it holds their error too: 1/k is less by the mean of 1/shape, of the visits
 * that many moths were expected of and that tell k therefore; at most half of it is taken off.
 */
function scatterOf<V extends { readonly count: number }>(
  visits: readonly V[],
  beliefOf: (visit: V, k: number) => MeanBelief,
): number {
  if (visits.length === 0) return POISSON;
  const table = countTable(visits.map(({ count }) => count))!;
  // How much either estimate counts depends on k itself: one more round settles it.
  const fittedAt = (k: number) =>
    Math.min(
      POISSON,
      maximiseK(
        table,
        Float64Array.from(visits, (visit) => beliefOf(visit, k).mean),
      ),
    );
  const fitted = fittedAt(fittedAt(USUAL_K));
  const telling = visits.map((visit) => beliefOf(visit, fitted)).filter(({ mean }) => mean >= TELLING);
  const error = telling.reduce((sum, { meanShape }) => sum + 1 / meanShape, 0) / Math.max(1, telling.length);
  return 1 / Math.max(1 / fitted - error, 0.5 / fitted);
}

export const askedCheck = ({ interval, belief }: Look): AskedCheck => ({
  trapId: interval.trapId,
  checkedOn: formatDay(interval.to),
  count: interval.count!,
  others: interval.others,
  expected: belief.mean,
  neighbours: [],
});
