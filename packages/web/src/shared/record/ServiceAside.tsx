import { WEATHER_SERVICES, weatherServices } from '@duskwatch/core';
import { weatherWords } from '../../text/weather.ts';

const w = weatherWords.aside;

/** What a weather service gives, learns and asks for, before a coordinator switches it on. */
export function ServiceAside({ service: written }: { service: string | undefined }) {
  const service = WEATHER_SERVICES.find((each) => each === written);
  if (service === undefined) return null;
  const { gives, terms, credit, hoursBetween } = weatherServices[service];
  if (service === 'folder') return null;
  return (
    <section className="practices">
      <h3>{w.title}</h3>
      {terms !== null && <p>{w.gives[gives]}</p>}
      <p>{w.learns}</p>
      {gives.startsWith('measured') && <p>{w.observer}</p>}
      {credit !== null && <p>{weatherWords.credit(credit)}</p>}
      <p>
        {terms !== null && (
          <>
            <a href={terms} target="_blank" rel="noreferrer">
              {w.terms}
            </a>
            .{' '}
          </>
        )}
        {w.confirm} {w.hours(hoursBetween)}
      </p>
    </section>
  );
}
