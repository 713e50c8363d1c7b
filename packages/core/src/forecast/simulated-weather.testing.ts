/** Daily extremes of invented years whose climate is known, for windows to be held against. */
import { dayOf } from '../base/day.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import type { DailyExtremes } from '../weather/types.ts';

/** Temperatures in °C. */
export interface Climate {
  /** Of the year, and how far the middle of summer is above it. */
  readonly mean: number;
  readonly amplitude: number;
  /** Standard deviation of a day about the season, and its correlation with the day before (autoregressive). */
  readonly daySd: number;
  readonly dayToDay: number;
  /** Standard deviation of a whole year about the mean. */
  readonly yearSd: number;
}

/** Warm summers with lasting spells, the same with short ones, and a cool coast. */
export const CLIMATES = {
  lasting: { mean: 11, amplitude: 11, daySd: 3.4, dayToDay: 0.7, yearSd: 0.7 },
  short: { mean: 11, amplitude: 11, daySd: 3.4, dayToDay: 0.55, yearSd: 0.5 },
  cool: { mean: 10, amplitude: 8, daySd: 3.4, dayToDay: 0.65, yearSd: 0.7 },
} as const satisfies Record<string, Climate>;

export const FIRST_YEAR = 1990;

export function simulatedWeather(seed: number, years: number, climate: Climate): DailyExtremes {
  const random = randomFrom(seed);
  const start = dayOf(FIRST_YEAR, 1, 1);
  const days = dayOf(FIRST_YEAR + years, 1, 1) - start;
  const [tminC, tmaxC] = [new Float64Array(days), new Float64Array(days)];
  const { mean, amplitude, daySd, dayToDay, yearSd } = climate;
  let [ofDay, ofYear] = [0, 0];
  for (let i = 0; i < days; i++) {
    if (i % 365 === 0) ofYear = yearSd * random.normal();
    ofDay = dayToDay * ofDay + Math.sqrt(1 - dayToDay ** 2) * daySd * random.normal();
    // Coldest on 20 January.
    const season = mean - amplitude * Math.cos((2 * Math.PI * ((i % 365.25) - 20)) / 365.25);
    const half = 5 + 2 * random.uniform();
    tminC[i] = season + ofDay + ofYear - half;
    tmaxC[i] = season + ofDay + ofYear + half;
  }
  return { sourceId: `simulated ${seed}`, start, tminC, tmaxC };
}
