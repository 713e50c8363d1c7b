/** How often the interval of a nightly rate holds the truth, over invented programs whose scatter k is known. */

import { type Random, randomFrom } from '../statistics/random.testing.ts';
import { type DispersionEstimate, type DispersionPrior, dispersionBetweenVisits } from './dispersion.ts';
import { estimateRate } from './rate.ts';
import type { CatchInterval, CatchSum } from './types.ts';
import { visitOf } from './visit.testing.ts';

/** What the program has seen before: nothing, four weeks of four traps, or a season of four traps. */
export type Records = 'none' | 'month' | 'season';

export interface Truth {
  readonly k: number;
  readonly perNight: number;
  readonly records: Records;
}

/** Traps behind the newest rate, and the nights of each of their visits. */
export interface Newest {
  readonly traps: number;
  readonly nights: readonly number[];
}

export interface Coverage {
  readonly cases: number;
  /** The interval as it is shown, the true rate anywhere within a factor √2 of the stated one. */
  readonly shown: number;
  /** Each count taken as spread evenly over the unit about it, as a mid-P value takes it, at the stated rate itself. */
  readonly spread: number;
}

const NIGHTS = { none: 0, month: 28, season: 100 } as const;
const TRAPS = 4;
/** A season's flight reaches this many moths a night at least: the rate now may be its flank. */
const PEAK = 5;

/** One program's belief about k, before the visits that the rate is read from. */
export function believed(random: Random, { k, perNight, records }: Truth, prior: DispersionPrior): DispersionEstimate {
  const seasons = Array.from({ length: records === 'none' ? 0 : TRAPS }, (_, t) =>
    inventedTrapSeason(random, k, Math.max(PEAK, 2 * perNight), NIGHTS[records], `T${t + 1}`),
  );
  return dispersionBetweenVisits(seasons, prior);
}

/** A trap visited twice a week under one flight whose height falls into its nights; places differ by log-sd 0.6. */
export function inventedTrapSeason(random: Random, k: number, peak: number, nights: number, trapId: string): CatchInterval[] {
  const place = Math.exp(0.6 * random.normal());
  const top = nights * (0.3 + 0.4 * random.uniform());
  const visits: CatchInterval[] = [];
  for (let from = 0, to = 3; to < nights; from = to, to += random.uniform() < 0.5 ? 3 : 4) {
    let mean = 0;
    for (let night = from; night < to; night++) mean += place * peak * (0.03 + Math.exp(-(((night + 0.5 - top) / 14) ** 2) / 2));
    visits.push(visitOf(trapId, from, to, random.negativeBinomial(mean, k)));
  }
  return visits;
}

/** Whether the interval held, for one draw of the newest visits. */
export function heldOnce(random: Random, { k, perNight }: Truth, { traps, nights }: Newest, belief: DispersionEstimate) {
  const all = Array.from({ length: traps }, () => nights).flat();
  const sum = { trapNights: total(all), sumSquaredNights: total(all.map((n) => n * n)), visits: all.length };
  const caught = (rate: number) => total(all.map((n) => random.negativeBinomial(rate * n, k)));
  const holds = (rate: number, read: Pick<CatchSum, 'count'>) => {
    const { low, high } = estimateRate({ ...sum, ...read }, { k: belief });
    return low <= rate && rate <= high;
  };
  const near = perNight * 2 ** (random.uniform() - 0.5);
  return {
    shown: holds(near, { count: caught(near) }),
    spread: holds(perNight, { count: caught(perNight) + random.uniform() - 0.5 }),
  };
}

const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

export function coverageOf(
  truth: Truth,
  newest: readonly Newest[],
  prior: DispersionPrior,
  seeds: number,
  draws = 2,
): Coverage[] {
  const held = newest.map(() => ({ shown: 0, spread: 0 }));
  for (let seed = 1; seed <= seeds; seed++) {
    const random = randomFrom(seed * 7919 + Math.round(100 * truth.k + 1000 * truth.perNight));
    const belief = believed(random, truth, prior);
    newest.forEach((one, i) => {
      for (let draw = 0; draw < draws; draw++) {
        const found = heldOnce(random, truth, one, belief);
        held[i]!.shown += Number(found.shown);
        held[i]!.spread += Number(found.spread);
      }
    });
  }
  const cases = seeds * draws;
  return held.map(({ shown, spread }) => ({ cases, shown: shown / cases, spread: spread / cases }));
}
