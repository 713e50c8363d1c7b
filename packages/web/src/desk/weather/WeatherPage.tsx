import type { WeatherSourcesView } from '@duskwatch/core';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { Fragment } from 'react';
import { getJson } from '../../api/client.ts';
import { dayTextFrom } from '../../format/day.ts';
import { programWords } from '../../text/program.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { Table } from '../../ui/table/Table.tsx';

const route = getRouteApi('/program/weather');

const sourcesQuery = (on: string | undefined) =>
  queryOptions({
    queryKey: ['weather-sources', on ?? null],
    queryFn: ({ signal }) => getJson<WeatherSourcesView>(`/api/weather-sources${on ? `?on=${on}` : ''}`, signal),
  });

/** Each source of weather with how far it reaches, what is missing of it, and whom it informs. */
export function WeatherPage() {
  const w = programWords.weather;
  const { on } = route.useSearch();
  const { data, error, refetch } = useQuery(sourcesQuery(on));
  useTitle(w.title);
  if (error && !data) return <Failure error={error} again={refetch} />;
  return (
    <main className="page" id="page" aria-busy={!data}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{data ? w.sub : w.loading}</p>
        </div>
      </div>
      {data?.sources.length === 0 && <p className="quiet">{w.none}</p>}
      {data && data.sources.length > 0 && (
        <Table
          label={w.table}
          rows={data.sources}
          keyOf={({ sourceId }) => sourceId}
          columns={[
            { head: w.source, value: ({ sourceId }) => sourceId },
            { head: w.from, value: ({ from }) => from, cell: ({ from }) => from && dayTextFrom(from, data.on) },
            {
              head: w.to,
              value: ({ to }) => to,
              cell: ({ to, daysBehind }) =>
                to && (
                  <>
                    {dayTextFrom(to, data.on)} <small>{w.behind(daysBehind ?? 0)}</small>
                  </>
                ),
            },
            {
              head: w.missing,
              value: ({ missing }) => missing,
              cell: ({ missing, newestGap }) => (
                <>
                  {missing} {newestGap && <small>{w.newestGap(dayTextFrom(newestGap, data.on))}</small>}
                </>
              ),
            },
            {
              head: w.forecast,
              value: ({ forecastTo }) => forecastTo,
              cell: ({ forecastTo }) => forecastTo && dayTextFrom(forecastTo, data.on),
            },
            { head: w.fields, value: ({ fields }) => fields.length, cell: ({ fields }) => <FieldLinks fields={fields} /> },
          ]}
        />
      )}
      {data && data.without.length > 0 && (
        <section className="weather-without">
          <h2>{w.without(data.without.length)}</h2>
          <p className="key">{w.withoutText}</p>
          <p>
            <FieldLinks fields={data.without} />
          </p>
        </section>
      )}
    </main>
  );
}

const FieldLinks = ({ fields }: { fields: WeatherSourcesView['without'] }) => (
  <span className="weather-fields">
    {fields.map(({ fieldId, name }, index) => (
      <Fragment key={fieldId}>
        {index > 0 && ', '}
        <Link to="/fields/$fieldId" params={{ fieldId }}>
          {name}
        </Link>
      </Fragment>
    ))}
  </span>
);
