/** Forecast of the US National Weather Service: the grid square of a place, then the raw layers of that square. */
import type { IsoDay, WeatherRecord } from '@duskwatch/core';
import { z } from 'zod';
import { type Ask, isProblem, otherAnswer, plausible, readJson, refused, tidy } from './asking.ts';
import { intervalOf, localDays, sharesByDay } from './local-days.ts';

const square = z.object({
  properties: z.object({ gridId: z.string().regex(/^[A-Z]{2,4}$/), gridX: z.int(), gridY: z.int() }),
});
const layer = z.object({
  uom: z.string(),
  values: z.array(z.object({ validTime: z.string(), value: z.number().nullable() })),
});
const layers = z.object({
  properties: z.object({ maxTemperature: layer, minTemperature: layer, quantitativePrecipitation: layer.optional() }),
});
type Layer = z.infer<typeof layer>;

export const askUsForecast: Ask = function* ({ sourceId, latitude, longitude, timeZone }, { today }, origin) {
  const at = readJson(yield `${origin}/points/${short(latitude!)},${short(longitude!)}`, square);
  if (isProblem(at)) return refused(at);
  const { gridId, gridX, gridY } = at.properties;
  const text = yield `${origin}/gridpoints/${gridId}/${gridX},${gridY}`;
  const said = readJson(text, layers);
  if (isProblem(said)) return refused(said);
  const { maxTemperature, minTemperature, quantitativePrecipitation: rain } = said.properties;
  const toCelsius = [maxTemperature, minTemperature].map(({ uom }) => temperatureIn(uom));
  if (toCelsius.includes(null) || (rain && !/:mm$/.test(rain.uom))) return refused(otherAnswer(text, 'uom'));

  const dayOf = localDays(timeZone!);
  // A day's high is told for its daylight hours, a night's low for the hours up to the morning that it belongs to.
  const highs = byDay(maxTemperature, ({ from, to }) => dayOf((from + to) / 2), toCelsius[0]!);
  const lows = byDay(minTemperature, ({ to }) => dayOf(to - 1), toCelsius[1]!);
  const wet = rain ? rainByDay(rain, dayOf) : new Map<IsoDay, number>();
  return plausible(
    [...highs].flatMap(([date, tmaxC]): WeatherRecord[] => {
      const tminC = lows.get(date);
      if (tminC === undefined || date < today) return [];
      const mm = wet.get(date);
      return [{ sourceId, date, tminC, tmaxC, precipitationMm: mm === undefined ? null : tidy(mm), forecastMadeOn: today }];
    }),
  );
};

/** Four decimals, and none that say nothing: the service leads other spellings on to this one. */
export const short = (degrees: number): string => `${Number(degrees.toFixed(4))}`;

function temperatureIn(uom: string): ((value: number) => number) | null {
  if (/:degC$/.test(uom)) return tidy;
  return /:degF$/.test(uom) ? (value) => tidy(((value - 32) * 5) / 9) : null;
}

function byDay(
  { values }: Layer,
  dayOf: (interval: { readonly from: number; readonly to: number }) => IsoDay,
  toCelsius: (value: number) => number,
): Map<IsoDay, number> {
  const days = new Map<IsoDay, number>();
  for (const { validTime, value } of values) {
    const interval = intervalOf(validTime);
    if (interval === null || value === null) continue;
    const on = dayOf(interval);
    // What is told of a day first is the nearer hour's.
    if (!days.has(on)) days.set(on, toCelsius(value));
  }
  return days;
}

function rainByDay({ values }: Layer, dayOf: (ms: number) => IsoDay): Map<IsoDay, number> {
  const days = new Map<IsoDay, number>();
  for (const { validTime, value } of values) {
    const interval = intervalOf(validTime);
    if (interval === null || value === null) continue;
    for (const [on, share] of sharesByDay(interval, dayOf)) days.set(on, (days.get(on) ?? 0) + share * value);
  }
  return days;
}
