/** One trap as the table of stations shows it. */
import { checkDue, lureEnds } from '../advice/due.ts';
import { historyOf, type Prepared } from '../advice/prepare.ts';
import { type Day, day, dayOf, daysBetween, formatDay, yearOf } from '../base/day.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { CheckRecord, TrapRecord } from '../records/schema.ts';
import { skipOf } from './skipped.ts';
import { standingSkip } from './standing-skip.ts';
import type { StationTrap, TrapSeasonSummary, TrapState, TrapVisit } from './traps-schema.ts';
import { insectName } from './week.ts';

export function stationTrap(prepared: Prepared, trap: TrapRecord): StationTrap {
  const { trapId, insect, design, hungOn, takenDownOn, latitude, longitude } = trap;
  const state = stateOf(prepared, trap);
  const { intervals } = historyOf(prepared, trap);
  const newest = intervals.findLast((interval) => interval.count !== null);
  const visits = visitsOf(prepared, trapId);
  return {
    trapId,
    insect: insectName(insect),
    design,
    state,
    hungOn,
    takenDownOn,
    latitude,
    longitude,
    informs: trap.informs
      .map((id) => prepared.fields.get(id))
      .filter((field) => field !== undefined)
      .map(({ fieldId, name, farm }) => ({ fieldId, name, farm })),
    check: state === 'hanging' ? checkState(prepared, trap) : null,
    lure: lureState(prepared, trap),
    lastVisit: visits.at(-1) ?? null,
    skipped: standingSkip(skipOf(prepared, trapId), visits.at(-1)?.on ?? null),
    newest: newest
      ? { from: formatDay(newest.from), to: formatDay(newest.to), nights: newest.nights, perNight: nightly(newest) }
      : null,
    seasons: seasonsOf(prepared, trap, visits),
  };
}

function stateOf({ on }: Prepared, { hungOn, takenDownOn }: TrapRecord): TrapState {
  if (day(hungOn) > on) return 'planned';
  return takenDownOn !== null && day(takenDownOn) <= on ? 'taken-down' : 'hanging';
}

export const trapVisit = ({ checkedOn, targetCount, otherCount, unfitReason, photo, ...check }: CheckRecord): TrapVisit => ({
  on: checkedOn,
  visit: check.visit,
  count: targetCount,
  others: otherCount,
  condition: check.condition,
  emptied: check.emptied,
  unfitReason: unfitReason ?? null,
  note: check.note,
  photo: photo ?? null,
});

/** The check that a visit was told from. */
export const checkOfVisit = (trapId: string, { on, count, others, ...visit }: TrapVisit): CheckRecord => ({
  trapId,
  checkedOn: on,
  targetCount: count,
  otherCount: others,
  ...visit,
});

/** Visits to a trap as known on the day, oldest first. */
export function visitsOf(prepared: Prepared, trapId: string): TrapVisit[] {
  const today = formatDay(prepared.on);
  return (prepared.checksByTrap.get(trapId) ?? [])
    .filter((check) => check.checkedOn <= today)
    .map(trapVisit)
    .sort((a, b) => (a.on === b.on ? a.visit - b.visit : a.on < b.on ? -1 : 1));
}

function checkState(prepared: Prepared, trap: TrapRecord): StationTrap['check'] {
  const due = checkDue(prepared, trap);
  const daysLate = Math.max(0, daysBetween(due, prepared.on));
  const unfit = historyOf(prepared, trap).intervals.at(-1)?.noInformation === 'unfit';
  const state = unfit ? 'unfit' : due > prepared.on ? 'not-due' : due === prepared.on ? 'due' : 'overdue';
  return { due: formatDay(due), state, daysLate };
}

function lureState(prepared: Prepared, trap: TrapRecord): StationTrap['lure'] {
  const today = formatDay(prepared.on);
  const newest = (prepared.luresByTrap.get(trap.trapId) ?? [])
    .filter((lure) => lure.placedOn <= today)
    .sort((a, b) => (a.placedOn < b.placedOn ? 1 : -1))[0];
  if (!newest) return null;
  const ends = lureEnds(prepared, trap)?.ends ?? null;
  return {
    placedOn: newest.placedOn,
    lifeDays: newest.lifeDays,
    ageDays: daysBetween(day(newest.placedOn), prepared.on),
    ends: ends && formatDay(ends),
    spent: ends === null ? null : ends < prepared.on,
  };
}

const nightly = (interval: CatchInterval): number => interval.count! / interval.nights;

function seasonsOf(prepared: Prepared, trap: TrapRecord, visits: readonly TrapVisit[]): TrapSeasonSummary[] {
  const begins = seasonBeginning(prepared, trap);
  const { intervals } = historyOf(prepared, trap);
  const starts = [...new Set(visits.map(({ on }) => begins(day(on))))].sort((a, b) => b - a);
  return starts.map((start): TrapSeasonSummary => {
    const own = visits.filter(({ on }) => begins(day(on)) === start);
    const told = intervals.filter((interval) => interval.count !== null && begins(interval.to) === start);
    const peak = told.reduce<CatchInterval | null>((best, next) => (best && nightly(best) >= nightly(next) ? best : next), null);
    return {
      from: formatDay(start),
      firstVisit: own[0]!.on,
      lastVisit: own.at(-1)!.on,
      visits: own.length,
      unfitVisits: own.filter(({ condition }) => condition === 'unfit').length,
      count: told.reduce((sum, interval) => sum + interval.count!, 0),
      nights: told.reduce((sum, interval) => sum + interval.nights, 0),
      peak: peak && { on: formatDay(peak.to), perNight: nightly(peak) },
    };
  });
}

/** The first day of the growing year that holds a day, where the trap stands. */
export function seasonBeginning(prepared: Prepared, trap: TrapRecord): (on: Day) => Day {
  const field = trap.informs.map((id) => prepared.fields.get(id)).find((found) => found !== undefined);
  const latitude = trap.latitude ?? field?.latitude ?? null;
  if (latitude === null || latitude >= 0) return (on) => dayOf(yearOf(on), 1, 1);
  return (on) => (on >= dayOf(yearOf(on), 7, 1) ? dayOf(yearOf(on), 7, 1) : dayOf(yearOf(on) - 1, 7, 1));
}
