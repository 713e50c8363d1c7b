/** A stage that somebody saw, carried forward to a later day. */
import { addDays, type Day, day, daysBetween } from '../base/day.ts';
import { type CropCalendar, cropById, cropCalendar, stageOrder } from '../catalogue/index.ts';
import type { FieldRecord } from '../records/schema.ts';

/** Stages that a crop may be at, from the earliest to the latest, as places in its order. */
export interface CarriedStage {
  readonly from: number;
  readonly to: number;
  /** First day on which a later stage may have begun: the fastest crop, seen at the end of its stage. */
  readonly mayHaveBegun: (place: number) => Day;
}

/** Typed dates of planting and harvest may be off by this share of the time between them. Own figure. */
const TYPED_DATES_OFF = 0.1;
/** The end of the last stage, as a share of the time to the first harvest: picking goes on. */
const LAST_ENDS = 1.3;
const ROUNDING = 1e-9;

/**
 * Where the crop may stand on `on`, by the calendar: the stage seen takes a crop as far as its beginning at least and its
 * end at most, and from then on it grows between the slowest and the fastest that planting and harvest allow. A planting
 * date narrows that further. Null for crops without a calendar, and for stages they do not know.
 */
export function carriedStage(
  field: FieldRecord,
  seen: { readonly stage: string; readonly on: Day },
  on: Day,
): CarriedStage | null {
  const calendar = cropCalendar(field.crop);
  const at = stageOrder(field.crop, seen.stage);
  if (!calendar || at === null || at < 0) return null;
  const { begins } = calendar;
  const end = (place: number) => begins[place + 1] ?? LAST_ENDS;
  const [fast, slow] = daysToHarvest(field, calendar);
  const since = daysBetween(seen.on, on);
  if (since === 0) return { from: at, to: at, mayHaveBegun: () => addDays(on, 1) };
  const planted = field.plantedOn === null ? null : day(field.plantedOn);
  let low = begins[at]! + since / slow;
  let high = end(at) + since / fast;
  if (planted !== null && planted < on) {
    const fromPlanting = [daysBetween(planted, on) / slow, daysBetween(planted, on) / fast] as const;
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
      const bySeen = addDays(seen.on, Math.max(1, Math.ceil((begins[place]! - end(at)) * fast)));
      const byPlanting = planted === null ? bySeen : addDays(planted, Math.ceil(begins[place]! * fast));
      return Math.min(on, Math.max(bySeen, byPlanting)) as Day;
    },
  };
}

function daysToHarvest({ plantedOn, harvestOn }: FieldRecord, { days }: CropCalendar): readonly [fast: number, slow: number] {
  if (plantedOn === null || harvestOn === null || harvestOn <= plantedOn) return days;
  const typed = daysBetween(day(plantedOn), day(harvestOn));
  return [typed * (1 - TYPED_DATES_OFF), typed * (1 + TYPED_DATES_OFF)];
}
