import { cellReason, day, type FieldFlightsView, type FieldInsectView, type FieldView } from '@duskwatch/core';
import { type UseQueryResult, useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useEffect, useMemo, useState } from 'react';
import { fieldQuery } from '../../api/queries.ts';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { dayTextFrom } from '../../format/day.ts';
import { VERBS } from '../../shared/advice/verbs.ts';
import { fieldFlightsQuery } from '../../shared/flights/queries.ts';
import { useDesk } from '../../shared/record/desk.ts';
import { fieldLater } from '../../shared/record/later.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { flightsWords } from '../../text/flights.ts';
import { words } from '../../text/index.ts';
import { cropText, localName, shortReason, stageName } from '../../text/names.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { FieldRecords } from './FieldRecords.tsx';
import { ForecastForm } from './ForecastForm.tsx';
import { InsectSeason } from './InsectSeason.tsx';
import { Legend } from './Legend.tsx';
import { stageOn } from './reading.ts';

const route = getRouteApi('/fields/$fieldId');

/** A field's season on one time axis, insect under insect. */
export function FieldPage() {
  const { fieldId } = route.useParams();
  const search = route.useSearch();
  const { data, error, refetch, isPlaceholderData } = useQuery(fieldQuery(fieldId, search.on));
  const flights = useQuery(fieldFlightsQuery(fieldId, search.on));
  const { entries } = useDesk();
  const view = useMemo(() => (data ? fieldLater(data, entries) : undefined), [data, entries]);
  useTitle(view?.field.name ?? words.loading);
  useEffect(() => {
    // The router looked for the insect before its season had arrived.
    if (data && location.hash) document.getElementById(decodeURIComponent(location.hash.slice(1)))?.scrollIntoView();
  }, [data]);

  if (error && !view) return <Failure error={error} again={refetch} />;
  return (
    <main className="page field-page" id="page" aria-busy={!view || isPlaceholderData}>
      <p className="back">
        <Link to="/" search={{ on: search.on }}>
          ‹ {words.field.back}
        </Link>
      </p>
      <div className="page-head">
        <div>
          <h1>{view?.field.name ?? fieldId}</h1>
          <p className="sub">{view ? describe(view) : words.loading}</p>
        </div>
      </div>
      {view && <FieldRecords view={view} />}
      {view && <OwnForecast source={flights.data?.weatherSource} on={view.on} />}
      {view ? (
        <Seasons view={view} flights={flights} key={view.field.fieldId} />
      ) : (
        <div className="skeleton skeleton-field" aria-hidden="true" />
      )}
    </main>
  );
}

function describe(view: FieldView): string {
  const { field, on } = view;
  const stage = stageOn(view, on);
  return [
    field.farm,
    cropText(field),
    stage ? stageName(field.crop, stage) : words.week.stageUnknown,
    field.plantedOn ? words.field.planted(dayTextFrom(field.plantedOn, on)) : words.field.notPlanted,
    ...(field.harvestOn ? [words.field.harvest(dayTextFrom(field.harvestOn, on))] : []),
  ].join(' · ');
}

/** Nothing was ever recorded and nothing is asked: the pair is named in a line, not drawn. */
const isAway = (insect: FieldInsectView) =>
  insect.advice.verb === 'none' && insect.lines.length === 0 && insect.samples.length === 0 && insect.treatments.length === 0;

const urgency = (insect: FieldInsectView) => `${VERBS.indexOf(insect.advice.verb)}|${insect.advice.by ?? '9999'}`;

/** Somebody's own weather forecast, where there is a source it can be for; `source` undefined: not known yet. */
function OwnForecast({ source, on }: { source: string | null | undefined; on: string }) {
  const [unit] = useTemperatureUnit();
  const [open, show] = useState(false);
  const mayWrite = useMayWrite();
  if (source === null || !mayWrite('weather')) return null;
  return (
    <p className="actions own-forecast">
      <button type="button" className="button" disabled={!source} onClick={() => show(true)}>
        {flightsWords.forecast.enter}
      </button>
      {open && source && <ForecastForm source={source} on={on} unit={unit} close={() => show(false)} />}
    </p>
  );
}

type Flights = Pick<UseQueryResult<FieldFlightsView>, 'data' | 'error' | 'refetch'>;

function Seasons({ view, flights }: { view: FieldView; flights: Flights }) {
  const [unit] = useTemperatureUnit();
  const today = day(view.on);
  const [chosen, moveTo] = useState<number | null>(null);
  // Without a choice the cursor rests on the day the page is read on, and follows it.
  const cursor = Math.min(Math.max(chosen ?? today, day(view.from)), day(view.to));
  const here = view.insects.filter((insect) => !isAway(insect)).sort((a, b) => urgency(a).localeCompare(urgency(b)));
  const away = view.insects.filter(isAway);
  return (
    <>
      <Legend />
      <p className="fitting" role="status">
        {!flights.data && !flights.error && flightsWords.fitting}
        {flights.error && (
          <>
            {flightsWords.failed}{' '}
            <button type="button" className="plain-button" onClick={() => void flights.refetch()}>
              {flightsWords.again}
            </button>
          </>
        )}
      </p>
      {here.map((insect) => (
        <InsectSeason
          key={insect.insect.id}
          view={view}
          insect={insect}
          flights={flights.data?.insects.find((each) => each.insect === insect.insect.id) ?? null}
          today={today}
          cursor={cursor}
          moveTo={moveTo}
          unit={unit}
        />
      ))}
      {away.length > 0 && (
        <section className="away">
          <h2>{words.field.outOfSeason}</h2>
          <ul>
            {away.map(({ insect, advice }) => (
              <li key={insect.id}>
                {localName(insect.commonName)}: {shortReason(cellReason(advice))}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
