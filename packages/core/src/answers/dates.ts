import { writtenWindow } from '../advice/phenology.ts';
import { type Day, formatDay } from '../base/day.ts';
import type { EventForecast } from '../forecast/event-forecast.ts';
import type { DatesView } from './flights-schema.ts';

/** A forecast as it is drawn; null where it has no date. */
export function datesView(forecast: EventForecast): DatesView | null {
  if (forecast.status === 'came') return oneDay(forecast.on, 'reached');
  if (forecast.status === 'in-own-forecast') return oneDay(forecast.on, 'own-forecast');
  return forecast.status === 'ahead' ? writtenWindow(forecast.window) : null;
}

const oneDay = (on: Day, method: DatesView['method']): DatesView => {
  const date = formatDay(on);
  return { early: date, middle: date, late: date, lateOpen: false, method, years: 0 };
};
