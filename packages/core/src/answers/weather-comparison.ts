/** Two weather sources held against each other on the days that both have. */
import { z } from 'zod';
import type { IsoDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import type { Program } from '../records/program.ts';
import { isoDay } from '../records/schema.ts';
import { isForecast } from '../weather/series.ts';

const differenceSchema = z
  .object({
    mean: z.number().describe('Mean of the second less the first, °C: how much warmer it is.'),
    meanAbsolute: z.number().describe('Mean of the differences without their sign, °C.'),
    most: z.number().describe('The greatest difference without its sign, °C.'),
    mostOn: isoDay,
  })
  .meta({ id: 'TemperatureDifference' });

export const weatherComparisonSchema = z
  .object({
    on: isoDay,
    first: z.string(),
    second: z.string(),
    days: z.int().describe('Days on which both have their two extremes.'),
    from: isoDay.nullable(),
    to: isoDay.nullable(),
    tmin: differenceSchema.nullable().describe('null: there is no such day.'),
    tmax: differenceSchema.nullable(),
  })
  .meta({ id: 'WeatherComparison' });
export type WeatherComparison = Shape<typeof weatherComparisonSchema>;

/** Days up to `on` that were not forecast. */
export function weatherComparison({ weather }: Program, on: IsoDay, first: string, second: string): WeatherComparison {
  const extremesOf = (sourceId: string) =>
    new Map(
      weather.flatMap((record) =>
        record.sourceId === sourceId && record.date <= on && !isForecast(record) && record.tminC !== null && record.tmaxC !== null
          ? [[record.date, { tmin: record.tminC, tmax: record.tmaxC }] as const]
          : [],
      ),
    );
  const other = extremesOf(second);
  const both = [...extremesOf(first)]
    .flatMap(([date, one]) => {
      const two = other.get(date);
      return two === undefined ? [] : [{ date, tmin: two.tmin - one.tmin, tmax: two.tmax - one.tmax }];
    })
    .sort((a, b) => a.date.localeCompare(b.date));
  const difference = (of: 'tmin' | 'tmax') => summary(both.map((each) => ({ date: each.date, difference: each[of] })));
  return {
    on,
    first,
    second,
    days: both.length,
    from: both[0]?.date ?? null,
    to: both.at(-1)?.date ?? null,
    tmin: difference('tmin'),
    tmax: difference('tmax'),
  };
}

function summary(days: readonly { readonly date: IsoDay; readonly difference: number }[]) {
  if (days.length === 0) return null;
  const sum = (of: (difference: number) => number) => days.reduce((total, { difference }) => total + of(difference), 0);
  const most = days.reduce((a, b) => (Math.abs(b.difference) > Math.abs(a.difference) ? b : a));
  return {
    mean: sum((difference) => difference) / days.length,
    meanAbsolute: sum(Math.abs) / days.length,
    most: Math.abs(most.difference),
    mostOn: most.date,
  };
}
