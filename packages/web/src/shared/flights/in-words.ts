/** Flights as people read them. */
import type { DatesView, FlightMomentView, FlightView, SeasonFlights, TemperatureUnit } from '@duskwatch/core';
import { daySpan, dayText } from '../../format/day.ts';
import { percentText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import { flightsWords as w } from '../../text/flights.ts';
import { words } from '../../text/index.ts';

export const spanOf = ({ early, late, lateOpen }: DatesView): string =>
  lateOpen ? words.field.events.orLater(daySpan(early, late)) : daySpan(early, late);

export function flownText({ share, low, high, told }: FlightView['flown']): string {
  if (told === 'cannot-tell') return w.cannotTell;
  return told === 'between'
    ? w.between(percentText(low), percentText(high))
    : w.flown(percentText(share), percentText(low), percentText(high));
}

export const momentText = ({ dates }: FlightMomentView): string => {
  if (dates === null) return words.field.events.unknown;
  return dates.early === dates.late ? dayText(dates.middle) : `${dayText(dates.middle)} (${spanOf(dates)})`;
};

export function flightText(flight: FlightView): string {
  const said = (moment: FlightMomentView, came: (date: string) => string, expected: (date: string) => string): string[] => {
    if (moment.dates === null) return [];
    return [(moment.dates.method === 'reached' ? came : expected)(momentText(moment))];
  };
  return [
    `${w.status[flight.status]}, ${flownText(flight.flown)}`,
    ...said(flight.peak, w.peakCame, w.peakExpected),
    ...said(flight.end, w.endCame, w.endExpected),
  ].join('; ');
}

/** How many flights, in plain words. */
export function countText({ tried, unsure }: Pick<SeasonFlights, 'tried' | 'unsure'>): string {
  const [best, next] = tried;
  if (!best || best.flights === 0) return w.none;
  return unsure && next ? w.countUnsure(best.flights, next.flights) : w.count(best.flights);
}

/** By which criterion that number was chosen, and how narrowly. */
export function chosenText({ tried, unsure }: Pick<SeasonFlights, 'tried' | 'unsure'>): string {
  const [best, next] = tried;
  if (!best) return w.none;
  if (!next) return w.onlyOne(best.flights);
  return (unsure ? w.unsure : w.sure)(best.flights, next.flights, (next.bic - best.bic).toFixed(1));
}

export function agreementText(
  { flight, compared, published, difference, verdict, why }: SeasonFlights['agreement'][number],
  modelUnit: TemperatureUnit,
  unit: TemperatureUnit,
): string {
  const heat = (value: number) => heatText(value, modelUnit, unit);
  if (flight === null) return w.agreement.absent(heat(published));
  const what = compared === 'peak' ? w.agreement.peak(flight) : w.agreement.start(flight);
  if (verdict === 'cannot tell')
    return why === 'number-of-flights-unsure'
      ? w.agreement.unsure(what, heat(published))
      : w.agreement.uncertain(what, heat(published));
  if (verdict === 'agrees') return w.agreement.agrees(what, heat(published));
  return w.agreement[verdict](what, heat(published), heat(Math.abs(difference ?? 0)));
}
