/** Daily summaries by the access data service of NOAA’s NCEI: measured days of a station, asked in metric units. */
import type { WeatherRecord } from '@duskwatch/core';
import { z } from 'zod';
import { type Ask, isProblem, plausible, readJson, refused } from './asking.ts';

/** Figures come as numbers or as texts of numbers; what is missing is left out, or empty. */
const figure = z
  .union([z.number(), z.string()])
  .transform((value) => (typeof value === 'string' && value.trim() === '' ? null : Number(value)))
  .refine((value) => value === null || Number.isFinite(value))
  .optional();
const answer = z.array(
  z.object({ DATE: z.iso.date(), STATION: z.string().optional(), TMAX: figure, TMIN: figure, PRCP: figure }),
);

export const askNoaaDaily: Ask = function* ({ sourceId, stationId }, { from, today }, origin) {
  const asked = new URLSearchParams({
    dataset: 'daily-summaries',
    stations: stationId ?? '',
    startDate: from,
    endDate: today,
    dataTypes: 'TMAX,TMIN,PRCP',
    units: 'metric',
    format: 'json',
  });
  const said = readJson(yield `${origin}/access/services/data/v1?${asked}`, answer);
  if (isProblem(said)) return refused(said);
  const days = said
    // A day that is not over has no extremes yet.
    .filter(({ DATE, STATION }) => DATE < today && (STATION === undefined || STATION === stationId))
    .map(
      ({ DATE, TMIN, TMAX, PRCP }): WeatherRecord => ({
        sourceId,
        date: DATE,
        tminC: TMIN ?? null,
        tmaxC: TMAX ?? null,
        precipitationMm: PRCP ?? null,
      }),
    );
  return plausible(days);
};
