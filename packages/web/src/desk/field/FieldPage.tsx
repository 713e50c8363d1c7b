import { day, daysBetween, type FieldFlightsView, type FieldInsectView, type FieldView } from '@duskwatch/core';
import { type UseQueryResult, useQuery } from '@tanstack/react-query';
import { getRouteApi, Navigate, useLocation } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { ApiError } from '../../api/client.ts';
import { fieldQuery } from '../../api/queries.ts';
import { useTemperatureUnit } from '../../browser/preferences.ts';
import { dayTextFrom } from '../../format/day.ts';
import { VERBS } from '../../shared/advice/verbs.ts';
import { fieldFlightsQuery } from '../../shared/flights/queries.ts';
import { useDesk } from '../../shared/record/desk.ts';
import { fieldLater } from '../../shared/record/later.ts';
import { fieldPageWords } from '../../text/field-page.ts';
import { flightsWords } from '../../text/flights.ts';
import { words } from '../../text/index.ts';
import { cropText, stageName } from '../../text/names.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { ForecastForm } from './ForecastForm.tsx';
import { InsectSeason } from './InsectSeason.tsx';
import { InsectTabs } from './InsectTabs.tsx';
import { NormalsForm } from './NormalsForm.tsx';
import { RecordMenu } from './RecordMenu.tsx';
import { SeasonLog } from './SeasonLog.tsx';
import { Walk } from './Walk.tsx';

const route = getRouteApi('/fields/$fieldId');

/** A field: its verdicts, insect by insect, each with its season and what it rests on. */
export function FieldPage() {
  const { fieldId } = route.useParams();
  const search = route.useSearch();
  const { data, error, refetch, isPlaceholderData } = useQuery(fieldQuery(fieldId, search.on));
  const flights = useQuery(fieldFlightsQuery(fieldId, search.on));
  const { entries } = useDesk();
  const view = useMemo(() => (data ? fieldLater(data, entries) : undefined), [data, entries]);
  const insects = useMemo(() => [...(view?.insects ?? [])].sort((a, b) => urgency(a).localeCompare(urgency(b))), [view]);
  const asked = useLocation({ select: ({ hash }) => decodeURIComponent(hash) });
  const insect = insects.find((each) => each.insect.id === asked) ?? insects[0] ?? null;
  const [typing, type] = useState<'forecast' | 'normals' | null>(null);
  const [unit] = useTemperatureUnit();
  useTitle(view?.field.name ?? words.loading);

  // The map stood here once; a field of this name comes first.
  if (fieldId === 'map' && error instanceof ApiError && error.status === 404) return <MovedMap />;
  if (error && !view) return <Failure error={error} again={refetch} />;
  const source = flights.data?.weatherSource ?? null;
  return (
    <main className="page field-page" id="page" aria-busy={!view || isPlaceholderData}>
      <Walk fieldId={fieldId} insect={insect?.insect.id ?? null} on={search.on} />
      <div className="page-head">
        <div>
          <h1>{view?.field.name ?? fieldId}</h1>
          <p className="sub">{view ? describe(view) : words.loading}</p>
        </div>
        {view && <RecordMenu view={view} insect={insect} typeWeather={source === null ? null : type} typing={typing !== null} />}
      </div>
      {typing === 'forecast' && view && source && (
        <ForecastForm source={source} on={view.on} unit={unit} close={() => type(null)} />
      )}
      {typing === 'normals' && source && <NormalsForm source={source} unit={unit} close={() => type(null)} />}
      {view && insect ? (
        <InsectTabs fieldId={fieldId} insects={insects} at={insect.insect.id} on={search.on}>
          <Season key={fieldId} view={view} insect={insect} flights={flights} past={search.on !== undefined} />
        </InsectTabs>
      ) : (
        !view && <div className="skeleton skeleton-field" aria-hidden="true" />
      )}
      {view && <SeasonLog view={view} />}
    </main>
  );
}

/** With all that its address says, which a field's page does not read. */
const MovedMap = () => <Navigate to="/map" search={Object.fromEntries(new URLSearchParams(window.location.search))} replace />;

/** Farm and crop, the stage and how old it is, planting and harvest. */
function describe({ field, stages, on }: FieldView): string {
  const seen = [...stages]
    .filter(({ observedOn }) => observedOn <= on)
    .sort((a, b) => a.observedOn.localeCompare(b.observedOn))
    .at(-1);
  const until = (date: string) => daysBetween(day(on), day(date));
  const text = (date: string) => dayTextFrom(date, on);
  return [
    field.farm,
    cropText(field),
    seen
      ? fieldPageWords.seen(stageName(field.crop, seen.stage), text(seen.observedOn), -until(seen.observedOn))
      : words.week.stageUnknown,
    field.plantedOn ? words.field.planted(text(field.plantedOn)) : words.field.notPlanted,
    ...(field.harvestOn
      ? [
          until(field.harvestOn) > 0
            ? fieldPageWords.harvestIn(text(field.harvestOn), until(field.harvestOn))
            : fieldPageWords.harvestPast(text(field.harvestOn)),
        ]
      : []),
  ].join(' · ');
}

const urgency = ({ advice }: FieldInsectView) => `${VERBS.indexOf(advice.verb)}|${advice.dueSince ?? advice.by ?? '9999'}`;

type Flights = Pick<UseQueryResult<FieldFlightsView>, 'data' | 'error' | 'refetch'>;

function Season(props: { view: FieldView; insect: FieldInsectView; flights: Flights; past: boolean }) {
  const { view, insect, flights, past } = props;
  const [unit] = useTemperatureUnit();
  const today = day(view.on);
  const [chosen, moveTo] = useState<number | null>(null);
  // Without a choice the cursor rests on the day the page is read on, and follows it.
  const cursor = Math.min(Math.max(chosen ?? today, day(view.from)), day(view.to));
  return (
    <>
      <InsectSeason
        view={view}
        insect={insect}
        flights={flights.data?.insects.find((each) => each.insect === insect.insect.id) ?? null}
        today={today}
        cursor={cursor}
        moveTo={moveTo}
        unit={unit}
        past={past}
      />
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
    </>
  );
}
