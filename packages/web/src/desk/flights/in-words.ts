/** A row of the flights in words. */
import { day, daysBetween, type FarmFlights, type FlightView, type IsoDay } from '@duskwatch/core';
import { daySpan, shortDay } from '../../format/day.ts';
import { percentText } from '../../format/number.ts';
import { flightsWords as w } from '../../text/flights.ts';

export function eventText({ next }: FarmFlights): string {
  if (next === null) return w.nothingNext;
  const what = next.what === 'larvae' ? w.events.larvae : w.events[next.what](next.flight ?? 1);
  return `${what} ${shortDay(next.dates.middle)}`;
}

export function whenText({ next }: FarmFlights, on: IsoDay): string {
  if (next === null) return '';
  const { early, middle, late } = next.dates;
  const days = daysBetween(day(on), day(middle));
  return early === late ? w.inDays(days) : `${w.inDays(days)} (${daySpan(early, late)})`;
}

/** The flight that is running; else the next to come; else the last that is over. */
export const present = (list: readonly FlightView[]): FlightView | undefined =>
  list.find(({ status }) => status === 'running') ?? list.find(({ status }) => status === 'to-come') ?? list.at(-1);

export interface NowText {
  readonly said: string;
  readonly share: string | null;
  readonly unsure: string | null;
}

export function nowText({ list, other }: FarmFlights): NowText {
  const flight = present(list);
  const unsure = other === null ? null : w.now.unsure(list.length, other);
  if (!flight) return { said: w.none, share: null, unsure };
  const before = list.findLast(({ status, number }) => status === 'over' && number < flight.number);
  const ended = before?.end.dates?.middle;
  const overSince = before && ended ? w.now.overSince(before.number, shortDay(ended)) : null;
  if (flight.status === 'running') return { said: w.now.running(flight.number), share: shareText(flight), unsure };
  if (flight.status === 'over') {
    const end = flight.end.dates?.middle;
    return { said: w.now.over(flight.number), share: end ? w.now.overSince(flight.number, shortDay(end)) : null, unsure };
  }
  const said = before ? w.now.between(before.number, flight.number) : w.now.toCome(flight.number);
  return { said, share: overSince, unsure };
}

function shareText({ flown: { share, low, high, told } }: FlightView): string {
  if (told === 'cannot-tell') return w.now.cannotTell;
  // Of the two ends only the second bears the sign.
  const from = percentText(low).replace(/\s*%$/, '');
  const to = percentText(high);
  return told === 'share' ? w.now.flown(percentText(share), from, to) : w.now.flownBetween(from, to);
}
