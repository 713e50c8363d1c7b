/** What stands in cells of weather. */

const MISSING = /^(m|msg|missing|na|n\/a|nan|null|none|--*|\*+|\/+|nd|s\/d|-?99(\.9+)?|-?999(\.9*)?|-?9999(\.\d*)?)$/i;
/** Less than could be measured (World Meteorological Organization's manuals: an amount below the smallest step). */
const TRACE = /^(t|tr|trace|trazas?|inap)\.?$/i;

export type WeatherFigure =
  | { readonly is: 'figure'; readonly value: number }
  | { readonly is: 'missing' }
  | { readonly is: 'word' };

/** A figure with its unit or flag behind it is a figure: `88F`, `0.12A`, `71*`. `0.00` and a trace are nothing. */
export function weatherFigure(text: string, decimalComma: boolean, isRain: boolean): WeatherFigure {
  const written = text.trim();
  if (written === '' || MISSING.test(written)) return { is: 'missing' };
  if (isRain && TRACE.test(written)) return { is: 'figure', value: 0 };
  const match = /^([+-]?)(\d+(?:[.,]\d+)?|[.,]\d+)\s*(°?\s*[cf]|mm|in|"|[a-z*#])?$/i.exec(written.replace('−', '-'));
  if (!match) return { is: 'word' };
  const digits = decimalComma ? match[2]!.replace(',', '.') : match[2]!;
  const value = Number(`${match[1] === '-' ? '-' : ''}${digits.replace(',', '.')}`);
  return Number.isFinite(value) ? { is: 'figure', value } : { is: 'word' };
}

/** Minutes after midnight that a cell writes beside its day; null where it writes no time. */
export function minutesIn(text: string): number | null {
  const match = /(?:^|[T\s,])(\d{1,2}):(\d{2})(?::\d{2}(?:\.\d+)?)?\s*(?:([ap])\.?\s?m\.?)?/i.exec(text);
  if (!match) return null;
  const [hour, minute] = [Number(match[1]), Number(match[2])];
  const half = match[3]?.toLowerCase();
  const hours = half === 'p' && hour < 12 ? hour + 12 : half === 'a' && hour === 12 ? 0 : hour;
  return hours <= 24 && minute < 60 ? hours * 60 + minute : null;
}

/** Whether a time is world time, which is no site's own unless it says so. */
export const isWorldTime = (text: string): boolean => /\d\s*(z|utc|gmt|[+-]00:?00)$/i.test(text.trim());
