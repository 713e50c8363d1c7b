import type { WeatherSourcesView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { Fragment, useState } from 'react';
import { useLengthUnit } from '../../browser/preferences.ts';
import { dayTextFrom } from '../../format/day.ts';
import { distanceText } from '../../format/length.ts';
import { HistoryButton } from '../../shared/history/HistoryButton.tsx';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { weatherWords as w } from '../../text/weather.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { Table } from '../../ui/table/Table.tsx';
import { Comparison } from './Comparison.tsx';
import { DayForm } from './DayForm.tsx';
import { FarFields } from './FarFields.tsx';
import { FetchState } from './FetchState.tsx';
import { sourcesQuery } from './queries.ts';
import { SourceForm } from './SourceForm.tsx';

const route = getRouteApi('/program/weather');

type Source = WeatherSourcesView['sources'][number];
type Form = { readonly of: 'source'; readonly sourceId: string | null } | { readonly of: 'day'; readonly sourceId: string };

/** Each source of weather with how far it reaches, what is missing of it, whom it informs, and where it is fetched. */
export function WeatherPage() {
  const { on } = route.useSearch();
  const { data, error, refetch } = useQuery(sourcesQuery(on));
  const mayWrite = useMayWrite()('sources');
  const [form, open] = useState<Form | null>(null);
  useTitle(w.title);
  if (error && !data) return <Failure error={error} again={refetch} />;
  const close = () => open(null);
  return (
    <main className="page" id="page" aria-busy={!data}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{data ? w.sub : w.loading}</p>
        </div>
        {mayWrite && (
          <p className="actions">
            <button type="button" className="button" onClick={() => open({ of: 'source', sourceId: null })}>
              {w.add}
            </button>
            <Link to="/program/data/import" className="button">
              {w.import}
            </Link>
          </p>
        )}
      </div>
      {data && <FarFields far={data.far} />}
      {data?.sources.length === 0 && <p className="quiet">{w.none}</p>}
      {data && data.sources.length > 0 && <Sources view={data} open={mayWrite ? open : null} />}
      {data && data.without.length > 0 && (
        <section className="weather-without">
          <h2>{w.without(data.without.length)}</h2>
          <p className="key">{w.withoutText}</p>
          <p>
            <FieldLinks fields={data.without} />
          </p>
        </section>
      )}
      {data && data.sources.length > 1 && <Comparison sources={data.sources} on={on} />}
      {form?.of === 'source' && <SourceForm sourceId={form.sourceId} close={close} />}
      {form?.of === 'day' && data && <DayForm sourceId={form.sourceId} on={data.on} close={close} />}
    </main>
  );
}

function Sources({ view, open }: { view: WeatherSourcesView; open: ((form: Form) => void) | null }) {
  return (
    <Table<Source>
      label={w.table}
      rows={view.sources}
      keyOf={({ sourceId }) => sourceId}
      columns={[
        {
          head: w.source,
          value: ({ sourceId }) => sourceId,
          cell: ({ sourceId, name, kind, credit }) => (
            <>
              {sourceId}
              {name && <small className="weather-told">{name}</small>}
              {kind && <small className="weather-told">{w.kinds[kind]}</small>}
              {credit && <small className="weather-told">{w.credit(credit)}</small>}
            </>
          ),
        },
        { head: w.from, value: ({ from }) => from, cell: ({ from }) => from && dayTextFrom(from, view.on) },
        {
          head: w.to,
          value: ({ to }) => to,
          cell: ({ to, daysBehind, waiting, fields }) => (
            <>
              {to && (
                <>
                  {dayTextFrom(to, view.on)} <small>{w.behind(daysBehind ?? 0)}</small>
                </>
              )}
              {waiting && fields.length > 0 && <small className="weather-told weather-waits">{w.waits}</small>}
            </>
          ),
        },
        {
          head: w.missing,
          value: ({ missing }) => missing,
          cell: ({ missing, newestGap, filled, fillFrom }) => (
            <>
              {missing} {newestGap && <small>{w.newestGap(dayTextFrom(newestGap, view.on))}</small>}
              {filled > 0 && fillFrom && <small className="weather-told">{w.filled(filled, fillFrom)}</small>}
            </>
          ),
        },
        {
          head: w.forecast,
          value: ({ forecastTo }) => forecastTo,
          cell: ({ forecastTo }) => forecastTo && dayTextFrom(forecastTo, view.on),
        },
        { head: w.fields, value: ({ fields }) => fields.length, cell: ({ fields }) => <FieldLinks fields={fields} /> },
        ...(open
          ? [
              {
                head: w.fetching.head,
                unseen: false,
                cell: ({ sourceId, service, fetching }: Source) => (
                  <FetchState sourceId={sourceId} service={service} fetching={fetching}>
                    <button
                      type="button"
                      className="row-button"
                      aria-label={w.fetching.editOf(sourceId)}
                      onClick={() => open({ of: 'source', sourceId })}
                    >
                      {w.edit}
                    </button>
                    <button
                      type="button"
                      className="row-button"
                      aria-label={w.fetching.dayOf(sourceId)}
                      onClick={() => open({ of: 'day', sourceId })}
                    >
                      {w.addDay}
                    </button>
                    {(service !== null || fetching) && <HistoryButton kind="sources" recordKey={sourceId} />}
                  </FetchState>
                ),
              },
            ]
          : []),
      ]}
    />
  );
}

function FieldLinks({ fields }: { fields: WeatherSourcesView['without'] }) {
  const [unit] = useLengthUnit();
  return (
    <span className="weather-fields">
      {fields.map(({ fieldId, name, km }, index) => (
        <Fragment key={fieldId}>
          {index > 0 && ', '}
          <Link to="/fields/$fieldId" params={{ fieldId }} title={km === null ? undefined : w.far(distanceText(km, unit))}>
            {name}
          </Link>
        </Fragment>
      ))}
    </span>
  );
}
