import { addDays, type Day } from '../base/day.ts';
import { isKnown } from '../weather/series.ts';
import type { DailyExtremes } from '../weather/types.ts';

export interface WeatherAhead {
  /** Measured days, then the forecast ones; missing where neither has them. */
  readonly series: DailyExtremes;
  /** Last day that was measured; null when none was. */
  readonly measuredThrough: Day | null;
}

/**
 * A measured series with somebody's own forecast days set after its last measured day. A measured day always stands;
 * forecast days on or before the last measured one are dropped, so that yesterday's forecast fills no gap in the past.
 */
export function withForecast(measured: DailyExtremes, forecast: DailyExtremes | null): WeatherAhead {
  const measuredThrough = lastKnown(measured);
  const forecastThrough = forecast && lastKnown(forecast);
  if (!forecast || forecastThrough === null || (measuredThrough !== null && forecastThrough <= measuredThrough))
    return { series: measured, measuredThrough };
  const start = measuredThrough === null ? forecast.start : measured.start;
  const days = forecastThrough - start + 1;
  const tminC = new Float64Array(days).fill(Number.NaN);
  const tmaxC = new Float64Array(days).fill(Number.NaN);
  for (let i = 0; i < days; i++) {
    const on = addDays(start, i);
    const from = measuredThrough !== null && on <= measuredThrough ? measured : forecast;
    tminC[i] = from.tminC[on - from.start] ?? Number.NaN;
    tmaxC[i] = from.tmaxC[on - from.start] ?? Number.NaN;
  }
  return { series: { sourceId: measured.sourceId, start, tminC, tmaxC }, measuredThrough };
}

function lastKnown(series: DailyExtremes): Day | null {
  for (let i = series.tminC.length - 1; i >= 0; i--) if (isKnown(series, i)) return addDays(series.start, i);
  return null;
}
