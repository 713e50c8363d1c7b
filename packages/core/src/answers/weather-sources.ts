/** Where weather comes from, how far it reaches, what is missing of it, and which fields are told by it. */
import { z } from 'zod';
import { addDays, type Day, day, daysBetween, formatDay, type IsoDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import type { Shape } from '../base/shape.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import type { Program } from '../records/program.ts';
import {
  type FieldRecord,
  isoDay,
  type SourceRecord,
  WEATHER_SERVICES,
  WEATHER_SOURCE_KINDS,
  type WeatherRecord,
} from '../records/schema.ts';
import { weatherServices } from '../records/weather-services.ts';
import { farSource, sourceKm, type WeatherSources, weatherSourceFor, weatherSourcesOf } from '../records/weather-source.ts';
import { measuredWeather } from '../weather/filled.ts';
import { isForecast, isKnown } from '../weather/series.ts';
import type { DailyExtremes } from '../weather/types.ts';

const informedField = z.object({
  fieldId: z.string(),
  name: z.string(),
  farm: z.string(),
  km: z.number().nullable().describe('From the source; null where the place of one is not known.'),
});

const weatherSourceSchema = z
  .object({
    sourceId: z.string(),
    name: z.string().nullable(),
    kind: z.enum(WEATHER_SOURCE_KINDS).nullable().describe('What its days are; null: nobody said. Only a station measures.'),
    service: z.enum(WEATHER_SERVICES).nullable().describe('Where its days are fetched; null: nowhere.'),
    fetching: z.boolean(),
    credit: z.string().nullable().describe('What must stand beside its data.'),
    fillFrom: z.string().nullable().describe('The source that stands in where this one has no day.'),
    from: isoDay.nullable().describe('First day measured; null: none is.'),
    to: isoDay.nullable().describe('Newest day measured.'),
    missing: z
      .int()
      .describe(
        'Days between these that lack a record, or one of its two extremes: no heat can be summed over them unless they are bridged or filled.',
      ),
    newestGap: isoDay.nullable().describe('The newest of the missing days.'),
    filled: z.int().describe('Days that the source named for gaps stands in for, those after the newest day included.'),
    daysBehind: z
      .int()
      .nullable()
      .describe('How many days the newest lies before the day read on; today’s own is not expected yet.'),
    forecastTo: isoDay.nullable().describe('Last day of a forecast that somebody entered or a service gave.'),
    waiting: z
      .boolean()
      .describe('True where nothing is dated by heat for its fields, since its newest day, filled ones included, is too old.'),
    fields: z.array(informedField),
  })
  .meta({ id: 'WeatherSource' });

export const weatherSourcesSchema = z
  .object({
    on: isoDay,
    sources: z.array(weatherSourceSchema),
    far: z
      .array(informedField.extend({ sourceId: z.string(), km: z.number() }))
      .describe('Fields whose only source is far away: not taken until somebody names it for the field.'),
    without: z.array(informedField).describe('Other fields that no source tells of: nothing is dated by heat there.'),
  })
  .meta({ id: 'WeatherSources' });
export type WeatherSourcesView = Shape<typeof weatherSourcesSchema>;

export function weatherSourcesView({ weather, fields, sources: about }: Program, on: IsoDay): WeatherSourcesView {
  const known = weather.filter(({ date, forecastMadeOn }) => (forecastMadeOn ?? date) <= on);
  const bySource = groupBy(known, ({ sourceId }) => sourceId);
  const ids = [...new Set([...weather.map(({ sourceId }) => sourceId), ...about.map(({ sourceId }) => sourceId)])].sort();
  // As advice takes them: what was only ever forecast tells of no field.
  const all = weatherSourcesOf(measuredWeather({ weather, sources: about }).keys(), about);
  const measured = measuredWeather({ weather: known, sources: about });
  const told = fields.map((field) => ({ field, source: weatherSourceFor(field, all), far: farSource(field, all) }));
  return {
    on,
    sources: ids.map((sourceId) => ({
      sourceId,
      ...aboutSource(all.about.get(sourceId)),
      ...reach(bySource.get(sourceId) ?? [], on),
      ...filledAndWaiting(measured.get(sourceId), day(on)),
      fields: told.filter(({ source }) => source === sourceId).map(({ field }) => named(field, sourceId, all)),
    })),
    far: told.flatMap(({ field, far }) => (far === null ? [] : [{ ...named(field, far.sourceId, all), ...far }])),
    without: told.flatMap(({ field, source, far }) => (source === null && far === null ? [named(field, null, all)] : [])),
  };
}

const named = (field: FieldRecord, sourceId: string | null, all: WeatherSources) => ({
  fieldId: field.fieldId,
  name: field.name,
  farm: field.farm,
  km: sourceId === null ? null : sourceKm(field, sourceId, all),
});

const aboutSource = (source: SourceRecord | undefined) => ({
  name: source?.name ?? null,
  kind: source?.kind ?? null,
  service: source?.service ?? null,
  fetching: source?.fetching ?? false,
  credit: source?.service ? weatherServices[source.service].credit : null,
  fillFrom: source?.fillFrom ?? null,
});

function reach(own: readonly WeatherRecord[], on: IsoDay) {
  const measured = own.filter((record) => !isForecast(record));
  const whole = new Set(measured.filter(({ tminC, tmaxC }) => tminC !== null && tmaxC !== null).map(({ date }) => date));
  const days = measured.map(({ date }) => date).sort();
  const [from = null, to = null] = [days[0], days.at(-1)];
  const gaps = from === null || to === null ? [] : daysFrom(from, to).filter((date) => !whole.has(date));
  const forecast = own.flatMap((record) => (isForecast(record) && record.date > (to ?? '') ? [record.date] : [])).sort();
  return {
    from,
    to,
    missing: gaps.length,
    newestGap: gaps.at(-1) ?? null,
    daysBehind: to === null ? null : Math.max(0, day(on) - 1 - day(to)),
    forecastTo: forecast.at(-1) ?? null,
  };
}

function filledAndWaiting(series: DailyExtremes | undefined, on: Day) {
  if (series === undefined) return { filled: 0, waiting: true };
  let newest: Day | null = null;
  let filled = 0;
  for (let index = 0; index < series.tminC.length; index++) {
    if (addDays(series.start, index) > on || !isKnown(series, index)) continue;
    newest = addDays(series.start, index);
    filled += series.filled?.[index] ?? 0;
  }
  return { filled, waiting: newest === null || daysBetween(newest, on) > ASSUMPTIONS.weatherStaleDays.value };
}

const daysFrom = (from: IsoDay, to: IsoDay): IsoDay[] =>
  Array.from({ length: day(to) - day(from) + 1 }, (_, index) => formatDay(addDays(day(from), index)));
