/** The three units in which daily summaries are handed out; the file itself does not say which. */
const NOAA_UNITS = ['standard', 'metric', 'tenths'] as const;

/** `standard`: °F and inches. `metric`: °C and mm. `tenths`: tenths of °C and of mm, as in raw GHCN-Daily. */
export type NoaaUnits = (typeof NOAA_UNITS)[number];

/** No air temperature on record lies outside these, in °F: −128.6 (Vostok 1983) to 134 (Furnace Creek 1913), WMO archive of extremes. */
const POSSIBLE_F = { low: -130, high: 140 };
/** The same in °C. */
const POSSIBLE_C = { low: -90, high: 60 };

const hasDecimals = (cell: string): boolean => /\.\d/.test(cell);

/**
 * The units of a file, when its figures leave no other reading; null when they do, and somebody must say.
 * - Whole figures, some beyond any °F on record: tenths of °C.
 * - Temperatures with decimals, none beyond any °C on record: metric (standard and raw files hold whole degrees and whole tenths).
 * - Whole temperatures of which some are beyond any °C on record, with precipitation in decimals: standard (raw
 *   precipitation is in whole tenths of mm).
 */
export function inferNoaaUnits(temperatures: readonly string[], precipitation: readonly string[]): NoaaUnits | null {
  const figures = temperatures.map(Number);
  const beyond = ({ low, high }: typeof POSSIBLE_F) => figures.some((figure) => figure < low || figure > high);
  const decimals = temperatures.some(hasDecimals);
  if (!decimals && beyond(POSSIBLE_F)) return 'tenths';
  if (decimals) return beyond(POSSIBLE_C) ? null : 'metric';
  return beyond(POSSIBLE_C) && precipitation.some(hasDecimals) ? 'standard' : null;
}
