/** Open-Meteo: past days of its models (estimates, not measurements) and its forecast, by the source's own days. */
import type { IsoDay, WeatherRecord } from '@duskwatch/core';
import { day, daysBetween } from '@duskwatch/core';
import { z } from 'zod';
import { type Ask, isProblem, otherAnswer, plausible, readJson, refused } from './asking.ts';

const MOST_PAST_DAYS = 92;
const FORECAST_DAYS = 10;

const figures = z.array(z.number().nullable());
const answer = z.object({
  daily_units: z.object({ temperature_2m_max: z.string(), temperature_2m_min: z.string(), precipitation_sum: z.string() }),
  daily: z.object({
    time: z.array(z.iso.date()),
    temperature_2m_max: figures,
    temperature_2m_min: figures,
    precipitation_sum: figures,
  }),
});

export const askOpenMeteo: Ask = function* ({ sourceId, latitude, longitude, timeZone }, { from, today }, origin) {
  const asked = new URLSearchParams({
    latitude: `${latitude}`,
    longitude: `${longitude}`,
    daily: 'temperature_2m_max,temperature_2m_min,precipitation_sum',
    timezone: timeZone ?? 'auto',
    past_days: `${Math.min(MOST_PAST_DAYS, Math.max(0, daysBetween(day(from), day(today))))}`,
    forecast_days: `${FORECAST_DAYS}`,
  });
  const text = yield `${origin}/v1/forecast?${asked}`;
  const said = readJson(text, answer);
  if (isProblem(said)) return refused(said);
  const { daily, daily_units: units } = said;
  if (units.temperature_2m_max !== '°C' || units.temperature_2m_min !== '°C' || units.precipitation_sum !== 'mm')
    return refused(otherAnswer(JSON.stringify(units), 'daily_units'));
  const lengths = [daily.temperature_2m_max, daily.temperature_2m_min, daily.precipitation_sum].map(({ length }) => length);
  if (lengths.some((length) => length !== daily.time.length)) return refused(otherAnswer(text, 'daily'));
  return plausible(
    daily.time.flatMap((date, index): WeatherRecord[] => {
      const tminC = daily.temperature_2m_min[index]!;
      const tmaxC = daily.temperature_2m_max[index]!;
      if (tminC === null && tmaxC === null) return [];
      return [{ sourceId, date, tminC, tmaxC, precipitationMm: daily.precipitation_sum[index]!, ...forecastFrom(date, today) }];
    }),
  );
};

/** Days that are not over are a forecast, made today. */
const forecastFrom = (date: IsoDay, today: IsoDay): Pick<WeatherRecord, 'forecastMadeOn'> =>
  date >= today ? { forecastMadeOn: today } : {};
