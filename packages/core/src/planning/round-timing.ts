/** One scout's day: when each stop is reached, and whether windows and hours hold. */
import { type Day, day, daysBetween } from '../base/day.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import { type Matrix, shortPath } from './path-search.ts';
import type { DueStation, PlannedRound, RoundScout, TimedStop } from './round-types.ts';
import type { Stop } from './route.ts';
import { lowerBound } from './route-bound.ts';
import type { Travel } from './travel.ts';

export interface Shift {
  readonly scout: RoundScout;
  readonly on: Day;
  readonly day: string;
}

const homeOf = ({ id, home }: RoundScout): Stop | null => (home === null ? null : { id, ...home });

const workMinutes = ({ minutes, traps }: DueStation): number =>
  minutes ?? SEASON_ASSUMPTIONS.stopMinutes.value + traps * SEASON_ASSUMPTIONS.trapMinutes.value;

/** The round past `stops` in this order; null when a window closes or the hours run out. */
export function timeRound({ scout, on, day: date }: Shift, stops: readonly DueStation[], travel: Travel): PlannedRound | null {
  const home = homeOf(scout);
  let at: Stop | null = home;
  let clock = scout.startMinute;
  let driveMinutes = 0;
  let km: number | null = 0;
  const timed: TimedStop[] = [];
  const drive = (to: Stop): number | null => {
    const leg = at === null ? 0 : travel.minutes(at, to);
    const way = at === null ? 0 : travel.km(at, to);
    km = km === null || way === null ? null : km + way;
    driveMinutes += leg ?? 0;
    clock += leg ?? 0;
    return leg;
  };
  for (const stop of stops) {
    const lost = drive(stop) === null || (at === null && isLost(stop));
    if (lost) km = null;
    const arrives = clock;
    const begins = Math.max(arrives, stop.window?.fromMinute ?? 0);
    if (begins > (stop.window?.toMinute ?? Infinity)) return null;
    clock = begins + workMinutes(stop);
    const daysLate = Math.max(0, daysBetween(day(stop.due), on));
    timed.push({ station: stop.id, arrives, begins, leaves: clock, daysLate, placeUnknown: lost });
    if (!lost) at = stop;
  }
  if (home !== null && stops.length > 0) drive(home);
  const minutes = clock - scout.startMinute;
  if (minutes > scout.capacityHours * 60) return null;
  return { scout: scout.id, day: date, stops: timed, driveMinutes, boundMinutes: 0, km, minutes };
}

const isLost = ({ latitude, longitude }: Stop): boolean => latitude === null || longitude === null;

/**
 * The same stops in an order no longer than this, where windows and hours allow it; those that no way is known to come
 * last unless that takes longer.
 */
export function shorterOrder(shift: Shift, stops: readonly DueStation[], travel: Travel): readonly DueStation[] {
  const { placed, lost } = waysKnown(shift, stops, travel);
  const { cost, options, first } = roundMatrix(shift, placed, travel);
  const order = shortPath(cost, options).filter((point) => point >= first);
  const tried = [...order.map((point) => placed[point - first]!), ...lost];
  const [now, then] = [timeRound(shift, stops, travel), timeRound(shift, tried, travel)];
  return then !== null && (now === null || then.minutes <= now.minutes + 1e-9) ? tried : stops;
}

/** The round with its bound. */
export function withBound(shift: Shift, round: PlannedRound, stops: readonly DueStation[], travel: Travel): PlannedRound {
  const { placed } = waysKnown(shift, stops, travel);
  const { cost, options } = roundMatrix(shift, placed, travel);
  return { ...round, boundMinutes: lowerBound(cost, options, [...cost.keys()]) };
}

function waysKnown({ scout }: Shift, stops: readonly DueStation[], travel: Travel) {
  const points: (Stop | null)[] = [homeOf(scout), ...stops];
  const isKnown = (stop: DueStation): boolean =>
    !isLost(stop) || points.some((from) => from !== null && from.id !== stop.id && travel.minutes(from, stop) !== null);
  return { placed: stops.filter(isKnown), lost: stops.filter((stop) => !isKnown(stop)) };
}

/** Minutes between the stops, the scout's home before them when there is one; `first` is the index of the first stop. */
function roundMatrix({ scout }: Shift, placed: readonly DueStation[], travel: Travel) {
  const home = homeOf(scout);
  const points: Stop[] = home === null ? [...placed] : [home, ...placed];
  const cost: Matrix = points.map((from) => points.map((to) => travel.minutes(from, to) ?? 0));
  const options = { start: home === null ? null : 0, returns: home !== null };
  return { cost, options, first: home === null ? 0 : 1 };
}
