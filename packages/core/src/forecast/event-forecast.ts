import { addDays, type Day, daysBetween } from '../base/day.ts';
import type { ModelEvent, PhenologyModel } from '../catalogue/types.ts';
import { PROJECTION_MIN_YEARS, projectEvent } from '../heat/project.ts';
import type { HeatTrack, Projection } from '../heat/types.ts';
import { chanceWithin, type PastWaits } from '../heat/wait-window.ts';
import { PROJECTION_HORIZON_DAYS, pastYears, waitsInYears } from '../heat/waits.ts';
import type { Gap } from '../weather/types.ts';

/** When one event comes. */
export type EventForecast =
  /** It came on this measured day. */
  | { readonly status: 'came'; readonly on: Day }
  /** It comes within the user's own forecast days: the date is as good as that forecast, whose error is not known here. */
  | { readonly status: 'in-own-forecast'; readonly on: Day }
  | {
      readonly status: 'ahead';
      /** Last day whose heat is known or in the user's own forecast; the date is reckoned from here. */
      readonly from: Day;
      /** Degree-days still to come after `from`, in the unit of the rule. */
      readonly remaining: number;
      /** 10, 50 and 90 % dates. */
      readonly window: Projection;
      /** Where each past year puts it, earliest first, one equally likely case each; null: not within the horizon. */
      readonly cases: readonly (Day | null)[];
      /** The same in days from `from`, with the scatter that the heat of the source shows. */
      readonly past: PastWaits;
    }
  /** Heat since the start is not known. */
  | { readonly status: 'gap'; readonly gap: Gap }
  /** It does not come within the horizon in half the cases, or nothing speaks for the days to come. */
  | { readonly status: 'not-dated' };

/**
 * The date on which the heat from `start` on reaches `target` (unit of the rule), as a distribution.
 *
 * Weather on the track comes first: measured days and, after `measuredThrough`, the user's own forecast days
 * (`withForecast`). Then each past year at the source from that calendar date on is one equally likely continuation.
 */
export function forecastEvent(
  track: HeatTrack,
  start: Day,
  target: number,
  { measuredThrough = track.end }: { readonly measuredThrough?: Day | null } = {},
): EventForecast {
  if (track.end === null) return { status: 'not-dated' };
  const reached = track.dayReaching(start, target);
  if (reached !== null)
    return { status: measuredThrough !== null && reached <= measuredThrough ? 'came' : 'in-own-forecast', on: reached };
  const from = track.end;
  if (start > from) return { status: 'not-dated' };
  const soFar = track.total(start, from);
  if (!soFar.ok) return { status: 'gap', gap: soFar.gap };
  const remaining = target - soFar.degreeDays;
  const window = projectEvent(track, remaining);
  if (window === null) return { status: 'not-dated' };
  const past = pastOf(track, from, remaining);
  const cases = past.sorted.map((wait) => (wait > PROJECTION_HORIZON_DAYS ? null : addDays(from, Math.ceil(wait))));
  return { status: 'ahead', from, remaining, window, cases, past };
}

function pastOf(track: HeatTrack, from: Day, remaining: number): PastWaits {
  const next = addDays(from, 1);
  return waitsInYears(track, next, remaining, pastYears(track, next));
}

/** Probability that the event has come by the end of `on`; null when the forecast does not say. */
export function chanceBy(forecast: EventForecast, on: Day): number | null {
  if (forecast.status === 'came' || forecast.status === 'in-own-forecast') return on >= forecast.on ? 1 : 0;
  if (forecast.status !== 'ahead' || forecast.cases.length < PROJECTION_MIN_YEARS) return null;
  if (on <= forecast.from) return 0;
  return chanceWithin(forecast.past, daysBetween(forecast.from, on));
}

export interface DatedEvent {
  readonly event: ModelEvent;
  readonly begins: EventForecast;
  /** The end of a window; null for a moment. */
  readonly ends: EventForecast | null;
}

/** Every event of a model that was begun on `start`, with its dates. */
export function forecastModel(
  track: HeatTrack,
  model: PhenologyModel,
  start: Day,
  options: { readonly measuredThrough?: Day | null } = {},
): readonly DatedEvent[] {
  return model.events.map((event) => ({
    event,
    begins: forecastEvent(track, start, event.from, options),
    ends: event.to === null ? null : forecastEvent(track, start, event.to, options),
  }));
}
