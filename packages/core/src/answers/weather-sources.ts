/** Where weather comes from, how far it reaches, what is missing of it, and which fields are told by it. */
import { z } from 'zod';
import { addDays, day, formatDay, type IsoDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import type { Program } from '../records/program.ts';
import { isoDay } from '../records/schema.ts';
import { weatherSourceFor, weatherSourcesOf } from '../records/weather-source.ts';

const weatherSourceSchema = z
  .object({
    sourceId: z.string(),
    from: isoDay.nullable().describe('First day measured; null: none is.'),
    to: isoDay.nullable().describe('Newest day measured.'),
    missing: z
      .int()
      .describe(
        'Days between these that lack a record, or one of its two extremes: no heat can be summed over them unless they are bridged.',
      ),
    newestGap: isoDay.nullable().describe('The newest of the missing days.'),
    daysBehind: z
      .int()
      .nullable()
      .describe('How many days the newest lies before the day read on; today’s own is not expected yet.'),
    forecastTo: isoDay.nullable().describe('Last day of a forecast that somebody entered.'),
    fields: z.array(z.object({ fieldId: z.string(), name: z.string(), farm: z.string() })),
  })
  .meta({ id: 'WeatherSource' });

export const weatherSourcesSchema = z
  .object({
    on: isoDay,
    sources: z.array(weatherSourceSchema),
    without: z
      .array(z.object({ fieldId: z.string(), name: z.string(), farm: z.string() }))
      .describe('Fields that no source tells of: nothing is dated by heat there.'),
  })
  .meta({ id: 'WeatherSources' });
export type WeatherSourcesView = Shape<typeof weatherSourcesSchema>;

export function weatherSourcesView({ weather, fields, sources: about }: Program, on: IsoDay): WeatherSourcesView {
  const known = weather.filter(({ date, forecastMadeOn }) => (forecastMadeOn ?? date) <= on);
  const ids = new Set(weather.map(({ sourceId }) => sourceId));
  const all = weatherSourcesOf(ids, about);
  const told = fields.map((field) => ({ field, source: weatherSourceFor(field, all) }));
  const named = (source: string | null) =>
    told.filter((each) => each.source === source).map(({ field: { fieldId, name, farm } }) => ({ fieldId, name, farm }));
  const sources = [...ids].sort().map((sourceId) => {
    const own = known.filter((record) => record.sourceId === sourceId);
    const measured = own.filter(({ forecastMadeOn }) => !forecastMadeOn);
    const whole = new Set(measured.filter(({ tminC, tmaxC }) => tminC !== null && tmaxC !== null).map(({ date }) => date));
    const days = measured.map(({ date }) => date).sort();
    const [from = null, to = null] = [days[0], days.at(-1)];
    const gaps = from === null || to === null ? [] : daysBetween(from, to).filter((date) => !whole.has(date));
    const forecast = own.flatMap(({ date, forecastMadeOn }) => (forecastMadeOn && date > (to ?? '') ? [date] : [])).sort();
    return {
      sourceId,
      from,
      to,
      missing: gaps.length,
      newestGap: gaps.at(-1) ?? null,
      daysBehind: to === null ? null : Math.max(0, day(on) - 1 - day(to)),
      forecastTo: forecast.at(-1) ?? null,
      fields: named(sourceId),
    };
  });
  return { on, sources, without: named(null) };
}

const daysBetween = (from: IsoDay, to: IsoDay): IsoDay[] =>
  Array.from({ length: day(to) - day(from) + 1 }, (_, index) => formatDay(addDays(day(from), index)));
