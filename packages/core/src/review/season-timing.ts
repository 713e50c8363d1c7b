/** When a season's flight began, peaked and was half over, and how much was caught. */

import { ratePoints } from '../advice/rate-points.ts';
import { dispersionShownBy } from '../advice/visit-dispersion.ts';
import { addDays, type Day, day } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { insectById } from '../catalogue/look-up.ts';
import { estimateRate } from '../catch/rate.ts';
import { sumIntervals } from '../catch/sum.ts';
import type { CatchInterval, RateEstimate, TrapHistory } from '../catch/types.ts';
import { summariseFlight } from '../flight/summary.ts';
import type { Biofix, FlightPeak } from '../flight/types.ts';
import type { TrapDesign } from '../records/schema.ts';
import { TRAP_DESIGNS } from '../records/schema.ts';
import type { GrowingYear } from './growing-year.ts';
import type { TrapWithHistory } from './trap-histories.ts';

export interface SeasonTiming {
  readonly insect: string;
  readonly firstCatch: Biofix | null;
  /** By the insect's own rule; null where the catalogue has none or it was not fulfilled. */
  readonly biofix: Biofix | null;
  readonly designs: readonly DesignSeason[];
}

/** Designs are never pooled. */
export interface DesignSeason {
  readonly design: TrapDesign;
  readonly traps: number;
  readonly peak: FlightPeak | null;
  /** Moths and trap-nights of the season, and moths per trap per night; null where no night carried information. */
  readonly caught: RateEstimate | null;
  /** Trap-nights of visits that said nothing. */
  readonly blindTrapNights: number;
  /** By when these shares of the mean trap's moths had been caught; empty without a catch. */
  readonly passed: readonly { readonly share: number; readonly on: Day }[];
  /** Nights of the season, between first and last visit, that no trap of the design saw: their moths are missing. */
  readonly unseenNights: number;
}

/** The span in which most moths fly, and the middle. */
const SHARES = [0.05, 0.1, 0.5, 0.9, 0.95] as const;

/** `traps` are of one insect; visits outside the season are passed over. */
export function seasonTiming(insect: string, traps: readonly TrapWithHistory[], season: GrowingYear): SeasonTiming {
  const within = traps.map(({ trap, history }) => ({ trap, history: inSeason(history, season) }));
  const histories = within.map(({ history }) => history);
  const flight = summariseFlight(insectById(insect)?.biofix?.rule ?? null, histories, season.to);
  const designs = TRAP_DESIGNS.flatMap((design) => {
    const own = within.filter(({ trap, history }) => trap.design === design && history.intervals.length > 0);
    return own.length === 0 ? [] : [designSeason(design, own)];
  });
  return { insect, firstCatch: flight.firstCatch, biofix: flight.biofix, designs };
}

/** The visits whose nights lie in the season. */
export function inSeason(history: TrapHistory, { from, to }: GrowingYear): TrapHistory {
  return { ...history, intervals: history.intervals.filter((interval) => interval.from >= from && interval.to <= to) };
}

function designSeason(design: TrapDesign, traps: readonly TrapWithHistory[]): DesignSeason {
  const intervals = traps.flatMap(({ history }) => history.intervals);
  const sum = sumIntervals(intervals);
  const histories = traps.map(({ history }) => history);
  const k = dispersionShownBy(histories);
  const flight = summariseFlight(null, histories, Math.max(...intervals.map(({ to }) => to)) as Day);
  return {
    design,
    traps: traps.length,
    peak: flight.peak,
    caught: sum.trapNights === 0 ? null : estimateRate(sum, { k, level: ASSUMPTIONS.intervalLevel.value }),
    blindTrapNights: intervals.reduce((nights, one) => nights + (one.count === null ? one.nights : 0), 0),
    ...passage(intervals),
  };
}

/** Adds up the mean trap's nights; within a stretch that visits share, moths are taken as spread evenly. */
function passage(intervals: readonly CatchInterval[]): Pick<DesignSeason, 'passed' | 'unseenNights'> {
  const stretches = ratePoints(intervals).map((point) => ({
    ...point,
    from: day(point.from),
    nights: day(point.to) - day(point.from),
  }));
  const unseenNights = stretches.reduce((sum, { perNight, nights }) => sum + (perNight === null ? nights : 0), 0);
  const total = stretches.reduce((sum, { perNight, nights }) => sum + (perNight ?? 0) * nights, 0);
  if (total === 0) return { passed: [], unseenNights };
  const passed = SHARES.map((share) => {
    let before = 0;
    for (const { from, nights, perNight } of stretches) {
      const moths = (perNight ?? 0) * nights;
      if (moths > 0 && before + moths >= share * total - 1e-9)
        return { share, on: addDays(from, Math.max(1, Math.ceil((share * total - before) / perNight! - 1e-9))) };
      before += moths;
    }
    throw new Error('shares of a total are reached');
  });
  return { passed, unseenNights };
}
