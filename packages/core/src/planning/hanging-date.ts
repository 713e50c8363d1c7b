/** When to hang traps: before the earliest flight that the weather of past years makes plausible. */

import { addDays, type Day, day, dayOf, daysBetween, formatDay, type IsoDay, yearOf } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import type { EventId, ModelEvent, PhenologyModel } from '../catalogue/types.ts';
import type { HeatTrack } from '../heat/types.ts';
import { type PastWaits, waitWindow } from '../heat/wait-window.ts';
import { pastWaits, waitUntil } from '../heat/waits.ts';
import type { Gap } from '../weather/types.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import type { flightSpreadSchema, hangBySchema, noHeatReasonSchema, pastFlightSchema } from './schema.ts';

export type PastFlight = Shape<typeof pastFlightSchema>;

export type NoHeatReason = Shape<typeof noHeatReasonSchema>;

export type FlightSpread = Shape<typeof flightSpreadSchema>;

export type HangBy = Shape<typeof hangBySchema>;

export interface HangOptions {
  /** The year in which the growing year begins: 1 January, south of the equator 1 July. */
  readonly season: number;
  /** Null: taken to be north of the equator. */
  readonly latitude: number | null;
  readonly leadDays?: number | undefined;
  /** The day the user would hang them, whatever heat says; null: not stated. */
  readonly stated?: IsoDay | null | undefined;
}

/** Events that open a season, the best first. `set-out-traps` is itself a hanging date, so no lead is added to it. */
const OPENING: readonly EventId[] = ['set-out-traps', 'first-moth', 'adult-emergence'];

export interface OpeningEvent {
  readonly model: PhenologyModel & { readonly start: { readonly kind: 'calendar' } };
  readonly event: ModelEvent;
}

/** The first flight as the models of an insect date it from a calendar day; null when none does. */
export function openingEvent(models: readonly PhenologyModel[]): OpeningEvent | null {
  for (const wanted of OPENING) {
    for (const model of models) {
      if (model.start.kind !== 'calendar') continue;
      const event = model.events.find(({ event, generation }) => event === wanted && (generation ?? 1) === 1);
      if (event) return { model: model as OpeningEvent['model'], event };
    }
  }
  return null;
}

/**
 * The day by which traps should hang.
 *
 * In every growing year at the weather source, heat is summed from the model's start to the opening event. Days since
 * the start are carried over to the season planned. One more year may come earlier than any seen: with two or more years
 * its 10 % limit counts too (`waitWindow`). A year without heat enough, or with missing weather, is shown and not used.
 */
export function hangBy(opening: OpeningEvent | null, track: HeatTrack | null, options: HangOptions): HangBy {
  const { season, latitude, leadDays = SEASON_ASSUMPTIONS.hangLeadDays.value, stated = null } = options;
  const without = (why: NoHeatReason, years: readonly PastFlight[] = []): HangBy =>
    stated === null ? { basis: 'unknown', on: null, why, years } : { basis: 'stated', on: stated, why, years };
  if (opening === null) return without('no-model');
  if (track === null || track.end === null) return without('no-weather');

  const years = pastFlights(opening, track, latitude, season);
  const reached = years.filter((year) => year.kind === 'reached');
  const missed = years.filter((year) => year.kind === 'not-reached').length;
  if (reached.length === 0) return without(missed > 0 ? 'never-reached' : 'no-whole-year', years);

  const waits = reached.map(({ wait }) => wait).sort((a, b) => a - b);
  const past = pastWaits(
    track,
    years.flatMap((year) => {
      if (year.kind === 'unknown') return [];
      const first = modelStart(opening, year.season, latitude);
      const wait = year.kind === 'reached' ? waitUntil(track, first, day(year.on), opening.event.from) : Infinity;
      return [{ first, wait }];
    }),
  );
  const start = modelStart(opening, season, latitude);
  const dated = (wait: number): IsoDay => formatDay(addDays(start, wait));
  const plausible = Math.max(0, earliestPlausible(waits, past));
  const lead = opening.event.event === 'set-out-traps' ? 0 : leadDays;
  const spread: FlightSpread = {
    modelId: opening.model.id,
    event: opening.event.event,
    from: opening.event.from,
    unit: track.rule.unit,
    years,
    earliest: dated(waits[0]!),
    median: dated(medianOf(waits)),
    latest: dated(waits.at(-1)!),
    plausible: dated(plausible),
  };
  const on = dated(plausible - lead);
  if (stated !== null) {
    const caution = stated > spread.plausible ? 'late' : null;
    return { basis: 'chosen', on: stated, proposed: on, leadDays: lead, spread, caution };
  }
  const caution = missed > 0 ? 'some-years-without' : waits.length === 1 ? 'one-year' : null;
  return { basis: 'heat', on, leadDays: lead, spread, caution };
}

/** Every growing year of the source before the season planned, oldest first. */
function pastFlights(opening: OpeningEvent, track: HeatTrack, latitude: number | null, season: number): PastFlight[] {
  const years: PastFlight[] = [];
  for (let year = yearOf(track.start) - 1; year < season; year++) {
    const start = modelStart(opening, year, latitude);
    const next = modelStart(opening, year + 1, latitude);
    if (next <= track.start || start > track.end!) continue;
    years.push({ season: year, ...pastFlight(track, start, addDays(next, -1), opening.event.from) });
  }
  return years;
}

type Outcome<T> = T extends unknown ? Omit<T, 'season'> : never;

function pastFlight(track: HeatTrack, start: Day, last: Day, target: number): Outcome<PastFlight> {
  const on = track.dayReaching(start, target);
  if (on !== null && on <= last) return { kind: 'reached', on: formatDay(on), wait: daysBetween(start, on) };
  const whole = track.total(start, last);
  if (whole.ok) return { kind: 'not-reached', heat: whole.degreeDays };
  return { kind: 'unknown', ...written(whole.gap) };
}

const written = ({ from, to }: Gap) => ({ from: formatDay(from), to: formatDay(to) });

/** Where the model's sum begins in a growing year; south of the equator half a year after the published day. */
function modelStart({ model }: OpeningEvent, season: number, latitude: number | null): Day {
  const { month, date } = model.start;
  return dayOf(season, month + (latitude !== null && latitude < 0 ? 6 : 0), date);
}

/** Years without a flight say nothing about how early one can be, and leave only the order of the others. */
function earliestPlausible(waits: readonly number[], past: PastWaits): number {
  if (waits.length === 1) return waits[0]! - SEASON_ASSUMPTIONS.oneYearMarginDays.value;
  // A wait of one day ends on the day of the model's start, which is day 0 here.
  return Math.min(waits[0]!, waitWindow(past).early - 1);
}

function medianOf(sorted: readonly number[]): number {
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : Math.round((sorted[middle - 1]! + sorted[middle]!) / 2);
}
