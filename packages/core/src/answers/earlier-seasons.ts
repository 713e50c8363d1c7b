/** What the traps of a field caught in earlier years, laid over this one by the calendar. */
import { cellKey, growingYearStart, historyOf, type Prepared } from '../advice/prepare.ts';
import type { RatePoint } from '../advice/rate-points.ts';
import { ratePoints } from '../advice/rate-points.ts';
import { visitDispersion } from '../advice/visit-dispersion.ts';
import { type Day, day, dayOf, formatDay, partsOf, yearOf } from '../base/day.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { FieldRecord, TrapDesign } from '../records/schema.ts';
import type { EarlierSeason } from './field-schema.ts';

/** Seasons further back than this say little that the nearer ones do not. */
const SEASONS_BACK = 5;

interface Group {
  readonly design: TrapDesign;
  readonly stations: Set<string>;
  readonly intervals: CatchInterval[];
}

/**
 * One entry per earlier season and trap design with anything counted, newest season first: designs are never pooled,
 * and neither are years. Days are moved forward by whole years, so that 12 July of 2023 lies on 12 July. The stations
 * are named because a trap that stood elsewhere saw another place.
 */
export function earlierSeasons(prepared: Prepared, field: FieldRecord, insect: string): EarlierSeason[] {
  const traps = prepared.trapsByCell.get(cellKey(field.fieldId, insect)) ?? [];
  const start = growingYearStart(field, prepared.on);
  const seasons: EarlierSeason[] = [];
  for (let back = 1; back <= SEASONS_BACK; back++) {
    const [from, to] = [yearsLater(start, -back), yearsLater(start, 1 - back)];
    const groups = new Map<TrapDesign, Group>();
    for (const trap of traps) {
      if (day(trap.hungOn) >= to || (trap.takenDownOn !== null && day(trap.takenDownOn) < from)) continue;
      const intervals = historyOf(prepared, trap).intervals.filter((interval) => from < interval.to && interval.to <= to);
      if (intervals.length === 0) continue;
      const group = groups.get(trap.design) ?? { design: trap.design, stations: new Set(), intervals: [] };
      group.stations.add(trap.station);
      group.intervals.push(...intervals);
      groups.set(trap.design, group);
    }
    for (const { design, stations, intervals } of groups.values()) {
      const points = ratePoints(intervals, visitDispersion(prepared, insect, design)).flatMap((point) => moved(point, back));
      if (points.every((point) => point.perNight === null)) continue;
      seasons.push({ year: yearOf(from), design, stations: [...stations].sort(), points });
    }
  }
  return seasons;
}

/** The same date in another year; 29 February becomes 1 March where there is none. */
export function yearsLater(on: Day, years: number): Day {
  const { year, month, date } = partsOf(on);
  return dayOf(year + years, month, date);
}

/** Nothing for the night that a year without 29 February does not have. */
function moved(point: RatePoint, years: number): RatePoint[] {
  const [from, to] = [yearsLater(day(point.from), years), yearsLater(day(point.to), years)];
  return from < to ? [{ ...point, from: formatDay(from), to: formatDay(to) }] : [];
}
