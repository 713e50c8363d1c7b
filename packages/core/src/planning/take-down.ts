import type { Prepared } from '../advice/prepare.ts';
import { addDays, type Day, day, dayOf, formatDay, type IsoDay, partsOf, yearOf } from '../base/day.ts';
import type { FieldRecord } from '../records/schema.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import type { PlannedTakeDown } from './plan-types.ts';

/**
 * When traps come down: the user's day; the latest harvest of the fields they inform; the harvest, or the taking down, of
 * an earlier season on the same date; a stated number of days after hanging.
 */
export function takeDownOf(
  prepared: Prepared,
  area: readonly FieldRecord[],
  insect: string,
  season: number,
  stated: IsoDay | null,
  hangOn: IsoDay | null,
): PlannedTakeDown {
  if (stated !== null) return { on: stated, why: 'stated' };
  const year = growingYear(area, season);
  const harvests = area.flatMap(({ harvestOn }) => (harvestOn === null ? [] : [day(harvestOn)]));
  const coming = harvests.filter((on) => on >= year.from && on < year.to);
  if (coming.length > 0) return { on: formatDay(latest(coming)), why: 'harvest' };
  const carried = (days: readonly Day[]) => formatDay(latest(days.map((on) => carriedInto(year, on))));
  if (harvests.length > 0) return { on: carried(harvests), why: 'harvest-as-before' };
  const taken = [...prepared.traps.values()]
    .filter((trap) => trap.insect === insect && area.some(({ fieldId }) => trap.informs.includes(fieldId)))
    .flatMap(({ takenDownOn }) => (takenDownOn === null || takenDownOn > formatDay(prepared.on) ? [] : [day(takenDownOn)]));
  if (taken.length > 0) return { on: carried(taken), why: 'as-before' };
  if (hangOn === null) return { on: null, why: 'not-known' };
  return { on: formatDay(addDays(day(hangOn), SEASON_ASSUMPTIONS.seasonDays.value)), why: 'assumed' };
}

interface GrowingYear {
  readonly from: Day;
  /** The first day of the next. */
  readonly to: Day;
}

function growingYear(area: readonly FieldRecord[], season: number): GrowingYear {
  const south = (area.find(({ latitude }) => latitude !== null)?.latitude ?? 0) < 0;
  const month = south ? 7 : 1;
  return { from: dayOf(season, month, 1), to: dayOf(season + 1, month, 1) };
}

/** The same date within a growing year; 29 February becomes 1 March in years without one. */
function carriedInto({ from, to }: GrowingYear, on: Day): Day {
  const { month, date } = partsOf(on);
  const year = yearOf(from);
  const first = dayOf(year, month, date);
  const carried = first < from ? dayOf(year + 1, month, date) : first;
  return carried < to ? carried : addDays(to, -1);
}

const latest = (days: readonly Day[]): Day => Math.max(...days) as Day;
