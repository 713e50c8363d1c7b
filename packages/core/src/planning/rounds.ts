/** Who drives where on which day. */
import { type Day, day, daysBetween } from '../base/day.ts';
import { SEASON_ASSUMPTIONS } from './assumptions.ts';
import { type Shift, shorterOrder, timeRound, withBound } from './round-timing.ts';
import type { DueStation, PlannedRound, Rounds, RoundsRequest } from './round-types.ts';
import { type Travel, travelBy } from './travel.ts';

const LATE_DAY_MINUTES = SEASON_ASSUMPTIONS.lateDayMinutes.value;
const EARLY_DAY_MINUTES = SEASON_ASSUMPTIONS.earlyDayMinutes.value;
const OPENING_MINUTES = SEASON_ASSUMPTIONS.openingMinutes.value;
const PASSES = 5;

/**
 * Due stations shared out among scouts and days, and each round put in a short order.
 *
 * Stations are put one by one, the most pressing first, where they cost the fewest minutes, then taken out and put back
 * where that is better; every round is then ordered anew if windows and hours allow. A station goes onto a day off its
 * due day only where that saves the driving that a day weighs. Nothing is put on a day on which a re-entry interval keeps
 * people off.
 */
export function planRounds({ stations, scouts, days, travel: table = null, kmPerHour, roadFactor }: RoundsRequest): Rounds {
  const travel = travelBy(table, { ...(kmPerHour && { kmPerHour }), ...(roadFactor && { roadFactor }) });
  const shifts: Shift[] = [...new Set(days)]
    .sort()
    .flatMap((date) =>
      scouts
        .filter((scout) => scout.days === undefined || scout.days.includes(date))
        .map((scout) => ({ scout, on: day(date), day: date })),
    );
  const rounds = new Map<Shift, readonly DueStation[]>(shifts.map((shift) => [shift, []]));
  const homeless: DueStation[] = [];
  for (const station of [...stations].sort(byPressure)) if (!place(rounds, station, travel)) homeless.push(station);
  for (let pass = 0; pass < PASSES && replaceAll(rounds, travel); pass++);
  for (const station of homeless.splice(0)) if (!place(rounds, station, travel)) homeless.push(station);

  const planned = shifts.flatMap((shift): PlannedRound[] => {
    const stops = shorterOrder(shift, rounds.get(shift)!, travel);
    const round = stops.length === 0 ? null : timeRound(shift, stops, travel);
    return round === null ? [] : [withBound(shift, round, stops, travel)];
  });
  const unserved = homeless.map((station) => ({ station: station.id, why: whyUnserved(station, shifts) }));
  return { rounds: planned, unserved };
}

function byPressure(a: DueStation, b: DueStation): number {
  const closes = (station: DueStation) => station.window?.toMinute ?? Infinity;
  const [first, second] = [closes(a), closes(b)];
  if (a.due !== b.due) return a.due < b.due ? -1 : 1;
  return first !== second ? first - second : a.id < b.id ? -1 : 1;
}

const mayEnter = ({ keepOutUntil = null }: DueStation, { day: date }: Shift): boolean =>
  keepOutUntil === null || date > keepOutUntil;

type ShiftStops = Map<Shift, readonly DueStation[]>;

interface Placing {
  readonly shift: Shift;
  readonly stops: readonly DueStation[];
  readonly price: number;
}

/** Puts a station where it costs least; false when it fits nowhere. */
function place(rounds: ShiftStops, station: DueStation, travel: Travel): boolean {
  let best: Placing | null = null;
  for (const [shift, stops] of rounds) {
    if (!mayEnter(station, shift)) continue;
    const before = timeRound(shift, stops, travel)?.minutes ?? 0;
    for (let at = 0; at <= stops.length; at++) {
      const tried = stops.toSpliced(at, 0, station);
      const round = timeRound(shift, tried, travel);
      if (round === null) continue;
      const price = round.minutes - before + dayPrice(station, shift.on) + (stops.length === 0 ? OPENING_MINUTES : 0);
      if (best === null || price < best.price - 1e-9) best = { shift, stops: tried, price };
    }
  }
  if (best === null) return false;
  rounds.set(best.shift, shorterOrder(best.shift, best.stops, travel));
  return true;
}

function dayPrice({ due }: DueStation, on: Day): number {
  const late = daysBetween(day(due), on);
  return late > 0 ? late * LATE_DAY_MINUTES : -late * EARLY_DAY_MINUTES;
}

/** Takes every station out once and puts it back; true when the whole plan became cheaper. */
function replaceAll(rounds: ShiftStops, travel: Travel): boolean {
  let better = false;
  for (const station of [...rounds.values()].flat()) {
    const before = new Map(rounds);
    const price = priceOfAll(rounds, travel);
    const shift = [...rounds.keys()].find((one) => rounds.get(one)!.includes(station))!;
    rounds.set(
      shift,
      rounds.get(shift)!.filter((one) => one !== station),
    );
    if (place(rounds, station, travel) && priceOfAll(rounds, travel) < price - 1e-9) better = true;
    else for (const [one, stops] of before) rounds.set(one, stops);
  }
  return better;
}

function priceOfAll(rounds: ShiftStops, travel: Travel): number {
  let price = 0;
  for (const [shift, stops] of rounds) {
    if (stops.length > 0) price += OPENING_MINUTES + (timeRound(shift, stops, travel)?.minutes ?? 0);
    for (const station of stops) price += dayPrice(station, shift.on);
  }
  return price;
}

function whyUnserved(station: DueStation, shifts: readonly Shift[]): Rounds['unserved'][number]['why'] {
  if (shifts.length === 0) return 'no-scout';
  return shifts.some((shift) => mayEnter(station, shift)) ? 'no-time' : 'keep-out';
}
