/** How a table of weather that somebody exported is to be read: which column is what, and in which unit. */
import { z } from 'zod';
import { DATE_ORDERS } from './written-day.ts';

const column = z.string().regex(/^[A-Z]{1,3}$/, { error: 'expected the letters of a column' });
const row = z.int().min(1);

/** What a column of weather holds; `temperature`: single readings, of which the day's extremes are taken. */
export const WEATHER_ELEMENTS = ['tmin', 'tmax', 'temperature', 'precipitation'] as const;
export type WeatherElement = (typeof WEATHER_ELEMENTS)[number];

export const TEMPERATURE_UNITS = ['C', 'F', 'tenths-C'] as const;
export const PRECIPITATION_UNITS = ['mm', 'in', 'tenths-mm'] as const;
export type WrittenTemperatureUnit = (typeof TEMPERATURE_UNITS)[number];
export type WrittenPrecipitationUnit = (typeof PRECIPITATION_UNITS)[number];

/** Share of a day's readings that its extremes need; with fewer the day stays unknown. Common practice, no source. */
export const SHARE_OF_DAY = 0.75;

export const weatherTableSchema = z.object({
  sheet: z.string().nullable(),
  from: row,
  to: row,
  day: column,
  /** Names the station in each row. */
  station: column.nullable(),
  columns: z.array(z.object({ column, element: z.enum(WEATHER_ELEMENTS) })),
  /** One figure a row, its kind named beside it, as national archives write a year. Quality flags fail a figure. */
  long: z.object({ element: column, value: column, quality: column.nullable() }).nullable(),
  /** Columns of weather that are read for nothing here: wind, humidity, soil. */
  asideColumns: z.array(z.object({ column, heading: z.string() })),
});
export type WeatherTable = z.infer<typeof weatherTableSchema>;

export const weatherMatchSchema = z.object({
  kind: z.literal('weather'),
  tables: z.array(weatherTableSchema).min(1),
  dateOrder: z.enum(DATE_ORDERS).nullable(),
  /** Null while it is not settled; figures are never taken for one unit or another in silence. */
  temperatureUnit: z.enum(TEMPERATURE_UNITS).nullable(),
  /** Null also where there is no precipitation. */
  precipitationUnit: z.enum(PRECIPITATION_UNITS).nullable(),
  /** What the source is called where no column names the station. */
  sourceId: z.string().trim().min(1).nullable(),
  /** Hours to add to the times written to have the site's own; null while it is not settled. */
  addHours: z.number().min(-14).max(14).nullable(),
});
export type WeatherMatch = z.infer<typeof weatherMatchSchema>;
