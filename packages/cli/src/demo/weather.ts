/** An invented valley's weather: a yearly wave, lasting warm and cool spells, wet days that are cooler and narrower. */
import { addDays, type Day, day, formatDay, startOfYear, type WeatherRecord } from '@duskwatch/core';
import { type Random, randomFor } from './prng.ts';
import { exponential, gamma, normal } from './samplers.ts';

export const WEATHER_SOURCE = 'ombrel-mill';
export const WEATHER_FROM = day('2024-01-01');
export const WEATHER_THROUGH = day('2026-07-14');

/** One of many seeds tried: under it mid-July 2026 stands between the corn borer's two flights and no day is out of the ordinary. */
const WEATHER_SEED = 'ombrel weather 1436';

/** Every figure is invented: a cool-temperate valley where sweet corn silks in the first half of July. */
const CLIMATE = {
  yearlyMeanC: 10.7,
  yearlyAmplitudeC: 12.4,
  /** Day of the year on which the wave is highest. */
  warmestDay: 202,
  /** Day-to-day memory and spread of the departure from the wave (a first-order autoregression). */
  spellMemory: 0.72,
  spellSpreadC: 2.5,
  wetAfterDry: 0.24,
  wetAfterWet: 0.5,
  rainPerWetDayMm: 6.5,
  dryRangeC: 12.5,
  wetRangeC: 7.5,
  rangeShape: 14,
  wetCoolingC: 1.2,
} as const;

/** Two days that a reader can bridge, and six, after a season's end, that it must not. */
const SENSOR_OFF = { from: day('2026-05-23'), to: day('2026-05-24') } as const;
const STATION_DOWN = { from: day('2024-11-12'), to: day('2024-11-17') } as const;

export interface TrueDay {
  readonly tminC: number;
  readonly tmaxC: number;
  readonly precipitationMm: number;
}

/** Adding zero turns a rounded −0 into 0, which is how a file would give it back. */
const tenths = (value: number): number => Math.round(value * 10) / 10 + 0;

function waveC(on: Day): number {
  const phase = (2 * Math.PI * (on - startOfYear(on) + 1 - CLIMATE.warmestDay)) / 365.25;
  return CLIMATE.yearlyMeanC + CLIMATE.yearlyAmplitudeC * Math.cos(phase);
}

/** What the weather was, every day from `WEATHER_FROM` to `WEATHER_THROUGH`, before the station lost any of it. */
export function trueWeather(random: Random = randomFor(WEATHER_SEED)): TrueDay[] {
  const innovation = CLIMATE.spellSpreadC * Math.sqrt(1 - CLIMATE.spellMemory ** 2);
  const days: TrueDay[] = [];
  let departureC = 0;
  let wet = false;
  for (let on = WEATHER_FROM; on <= WEATHER_THROUGH; on = addDays(on, 1)) {
    wet = random() < (wet ? CLIMATE.wetAfterWet : CLIMATE.wetAfterDry);
    departureC = CLIMATE.spellMemory * departureC + innovation * normal(random);
    const meanC = waveC(on) + departureC - (wet ? CLIMATE.wetCoolingC : 0);
    const rangeC = gamma(random, CLIMATE.rangeShape, wet ? CLIMATE.wetRangeC : CLIMATE.dryRangeC);
    const rainMm = exponential(random, CLIMATE.rainPerWetDayMm);
    days.push({
      tminC: tenths(meanC - rangeC / 2),
      tmaxC: tenths(meanC + rangeC / 2),
      precipitationMm: wet ? tenths(rainMm) : 0,
    });
  }
  return days;
}

/** What the station kept of it: two days without temperature, six without a row. */
export function weatherRecords(truth: readonly TrueDay[]): WeatherRecord[] {
  return truth.flatMap((values, index) => {
    const on = addDays(WEATHER_FROM, index);
    if (on >= STATION_DOWN.from && on <= STATION_DOWN.to) return [];
    const dark = on >= SENSOR_OFF.from && on <= SENSOR_OFF.to;
    return [{ sourceId: WEATHER_SOURCE, date: formatDay(on), ...values, ...(dark && { tminC: null, tmaxC: null }) }];
  });
}
