/** The same catch in each year, on the calendar and on the heat axis: values ready to draw. */

import { ratePoints } from '../advice/rate-points.ts';
import { addDays, type Day, day, yearOf } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { modelsFor } from '../catalogue/look-up.ts';
import type { PhenologyModel } from '../catalogue/types.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatRule, HeatTrack } from '../heat/types.ts';
import { sameDayIn } from '../heat/waits.ts';
import type { Program } from '../records/program.ts';
import { TRAP_DESIGNS, type TrapDesign } from '../records/schema.ts';
import { weatherSourceFor, weatherSourcesOf } from '../records/weather-source.ts';
import { measuredWeather } from '../weather/filled.ts';
import { farmOfTrap } from './farm-of-trap.ts';
import { type GrowingYear, growingYear, growingYears } from './growing-year.ts';
import { inSeason } from './season-timing.ts';
import { type TrapWithHistory, trapHistories } from './trap-histories.ts';

/** One stretch of nights in which the same visits speak. */
export interface YearPoint {
  readonly from: Day;
  readonly to: Day;
  /** The same dates in the newest of the years drawn. */
  readonly drawnFrom: Day;
  readonly drawnTo: Day;
  /** Degree-days since the growing year began, at the first and after the last night; null where not known. */
  readonly heatFrom: number | null;
  readonly heatTo: number | null;
  /** Moths per trap per night with the interval; null where no visit carries information. */
  readonly perNight: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** Share of the season's catch of the mean trap up to the end of the stretch; null in a season without one. */
  readonly shareSoFar: number | null;
}

/** Neither designs nor years are pooled. */
export interface YearCurve {
  readonly season: GrowingYear;
  readonly design: TrapDesign;
  readonly traps: number;
  /** Where they stood: traps elsewhere saw another place. */
  readonly stations: readonly string[];
  readonly points: readonly YearPoint[];
}

export interface YearsAgainst {
  readonly insect: string;
  readonly farm: string | null;
  /** How heat was counted, from which source; null: no heat axis. */
  readonly heat: { readonly rule: HeatRule; readonly modelId: string; readonly sourceId: string } | null;
  readonly noHeat: 'no-model' | 'no-weather-source' | 'several-weather-sources' | null;
  /** Oldest season first. */
  readonly curves: readonly YearCurve[];
}

export interface YearsOptions {
  readonly on: Day;
  readonly insect: string;
  /** Traps of one farm; of the whole program without it. */
  readonly farm?: string | null;
}

export function yearsAgainst(program: Program, { on, insect, farm = null }: YearsOptions): YearsAgainst {
  const fields = new Map(program.fields.map((field) => [field.fieldId, field]));
  const traps = trapHistories(program, on).filter(
    ({ trap }) => trap.insect === insect && (farm === null || farmOfTrap(trap, fields) === farm),
  );
  const axis = heatAxis(program, insect, traps);
  const newest = growingYear(program, on);
  const curves = growingYears(program)
    .filter(({ from }) => from <= on)
    .flatMap((season) =>
      TRAP_DESIGNS.flatMap((design): YearCurve[] => {
        const own = traps
          .filter(({ trap }) => trap.design === design)
          .map(({ trap, history }) => ({ trap, history: inSeason(history, season) }))
          .filter(({ history }) => history.intervals.some(({ count }) => count !== null));
        if (own.length === 0) return [];
        const stations = [...new Set(own.map(({ trap }) => trap.station))].sort();
        return [{ season, design, traps: own.length, stations, points: pointsOf(own, season, newest, axis.track) }];
      }),
    );
  return { insect, farm, heat: axis.heat, noHeat: axis.noHeat, curves };
}

/** The heat rule of a model that begins on a calendar day, else of the first model there is. */
export function axisModel(insect: string): PhenologyModel | null {
  const models = modelsFor(insect);
  return models.find(({ start }) => start.kind === 'calendar') ?? models[0] ?? null;
}

function heatAxis(program: Program, insect: string, traps: readonly TrapWithHistory[]) {
  const none = (noHeat: NonNullable<YearsAgainst['noHeat']>) => ({ track: null, heat: null, noHeat });
  const model = axisModel(insect);
  if (model === null) return none('no-model');
  const series = measuredWeather(program);
  const known = weatherSourcesOf(series.keys(), program.sources);
  const informed = new Set(traps.flatMap(({ trap }) => trap.informs));
  const sources = new Set(
    program.fields.filter(({ fieldId }) => informed.has(fieldId)).flatMap((field) => weatherSourceFor(field, known) ?? []),
  );
  const [sourceId] = sources;
  if (sourceId === undefined) return none('no-weather-source');
  if (sources.size > 1) return none('several-weather-sources');
  const track = heatTrack(model.heat, series.get(sourceId)!, { maxBridgeDays: ASSUMPTIONS.maxBridgeDays.value });
  return { track, heat: { rule: model.heat, modelId: model.id, sourceId }, noHeat: null };
}

function pointsOf(
  traps: readonly TrapWithHistory[],
  season: GrowingYear,
  newest: GrowingYear,
  track: HeatTrack | null,
): YearPoint[] {
  const points = ratePoints(traps.flatMap(({ history }) => history.intervals));
  const moths = points.map(({ from, to, perNight }) => (perNight ?? 0) * (day(to) - day(from)));
  const total = moths.reduce((sum, caught) => sum + caught, 0);
  const drawn = (on: Day) => sameDayIn(yearOf(on) + newest.year - season.year, on);
  const heatBefore = (on: Day) => {
    const sum = track?.total(season.from, addDays(on, -1));
    return sum?.ok ? sum.degreeDays : null;
  };
  let before = 0;
  return points.map(({ from: first, to: last, perNight, low, high }, i): YearPoint => {
    before += moths[i]!;
    const [from, to] = [day(first), day(last)];
    const shown = { from, to, drawnFrom: drawn(from), drawnTo: drawn(to), heatFrom: heatBefore(from), heatTo: heatBefore(to) };
    return { ...shown, perNight, low, high, shareSoFar: total === 0 ? null : before / total };
  });
}
