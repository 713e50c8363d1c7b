import { writtenWindow } from '../advice/phenology.ts';
import { addDays, type Day, day, daysBetween, formatDay } from '../base/day.ts';
import type { FlightMoment } from '../flight/generations.ts';
import type { EventForecast } from '../forecast/event-forecast.ts';
import type { DatesView } from './flights-schema.ts';

/** A forecast as it is drawn; null where it has no date. */
export function datesView(forecast: EventForecast): DatesView | null {
  if (forecast.status === 'came') return oneDay(forecast.on, 'reached');
  if (forecast.status === 'in-own-forecast') return oneDay(forecast.on, 'own-forecast');
  return forecast.status === 'ahead' ? writtenWindow(forecast.window) : null;
}

/**
 * The dates of a moment of a flight: what is not known of its heat and what is not known of the weather to come taken
 * together, as the root of the sum of their squares in days.
 */
export function momentDates({ date, earliest, latest }: Pick<FlightMoment, 'date' | 'earliest' | 'latest'>): DatesView | null {
  const dates = datesView(date);
  if (dates === null) return null;
  const [first, last] = [datesView(earliest), datesView(latest)];
  const middle = day(dates.middle);
  const reach = (weather: string, heat: string | undefined) =>
    Math.round(Math.hypot(daysBetween(middle, day(weather)), heat === undefined ? 0 : daysBetween(middle, day(heat))));
  return {
    ...dates,
    early: formatDay(addDays(middle, -reach(dates.early, first?.middle))),
    late: formatDay(addDays(middle, reach(dates.late, last?.middle))),
    lateOpen: dates.lateOpen || last === null || last.lateOpen,
  };
}

const oneDay = (on: Day, method: DatesView['method']): DatesView => {
  const date = formatDay(on);
  return { early: date, middle: date, late: date, lateOpen: false, method, years: 0 };
};
