/** Heat as far as it is measured and, after that, as far as somebody's own weather forecast goes. */

import type { Day } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import { withForecast } from '../forecast/own-forecast.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatRule, HeatTrack } from '../heat/types.ts';
import { heatOf, once, type Prepared } from './prepare.ts';

export interface HeatAhead {
  /** Measured heat followed by that of the forecast days. */
  readonly track: HeatTrack;
  /** Last day whose heat is measured; null when none is. */
  readonly measuredThrough: Day | null;
  /** Last forecast day in use; null where there is no forecast, or none beyond what is measured. */
  readonly forecastThrough: Day | null;
}

export function heatAhead(prepared: Prepared, sourceId: string, rule: HeatRule): HeatAhead {
  const measured = heatOf(prepared, sourceId, rule);
  const forecast = prepared.forecasts.get(sourceId);
  if (!forecast) return { track: measured, measuredThrough: measured.end, forecastThrough: null };
  const key = `heat ahead\n${sourceId}\n${rule.method} ${rule.cutoff} ${rule.lower} ${rule.upper} ${rule.unit}`;
  return once(prepared, 'no check', key, () => {
    const { series } = withForecast(prepared.weather.get(sourceId)!, forecast);
    const track = heatTrack(rule, series, { maxBridgeDays: ASSUMPTIONS.maxBridgeDays.value, normals: measured.normals });
    const longer = track.end !== null && (measured.end === null || track.end > measured.end);
    // A forecast that leaves days out after the last measured one cannot be summed, and is not used.
    if (!longer || (measured.end !== null && !track.total(measured.end, track.end!).ok))
      return { track: measured, measuredThrough: measured.end, forecastThrough: null };
    return { track, measuredThrough: measured.end, forecastThrough: track.end };
  });
}
