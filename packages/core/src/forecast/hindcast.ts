/** Forecasts of events that have already come, made from what was known some days before: how far to trust the next one. */

import { addDays, type Day, dayOf, daysBetween, yearOf } from '../base/day.ts';
import type { PhenologyModel } from '../catalogue/types.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatTrack } from '../heat/types.ts';
import { usualWaits } from '../heat/usual-heat.ts';
import { orderedWindow, type WaitWindow, waitWindow } from '../heat/wait-window.ts';
import { PROJECTION_HORIZON_DAYS, recentWaits, sameDayIn, waitsInYears } from '../heat/waits.ts';
import { monthlyMeans } from '../weather/normals.ts';
import type { DailyExtremes } from '../weather/types.ts';

/** What stands in for the rest of the season. */
export const HINDCAST_SETS = ['earlier-years', 'other-years', 'normals', 'recent-days'] as const;
export type HindcastSet = (typeof HINDCAST_SETS)[number];

export interface HindcastOptions {
  /** Days before the true date at which the forecast is made. */
  readonly leadDays?: readonly number[];
  /** Where models that begin at a biofix or a life stage are begun, each year: [month, date]. */
  readonly starts?: readonly (readonly [number, number])[];
}

export const HINDCAST_LEAD_DAYS: readonly number[] = [5, 10, 20, 40];
/** Through the months in which moths lay. Own choice. */
export const HINDCAST_STARTS: readonly (readonly [number, number])[] = [
  [4, 15],
  [5, 15],
  [6, 15],
  [7, 15],
];

/** One event of one year, forecast once. Errors are in days, above 0 when the forecast was late. */
export interface HindcastCase {
  readonly sourceId: string;
  readonly modelId: string;
  readonly start: Day;
  /** Degree-days of the event from `start`, in the model's unit. */
  readonly target: number;
  readonly truth: Day;
  readonly leadDays: number;
  readonly set: HindcastSet;
  /** Years that stood in for the rest of the season, or that the normals are means of; 0 for recent days. */
  readonly years: number;
  readonly calibrated: WaitWindow;
  /** The window read off the ordered years alone; null where no single years stand in. */
  readonly ordered: WaitWindow | null;
}

/**
 * Forecasts every event of every model in every year of a series, as of each lead time before its true date.
 *
 * Four sets stand in for the rest of the season: the years before (as in use), all other years (leave one out: more
 * members, some of them later ones), the monthly means of all other years in place of published normals, with no day known
 * of the years before, and the pace of the last days. An event is passed over where the heat sum had not
 * begun at the time of the forecast, where it did not come by the end of its year, or where fewer than two years or
 * seven recent days are known.
 */
export function hindcast(
  series: DailyExtremes,
  models: readonly PhenologyModel[],
  options: HindcastOptions = {},
): readonly HindcastCase[] {
  const { leadDays = HINDCAST_LEAD_DAYS, starts = HINDCAST_STARTS } = options;
  const firstYear = yearOf(series.start);
  const lastYear = yearOf(addDays(series.start, series.tminC.length - 1));
  const allYears = Array.from({ length: lastYear - firstYear + 1 }, (_, i) => firstYear + i);
  const cases: HindcastCase[] = [];
  const seasons = allYears.map(
    (year) => [year, onlyYear(series, year), monthlyMeans(series, (other) => other !== year)] as const,
  );
  for (const model of models) {
    const track = heatTrack(model.heat, series);
    const alone = new Map(seasons.map(([year, own, normals]) => [year, heatTrack(model.heat, own, { normals })]));
    const begins = model.start.kind === 'calendar' ? [[model.start.month, model.start.date] as const] : starts;
    for (const year of allYears)
      for (const [month, date] of begins)
        for (const target of targetsOf(model)) {
          const start = dayOf(year, month, date);
          const truth = track.dayReaching(start, target);
          if (truth === null || yearOf(truth) !== year) continue;
          const event = { sourceId: series.sourceId, modelId: model.id, start, target, truth };
          for (const lead of leadDays)
            cases.push(
              ...forecastsAt(track, event, lead, allYears),
              ...byNormals(alone.get(year)!, event, lead, allYears.length - 1),
            );
        }
  }
  return cases;
}

/** A year by itself, as a source that began with it knows it. */
function onlyYear(series: DailyExtremes, year: number): DailyExtremes {
  const from = Math.max(0, daysBetween(series.start, dayOf(year, 1, 1)));
  const through = daysBetween(series.start, dayOf(year, 12, 31)) + 1;
  const cut = (values: Float64Array) => values.subarray(from, through);
  return { ...series, start: addDays(series.start, from), tminC: cut(series.tminC), tmaxC: cut(series.tmaxC) };
}

function byNormals(track: HeatTrack, event: Event, leadDays: number, years: number): HindcastCase[] {
  const asOf = addDays(event.truth, -leadDays);
  const known = track.total(event.start, asOf);
  if (track.normals === null || asOf < event.start || !known.ok) return [];
  const calibrated = usualWaits(track, asOf, event.target - known.degreeDays, track.normals);
  return [{ ...event, leadDays, set: 'normals', years, calibrated, ordered: null }];
}

type Event = Pick<HindcastCase, 'sourceId' | 'modelId' | 'start' | 'target' | 'truth'>;

function forecastsAt(track: HeatTrack, event: Event, leadDays: number, allYears: readonly number[]): HindcastCase[] {
  const asOf = addDays(event.truth, -leadDays);
  const known = track.total(event.start, asOf);
  if (asOf < event.start || !known.ok) return [];
  const next = addDays(asOf, 1);
  const remaining = event.target - known.degreeDays;
  const year = yearOf(event.truth);
  const cases: HindcastCase[] = [];
  const fromYears = (set: HindcastSet, years: readonly number[]) => {
    const waits = waitsInYears(
      track,
      next,
      remaining,
      years.filter((other) => sameDayIn(other, next) >= track.start),
    );
    const { sorted } = waits;
    if (sorted.length < 2) return;
    cases.push({ ...event, leadDays, set, years: sorted.length, calibrated: waitWindow(waits), ordered: orderedWindow(sorted) });
  };
  fromYears(
    'earlier-years',
    allYears.filter((other) => other < year),
  );
  fromYears(
    'other-years',
    allYears.filter((other) => other !== year),
  );
  const recent = recentWaits(track, asOf, remaining);
  if (recent !== null) cases.push({ ...event, leadDays, set: 'recent-days', years: 0, calibrated: recent, ordered: null });
  return cases;
}

/** The dated moments of a model: both ends of its windows, and where it has none, the ends of its stages. */
export function targetsOf({ events, stages }: PhenologyModel): number[] {
  const targets = events.length > 0 ? events.flatMap(({ from, to }) => [from, to ?? from]) : runningTotals(stages);
  return [...new Set(targets)].filter((target) => target > 0).sort((a, b) => a - b);
}

function runningTotals(stages: PhenologyModel['stages']): number[] {
  let total = 0;
  return stages.map(({ lasts }) => {
    total += lasts;
    return total;
  });
}

export interface HindcastSkill {
  readonly set: HindcastSet;
  readonly leadDays: number;
  readonly cases: number;
  /** Share of true dates within the 80 % window, and its median width in days from early to late. */
  readonly calibrated: { readonly coverage: number; readonly widthDays: number };
  /** The same of the ordered years alone; null where no single years stand in. */
  readonly ordered: { readonly coverage: number; readonly widthDays: number } | null;
  /** Median of |middle − truth| in days. */
  readonly medianErrorDays: number;
  /** Median of middle − truth in days: below 0, forecasts come too early. */
  readonly medianBiasDays: number;
}

/** Skill by set and lead time, in that order. */
export function skillOf(cases: readonly HindcastCase[]): readonly HindcastSkill[] {
  const leads = [...new Set(cases.map(({ leadDays }) => leadDays))].sort((a, b) => a - b);
  return HINDCAST_SETS.flatMap((set) =>
    leads.flatMap((leadDays): HindcastSkill[] => {
      const group = cases.filter((one) => one.set === set && one.leadDays === leadDays);
      if (group.length === 0) return [];
      const errors = group.map(({ calibrated }) => Math.min(calibrated.middle, PROJECTION_HORIZON_DAYS) - leadDays);
      return [
        {
          set,
          leadDays,
          cases: group.length,
          calibrated: windowSkill(group, ({ calibrated }) => calibrated),
          ordered: group[0]!.ordered === null ? null : windowSkill(group, ({ ordered }) => ordered!),
          medianErrorDays: median(errors.map(Math.abs)),
          medianBiasDays: median(errors),
        },
      ];
    }),
  );
}

function windowSkill(group: readonly HindcastCase[], windowOf: (one: HindcastCase) => WaitWindow) {
  const held = group.filter((one) => windowOf(one).early <= one.leadDays && one.leadDays <= windowOf(one).late);
  const widths = group.map(windowOf).map(({ early, late }) => (Number.isFinite(late) ? late - Math.max(1, early) : Infinity));
  return { coverage: held.length / group.length, widthDays: median(widths) };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
