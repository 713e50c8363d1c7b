/** Flights and forecasts with their days as text. */
import {
  type DatedEvent,
  type Day,
  type EventForecast,
  type FieldFlights,
  type FlightMoment,
  formatDay,
  momentDates,
} from '@duskwatch/core';

/** Where a published figure is in degree-days and a date is a day, both may be called `from`: so days are written one by one. */
export function flightsJson(cells: readonly FieldFlights[]): string {
  const written = cells.map(({ flights, models, ...cell }) => ({
    ...cell,
    flights: flights && {
      ...flights,
      axisFrom: formatDay(flights.axisFrom),
      read: {
        ...flights.read,
        knownThrough: formatDay(flights.read.knownThrough),
        flights: flights.read.flights.map(({ start, peak, end, ...flight }) => ({
          ...flight,
          start: writtenMoment(start),
          peak: writtenMoment(peak),
          end: writtenMoment(end),
        })),
      },
      together: flights.together.map(({ trapId }) => trapId),
    },
    models: models.map(({ startsOn, events, ...model }) => ({
      ...model,
      startsOn: text(startsOn),
      events: events.map(writtenEvent),
    })),
  }));
  return JSON.stringify(written, null, 2);
}

const writtenMoment = ({ date, earliest, latest, ...heat }: FlightMoment) => ({
  ...heat,
  date: writtenForecast(date),
  earliest: writtenForecast(earliest),
  latest: writtenForecast(latest),
});

const writtenEvent = ({ event, begins, ends }: DatedEvent) => ({
  event,
  begins: writtenForecast(begins),
  ends: ends && writtenForecast(ends),
});

function writtenForecast(forecast: EventForecast) {
  switch (forecast.status) {
    case 'came':
    case 'in-own-forecast':
      return { ...forecast, on: text(forecast.on) };
    case 'ahead': {
      const { early, middle, late, ...window } = forecast.window;
      return {
        ...forecast,
        from: text(forecast.from),
        window: { early: text(early), middle: text(middle), late: text(late), ...window },
        cases: forecast.cases.map(text),
      };
    }
    case 'gap':
      return { ...forecast, gap: { from: text(forecast.gap.from), to: text(forecast.gap.to) } };
    case 'not-dated':
      return forecast;
  }
}

/** A forecast in a few characters: the day it came, or its 10–50–90 % dates. */
export function forecastDays(forecast: EventForecast): string {
  switch (forecast.status) {
    case 'came':
      return `came ${text(forecast.on)}`;
    case 'in-own-forecast':
      return `${text(forecast.on)} by the forecast given`;
    case 'ahead': {
      const { early, middle, late, lateOpen } = forecast.window;
      return `${text(early)} – ${text(middle)} – ${lateOpen ? 'open' : text(late)}`;
    }
    case 'gap':
      return `weather missing ${text(forecast.gap.from)} to ${text(forecast.gap.to)}`;
    case 'not-dated':
      return 'not dated';
  }
}

/** When a moment of a flight came or comes, from end to end of what is known of it. */
export function momentDays(moment: FlightMoment): string {
  const dates = momentDates(moment);
  if (dates === null) return forecastDays(moment.date);
  const { early, middle, late, lateOpen, method } = dates;
  if (early === late) return `${method === 'reached' ? 'came ' : ''}${middle}`;
  return `${early} – ${middle} – ${lateOpen ? 'open' : late}`;
}

const text = (on: Day | null): string | null => (on === null ? null : formatDay(on));
