/** How many moths were truly about on each night of each season, before any trap or scout came into it. */
import {
  addDays,
  type DailyExtremes,
  type Day,
  dailyDegreeDays,
  degreeDaysIn,
  type HeatRule,
  startOfYear,
} from '@duskwatch/core';
import type { InsectCode } from './network.ts';
import { randomFor } from './prng.ts';
import { gamma } from './samplers.ts';
import { type TrueDay, WEATHER_FROM, WEATHER_SOURCE } from './weather.ts';

/** All four flights run on the heat axis of the catalogue's European corn borer model: °F·d from 1 January. */
const FLIGHT_HEAT: HeatRule = { method: 'modified-average', cutoff: 'none', lower: 50, upper: 86, unit: 'F' };

interface Wave {
  /** Heat at the peak, and the spread of the flight about it, °F·d. */
  readonly peak: number;
  readonly spread: number;
  /** Moths per night at the peak in a fit wire or mesh cone of an average farm. */
  readonly moths: number;
}

/**
 * Peaks follow the catalogue where it has a model (corn borer 631 and 1733; vine borer adults from about 1000;
 * earworm generations 872.8 °F·d apart, on its own slightly higher base). Heights, spreads and the migrants' arrivals
 * are invented.
 */
const WAVES: Readonly<Record<InsectCode, readonly Wave[]>> = {
  ON: [
    { peak: 631, spread: 95, moths: 4 },
    { peak: 1733, spread: 150, moths: 9 },
  ],
  MC: [{ peak: 1330, spread: 190, moths: 1.9 }],
  HZ: [
    { peak: 1290, spread: 240, moths: 1 },
    { peak: 2130, spread: 230, moths: 6 },
    { peak: 2950, spread: 260, moths: 14 },
  ],
  SF: [
    { peak: 1350, spread: 210, moths: 1.6 },
    { peak: 2450, spread: 420, moths: 9 },
  ],
};

/** Invented: share of a dry warm night's flight that remains in rain, and below a cool dusk. */
const WET_NIGHT = { fromMm: 2, share: 0.45 } as const;
const COOL_NIGHT = { belowC: 9, share: 0.4 } as const;
/** Shape of the gamma that sets one year's flight against the average. */
const YEAR_SHAPE = 9;

/** Heat since 1 January at the end of each day, °F·d, from `WEATHER_FROM` on. */
export function heatSinceNewYear(truth: readonly TrueDay[]): Float64Array {
  const series: DailyExtremes = {
    sourceId: WEATHER_SOURCE,
    start: WEATHER_FROM,
    tminC: Float64Array.from(truth, (d) => d.tminC),
    tmaxC: Float64Array.from(truth, (d) => d.tmaxC),
  };
  let total = 0;
  return dailyDegreeDays(FLIGHT_HEAT, series).map((dayC, index) => {
    const on = addDays(WEATHER_FROM, index);
    total = (on === startOfYear(on) ? 0 : total) + degreeDaysIn(dayC, 'F');
    return total;
  });
}

/** Mean moths a night in an average fit trap. The night of a day is the one that follows it. */
export type MothsPerNight = (night: Day) => number;

export function simulateFlight(insect: InsectCode, truth: readonly TrueDay[], heat: Float64Array): MothsPerNight {
  const perNight = heat.map((degreeDays, index) => {
    const { tminC, precipitationMm } = truth[index]!;
    const flight = WAVES[insect].reduce((sum, w) => sum + w.moths * Math.exp(-0.5 * ((degreeDays - w.peak) / w.spread) ** 2), 0);
    const wet = precipitationMm >= WET_NIGHT.fromMm ? WET_NIGHT.share : 1;
    const cool = tminC < COOL_NIGHT.belowC ? COOL_NIGHT.share : 1;
    return flight * wet * cool;
  });
  const yearFactor = new Map<Day, number>();
  const factorOf = (newYear: Day): number => {
    const known = yearFactor.get(newYear) ?? gamma(randomFor(`year ${insect} ${newYear}`), YEAR_SHAPE, 1);
    yearFactor.set(newYear, known);
    return known;
  };
  return (night) => (perNight[night - WEATHER_FROM] ?? 0) * factorOf(startOfYear(night));
}
