/** The axis on which a lag between catch and sample is told: days, or the heat that an insect of the catalogue counts by. */
import { addDays, type Day, day } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import type { PhenologyModel } from '../catalogue/types.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatTrack } from '../heat/types.ts';
import type { Program } from '../records/program.ts';
import { weatherSourceFor, weatherSourcesOf } from '../records/weather-source.ts';
import { measuredWeather } from '../weather/filled.ts';
import { catchAtLag, type InfestationPair } from './infestation-fit.ts';
import type { SampledPair } from './infestation-pairs-of.ts';
import { axisModel } from './year-against-year.ts';

export interface LagAxis {
  /** The model by whose heat time is counted, in its unit; null: lags are days. */
  readonly model: Pick<PhenologyModel, 'id' | 'heat'> | null;
  /** Each catch with how long before the sample it was, on this axis. */
  readonly pairs: readonly AxisPair[];
  readonly lags: readonly number[];
  readonly window: number;
}

interface AxisPair extends SampledPair {
  readonly catches: readonly (InfestationPair['catches'][number] & { readonly daysBefore: number })[];
}

/** Lags tried, in days, each with the catches of the nights within half the window about it. Own choice. */
const DAYS = { lags: [3, 6, 9, 12, 15, 18, 21, 24, 27, 30, 33], window: 6 };

/** Fewer lags in heat than this show no peak, and days are kept. Own choice. */
const FEWEST_LAGS = 4;

/** A lag in heat is tried where a catch is known for so many of the samples that days could use. Own choice. */
const KNOWN_AT_LAG = 0.9;

/**
 * The heat of the insect's model where weather tells it for nearly all samples, else days. Lags in heat lie as far
 * apart as those in days do in the mean of the samples, up to the longest that cool seasons also reach.
 */
export function lagAxis(program: Program, insect: string, pairs: readonly SampledPair[], { on }: { readonly on: Day }): LagAxis {
  const model = axisModel(insect);
  return (model && inHeat(model, pairs, heatTracks(program, model, on))) ?? inDays(pairs);
}

const inDays = (pairs: readonly SampledPair[]): LagAxis => ({
  model: null,
  pairs: pairs.map((pair) => ({ ...pair, catches: pair.catches.map((each) => ({ ...each, daysBefore: each.before })) })),
  ...DAYS,
});

/**
 * @param heatAt the heat at a field
 * @return null where too few samples know heat and catch far enough back
 */
export function inHeat(
  model: Pick<PhenologyModel, 'id' | 'heat'>,
  pairs: readonly SampledPair[],
  heatAt: (field: string) => HeatTrack | null,
): LagAxis | null {
  const counted = pairs.map((pair): AxisPair => {
    const track = heatAt(pair.field);
    const sampledOn = day(pair.sampledOn);
    const catches = pair.catches.flatMap(({ before, perNight }) => {
      const heat = track?.total(addDays(sampledOn, -before), addDays(sampledOn, -1));
      return heat?.ok ? [{ before: heat.degreeDays, perNight, daysBefore: before }] : [];
    });
    return { ...pair, catches };
  });
  const perDay = mean(
    counted.flatMap(({ catches }) => {
      const far = catches.at(-1);
      return far ? [far.before / far.daysBefore] : [];
    }),
  );
  if (!(perDay > 0)) return null;
  const window = DAYS.window * perDay;
  const usable = pairs.filter((pair) => DAYS.lags.every((lag) => catchAtLag(pair, lag, DAYS.window) !== null)).length;
  const isKnown = (lag: number) =>
    counted.filter((pair) => catchAtLag(pair, lag, window) !== null).length >= Math.max(1, KNOWN_AT_LAG * usable);
  const tried = DAYS.lags.map((lag) => lag * perDay);
  const unknown = tried.findIndex((lag) => !isKnown(lag));
  const lags = unknown < 0 ? tried : tried.slice(0, unknown);
  return lags.length < FEWEST_LAGS ? null : { model, pairs: counted, lags, window };
}

/** How many days a lag was before the samples, in their mean; null where no catch is near it. */
export function daysAtLag({ pairs, window }: Pick<LagAxis, 'pairs' | 'window'>, lag: number): number | null {
  const days = pairs.flatMap(({ catches }) => {
    const near = catches.filter(({ before }) => Math.abs(before - lag) <= window / 2);
    return near.length === 0 ? [] : [mean(near.map(({ daysBefore }) => daysBefore))];
  });
  return days.length === 0 ? null : mean(days);
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

function heatTracks(
  { fields, weather, sources: about }: Program,
  { heat }: PhenologyModel,
  on: Day,
): (field: string) => HeatTrack | null {
  const series = measuredWeather({ weather: weather.filter(({ date }) => day(date) <= on), sources: about });
  const sources = weatherSourcesOf(series.keys(), about);
  const tracks = new Map(
    [...series].map(([id, own]) => [id, heatTrack(heat, own, { maxBridgeDays: ASSUMPTIONS.maxBridgeDays.value })]),
  );
  const sourceOf = new Map(fields.map((field) => [field.fieldId, weatherSourceFor(field, sources)]));
  return (field) => tracks.get(sourceOf.get(field) ?? '') ?? null;
}
