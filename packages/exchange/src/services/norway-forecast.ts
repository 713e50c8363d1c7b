/** Forecast of MET Norway (Locationforecast 2.0): hours, later six hours at a time, gathered into the days of the place. */
import type { IsoDay, WeatherRecord } from '@duskwatch/core';
import { z } from 'zod';
import { type Ask, isProblem, plausible, readJson, refused, tidy } from './asking.ts';
import { localDays } from './local-days.ts';
import { short } from './us-forecast.ts';

const HOUR_MS = 3_600_000;
const rainOf = z.object({ details: z.object({ precipitation_amount: z.number().optional() }).optional() }).optional();
const answer = z.object({
  properties: z.object({
    timeseries: z.array(
      z.object({
        time: z.iso.datetime({ offset: true }),
        data: z.object({
          instant: z.object({ details: z.object({ air_temperature: z.number().optional() }) }),
          next_1_hours: rainOf,
          next_6_hours: z
            .object({
              details: z
                .object({
                  air_temperature_max: z.number().optional(),
                  air_temperature_min: z.number().optional(),
                  precipitation_amount: z.number().optional(),
                })
                .optional(),
            })
            .optional(),
        }),
      }),
    ),
  }),
});

interface DayToCome {
  low: number;
  high: number;
  rain: number;
  /** Of the day's hours, those that a step tells of. */
  hours: number;
}

export const askNorwayForecast: Ask = function* (source, { today }, origin) {
  const { sourceId, latitude, longitude, elevationM, timeZone } = source;
  const asked = new URLSearchParams({
    lat: short(latitude!),
    lon: short(longitude!),
    ...(elevationM !== null && { altitude: `${Math.round(elevationM)}` }),
  });
  const said = readJson(yield `${origin}/weatherapi/locationforecast/2.0/complete?${asked}`, answer);
  if (isProblem(said)) return refused(said);
  const dayOf = localDays(timeZone!);
  const days = new Map<IsoDay, DayToCome>();
  const steps = said.properties.timeseries;
  steps.forEach(({ time, data }, index) => {
    const at = Date.parse(time);
    const next = steps[index + 1];
    const length = next === undefined ? 0 : Math.min(6, (Date.parse(next.time) - at) / HOUR_MS);
    const six = data.next_6_hours?.details;
    // A block of six hours belongs to the day of its middle: a low at dawn may so fall into the night before.
    const on = dayOf(at + (length * HOUR_MS) / 2);
    const day = days.get(on) ?? { low: Infinity, high: -Infinity, rain: 0, hours: 0 };
    const extremes = length > 1 ? [six?.air_temperature_min, six?.air_temperature_max] : [];
    for (const celsius of [data.instant.details.air_temperature, ...extremes]) {
      if (celsius === undefined) continue;
      day.low = Math.min(day.low, celsius);
      day.high = Math.max(day.high, celsius);
    }
    day.rain += (length > 1 ? six?.precipitation_amount : data.next_1_hours?.details?.precipitation_amount) ?? 0;
    day.hours += length;
    days.set(on, day);
  });
  return plausible(
    [...days].flatMap(([date, { low, high, rain, hours }]): WeatherRecord[] =>
      // A day of which hours are over, or not told yet, has no extremes to go by.
      date < today || hours < WHOLE_DAY_HOURS || !Number.isFinite(low)
        ? []
        : [{ sourceId, date, tminC: tidy(low), tmaxC: tidy(high), precipitationMm: tidy(rain), forecastMadeOn: today }],
    ),
  );
};

/** A day when the clocks go forward has 23 hours; a block of six may leave its day by half. */
const WHOLE_DAY_HOURS = 21;
