/** A stage that somebody saw, carried forward to a later day. */
import { addDays, type Day, day, daysBetween } from '../base/day.ts';
import { type CropCalendar, type CropHeat, cropById, cropCalendar, stageOrder } from '../catalogue/index.ts';
import { pastYears, sameDayIn } from '../heat/index.ts';
import type { HeatTrack } from '../heat/types.ts';
import type { FieldRecord } from '../records/schema.ts';

/** Stages that a crop may be at, from the earliest to the latest, as places in its order. */
export interface CarriedStage {
  readonly from: number;
  readonly to: number;
  /** First day on which a later stage may have begun: the fastest crop, seen at the end of its stage. */
  readonly mayHaveBegun: (place: number) => Day;
  /** What it was carried by; null: the calendar. */
  readonly heat: CarriedByHeat | null;
}

export interface CarriedByHeat {
  /** Degree-days since the stage was seen, in the unit of `crop.heat`, as far as weather is known. */
  readonly degreeDays: number;
  /** From planting to harvest: of the fastest planting thought possible here, and of the slowest. */
  readonly sums: readonly [fast: number, slow: number];
  /** Sums from the dates typed for the field in past years of its weather, rather than of the catalogue. */
  readonly ofField: boolean;
  readonly crop: CropHeat;
}

/** The heat of a crop at the weather source of its field. */
export interface CropHeatTrack {
  readonly crop: CropHeat;
  readonly track: HeatTrack;
}

/** Typed dates of planting and harvest may be off by this share of the time between them. Own figure. */
const TYPED_DATES_OFF = 0.1;
/** The end of the last stage, as a share of the time to the first harvest: picking goes on. */
const LAST_ENDS = 1.3;
/** Weather comes in a few days late: so many are bounded by the coldest and the hottest day there can be. Own figure. */
const LATE_DAYS = 3;
/** Past years that make a sum of the field's own. */
const YEARS_OF_SUM = 2;
const ROUNDING = 1e-9;

/** What a crop grows by: days, or heat. */
interface Clock {
  /** From planting to the first harvest: of the fastest planting and of the slowest. */
  readonly sums: readonly [fast: number, slow: number];
  readonly begins: readonly number[];
  /** The least and the most that has passed after one day up to the end of another; null where that is not known. */
  readonly passed: (from: Day, to: Day) => readonly [least: number, most: number] | null;
  /** First day by whose end so much may have passed after `from`. */
  readonly reaching: (from: Day, amount: number) => Day;
  readonly heat: CarriedByHeat | null;
}

/**
 * Where the crop may stand on `on`: the stage seen takes a crop as far as its beginning at least and its end at most, and
 * from then on it grows between the slowest and the fastest planting. A planting date narrows that further. By heat where
 * the crop has sums and the weather since the stage was seen is known, else by the calendar. Null for crops without either,
 * and for stages they do not know.
 */
export function carriedStage(
  field: FieldRecord,
  seen: { readonly stage: string; readonly on: Day },
  on: Day,
  heat: CropHeatTrack | null = null,
): CarriedStage | null {
  const at = stageOrder(field.crop, seen.stage);
  if (at === null || at < 0) return null;
  const clock = (heat && heatClock(field, heat, seen.on, on)) ?? calendarClock(field);
  if (clock === null) return null;
  if (seen.on === on) return { from: at, to: at, mayHaveBegun: () => addDays(on, 1), heat: clock.heat };
  const { begins } = clock;
  const end = (place: number) => begins[place + 1] ?? LAST_ENDS;
  const [fast, slow] = clock.sums;
  const [least, most] = clock.passed(seen.on, on)!;
  const planted = field.plantedOn === null ? null : day(field.plantedOn);
  let low = begins[at]! + least / slow;
  let high = end(at) + most / fast;
  const sincePlanting = planted !== null && planted < on ? clock.passed(planted, on) : null;
  if (sincePlanting) {
    const fromPlanting = [sincePlanting[0] / slow, sincePlanting[1] / fast] as const;
    // A stage seen goes before a date of planting that does not fit it.
    if (fromPlanting[0] < high && fromPlanting[1] > low) {
      low = Math.max(low, fromPlanting[0]);
      high = Math.min(high, fromPlanting[1]);
    }
  }
  const possible = begins
    .map((_, place) => place)
    .filter((place) => place >= at && begins[place]! < high - ROUNDING && end(place) > low);
  const last = cropById(field.crop)!.stages.length - 1;
  return {
    from: possible[0] ?? last,
    to: possible.at(-1) ?? last,
    mayHaveBegun: (place) => {
      const bySeen = Math.max(addDays(seen.on, 1), clock.reaching(seen.on, (begins[place]! - end(at)) * fast));
      const byPlanting = sincePlanting ? clock.reaching(planted!, begins[place]! * fast) : bySeen;
      return Math.min(on, Math.max(bySeen, byPlanting)) as Day;
    },
    heat: clock.heat,
  };
}

function calendarClock(field: FieldRecord): Clock | null {
  const calendar = cropCalendar(field.crop);
  return (
    calendar && {
      sums: daysToHarvest(field, calendar),
      begins: calendar.begins,
      passed: (from, to) => [daysBetween(from, to), daysBetween(from, to)],
      reaching: (from, amount) => addDays(from, Math.ceil(amount)),
      heat: null,
    }
  );
}

function daysToHarvest({ plantedOn, harvestOn }: FieldRecord, { days }: CropCalendar): readonly [fast: number, slow: number] {
  if (plantedOn === null || harvestOn === null || harvestOn <= plantedOn) return days;
  const typed = daysBetween(day(plantedOn), day(harvestOn));
  return [typed * (1 - TYPED_DATES_OFF), typed * (1 + TYPED_DATES_OFF)];
}

/** Null where the heat since the stage was seen is not known. */
function heatClock(field: FieldRecord, { crop, track }: CropHeatTrack, seenOn: Day, on: Day): Clock | null {
  const hottest = crop.heat.upper! - crop.heat.lower;
  const passed: Clock['passed'] = (from, to) => {
    const known = Math.min(to, track.end ?? Number.NEGATIVE_INFINITY) as Day;
    const late = to - Math.max(known, from);
    if (late > LATE_DAYS) return null;
    const total = track.total(addDays(from, 1), known);
    return total.ok ? [total.degreeDays, total.degreeDays + late * hottest] : null;
  };
  const since = passed(seenOn, on);
  if (since === null) return null;
  const own = sumsOfField(field, track);
  const sums = own ?? crop.sums;
  return {
    sums,
    begins: crop.begins,
    passed,
    reaching: (from, amount) => track.dayReaching(addDays(from, 1), amount) ?? on,
    heat: { degreeDays: since[0], sums, ofField: own !== null, crop },
  };
}

/**
 * What past years of the field's weather brought between the dates typed for it: who writes a harvest date knows the
 * variety, and thinks of a usual year. Null with fewer than two years.
 */
function sumsOfField({ plantedOn, harvestOn }: FieldRecord, track: HeatTrack): readonly [fast: number, slow: number] | null {
  if (plantedOn === null || harvestOn === null || harvestOn <= plantedOn) return null;
  const [planted, days] = [day(plantedOn), daysBetween(day(plantedOn), day(harvestOn))];
  const totals = pastYears(track, planted).flatMap((year) => {
    const from = sameDayIn(year, planted);
    const total = track.total(addDays(from, 1), addDays(from, days));
    return total.ok && total.degreeDays > 0 ? [total.degreeDays] : [];
  });
  if (totals.length < YEARS_OF_SUM) return null;
  return [Math.min(...totals) * (1 - TYPED_DATES_OFF), Math.max(...totals) * (1 + TYPED_DATES_OFF)];
}
