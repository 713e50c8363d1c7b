/** Flights as people read them. */
import type { DatesView, FlightMomentView, FlightView, SeasonFlights, TemperatureUnit } from '@duskwatch/core';
import { daySpan, dayText } from '../../format/day.ts';
import { percentText } from '../../format/number.ts';
import { heatText } from '../../format/temperature.ts';
import { flightsWords as w } from '../../text/flights.ts';
import { words } from '../../text/index.ts';

export const spanOf = ({ early, late, lateOpen }: DatesView): string =>
  lateOpen ? words.field.events.orLater(daySpan(early, late)) : daySpan(early, late);

export const flownText = ({ share, low, high }: FlightView['flown']): string =>
  w.flown(percentText(share), percentText(low), percentText(high));

export const momentText = ({ dates }: FlightMomentView): string => {
  if (dates === null) return words.field.events.unknown;
  return dates.early === dates.late ? dayText(dates.middle) : `${dayText(dates.middle)} (${spanOf(dates)})`;
};

export function flightText(flight: FlightView): string {
  const said = (
    { dates }: FlightMomentView,
    came: (date: string) => string,
    expected: (date: string, span: string) => string,
  ): string[] => {
    if (dates === null) return [];
    return [dates.method === 'reached' ? came(dayText(dates.middle)) : expected(dayText(dates.middle), spanOf(dates))];
  };
  return [
    `${w.status[flight.status]}, ${flownText(flight.flown)}`,
    ...said(flight.peak, w.peakCame, w.peakExpected),
    ...said(flight.end, w.endCame, w.endExpected),
  ].join('; ');
}

/** How many flights, by which criterion, and how unsure. */
export function countText({ tried, unsure }: Pick<SeasonFlights, 'tried' | 'unsure'>): string {
  const [best, next] = tried;
  if (!best) return w.none;
  if (!next) return w.onlyOne(best.flights);
  const gap = (next.bic - best.bic).toFixed(1);
  return unsure ? w.unsure(best.flights, next.flights, gap) : w.sure(best.flights, next.flights, gap);
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
