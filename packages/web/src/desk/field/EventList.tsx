import type { ForecastView, HeatStrip as Heat, TemperatureUnit } from '@duskwatch/core';
import { daySpan, dayText, shortDate } from '../../format/day.ts';
import { heatText } from '../../format/temperature.ts';
import { spanOf } from '../../shared/flights/in-words.ts';
import { flightsWords } from '../../text/flights.ts';
import { words } from '../../text/index.ts';
import { useWording } from '../../text/wording.ts';
import { numbered } from './HeatStrip.tsx';

function when(event: Heat['events'][number]): string {
  const w = words.field.events;
  if (!event.expected) return w.unknown;
  const { early, middle, late, lateOpen, method, years } = event.expected;
  if (method === 'reached') return w.reached(dayText(middle));
  if (method === 'own-forecast') return w.ownForecast(dayText(middle));
  const basis = method === 'past-years' ? w.byYears(years) : method === 'normals' ? w.byNormals : w.byDays;
  const span = daySpan(early, late);
  return `${w.expected(dayText(middle), lateOpen ? w.orLater(span) : span)}, ${basis}`;
}

/** How the window of an event has narrowed as days passed. */
function Before({ forecast, event }: { forecast: ForecastView | null; event: Heat['events'][number] }) {
  const found = forecast?.events.find((each) => each.event === event.event && each.generation === event.generation);
  if (!found || found.before.length === 0) return null;
  const w = flightsWords.forecast;
  const said = found.before.map(({ asOf, dates }) => w.narrowed(shortDate(asOf), spanOf(dates)));
  return (
    <small className="narrowed">
      {w.narrowedTitle} {said.join('; ')}
    </small>
  );
}

/** The numbers on the heat strip, spelled out. */
export function EventList({ heat, unit, forecast }: { heat: Heat; unit: TemperatureUnit; forecast: ForecastView | null }) {
  const w = words.field.events;
  const wording = useWording();
  return (
    <ol className="events" aria-label={w.title}>
      {numbered(heat).map(({ number, event }) => (
        <li key={number} className={event.status === 'now' ? 'now' : undefined}>
          <b>{wording.event[event.event]}</b>
          {event.generation !== null && `, ${w.generation(event.generation)}`} ·{' '}
          <span className="figure">
            {heatText(event.from, heat.unit, unit)}
            {event.to !== null && ` – ${heatText(event.to, heat.unit, unit)}`}
          </span>
          <span className="when">
            {event.status === 'now' && <strong>{w.now}, </strong>}
            {when(event)}
            {event.status === 'ahead' && <Before forecast={forecast} event={event} />}
          </span>
        </li>
      ))}
    </ol>
  );
}
