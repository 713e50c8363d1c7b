import { type FlightRow, insectById } from '@duskwatch/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { countText } from '../../format/number.ts';
import { flownShort, momentText } from '../../shared/flights/in-words.ts';
import { flightsQuery } from '../../shared/flights/queries.ts';
import { flightsWords as w } from '../../text/flights.ts';
import { localName } from '../../text/names.ts';
import { DateControl } from '../../ui/DateControl.tsx';
import { Failure } from '../../ui/Failure.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { useTitle } from '../../ui/media.ts';
import { Table } from '../../ui/table/Table.tsx';

const route = getRouteApi('/flights');

/** Where each insect is in its flight across the network, growing row by row while the server fits. */
export function FlightsPage() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { data, error, refetch, hasNextPage, isFetching, fetchNextPage } = useInfiniteQuery(flightsQuery(search.on));
  const [insect, choose] = useState('');
  useTitle(w.title);
  useEffect(() => {
    if (hasNextPage && !isFetching && !error) void fetchNextPage();
  }, [hasNextPage, isFetching, error, fetchNextPage]);
  if (error && !data) return <Failure error={error} again={refetch} />;
  const rows = data?.pages.flatMap((page) => page.rows) ?? [];
  const of = data?.pages.at(-1)?.of ?? 0;
  const insects = [...new Set(rows.map((row) => row.insect))];
  const shown = rows.filter((row) => insect === '' || row.insect === insect);
  const on = data?.pages[0]?.on;
  return (
    <main className="page flights-page" id="page" aria-busy={hasNextPage || !data}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{w.sub}</p>
        </div>
        {on && (
          <DateControl
            on={search.on ?? on}
            pinned={search.on !== undefined}
            choose={(day) => navigate({ search: { on: day }, resetScroll: false })}
          />
        )}
      </div>
      {data && of > 0 && (
        <p className="fit-progress" role="status">
          {hasNextPage ? w.progress(rows.length, of) : w.ready(of)}
          {hasNextPage && <progress value={rows.length} max={of} aria-label={w.progress(rows.length, of)} />}
        </p>
      )}
      {insects.length > 1 && (
        <div className="filters fit-filter">
          <SelectField
            label={w.insect}
            value={insect}
            all={w.allInsects}
            choices={insects.map((id) => [id, nameOf(id)])}
            choose={choose}
          />
        </div>
      )}
      {!data && <div className="skeleton skeleton-field" aria-hidden="true" />}
      {data && of === 0 && (
        <section className="quiet">
          <h2>{w.empty.title}</h2>
          <p>{w.empty.text}</p>
          <p>
            <Link to="/fields">{w.empty.link}</Link>
          </p>
        </section>
      )}
      {shown.length > 0 && <Rows rows={shown} day={search.on} />}
    </main>
  );
}

const nameOf = (id: string) => {
  const known = insectById(id);
  return known ? localName(known.commonName) : id;
};

/** The flight that is running; else the next to come, else the last that is over. */
const present = ({ list }: FlightRow) =>
  list.find(({ status }) => status === 'running') ?? list.find(({ status }) => status === 'to-come') ?? list.at(-1);

function Flown({ flown }: Pick<FlightRow['list'][number], 'flown'>) {
  const { said, span } = flownShort(flown);
  return (
    <>
      {said}
      {span && <small>{span}</small>}
    </>
  );
}

function Rows({ rows, day }: { rows: readonly FlightRow[]; day: string | undefined }) {
  const c = w.columns;
  return (
    <Table
      label={w.title}
      className="flight-rows"
      height="page"
      rows={rows.map((row) => ({ ...row, flight: present(row) }))}
      keyOf={({ fieldId, insect }) => `${fieldId}|${insect}`}
      columns={[
        {
          head: c.field,
          value: ({ field }) => field,
          cell: ({ fieldId, field, farm, insect }) => (
            <>
              <Link to="/fields/$fieldId" params={{ fieldId }} search={{ on: day }} hash={insect}>
                {field}
              </Link>
              <small>{farm}</small>
            </>
          ),
          names: true,
        },
        { head: c.insect, value: ({ insect }) => nameOf(insect) },
        {
          head: c.flight,
          value: ({ flight, noFlights }) =>
            flight ? `${w.numbered(flight.number)}, ${w.status[flight.status]}` : noFlights ? w.why[noFlights] : w.none,
          className: ({ flight }) => (flight ? undefined : 'why-none'),
        },
        {
          head: c.flown,
          value: ({ flight }) => flight?.flown.share ?? null,
          cell: ({ flight }) => (flight ? <Flown flown={flight.flown} /> : '–'),
          number: true,
        },
        {
          head: c.peak,
          value: ({ flight }) => flight?.peak.dates?.middle ?? null,
          cell: ({ flight }) => (flight ? momentText(flight.peak) : '–'),
        },
        {
          head: c.end,
          value: ({ flight }) => flight?.end.dates?.middle ?? null,
          cell: ({ flight }) => (flight ? momentText(flight.end) : '–'),
        },
        {
          head: c.count,
          value: ({ list, noFlights }) => (noFlights ? null : list.length),
          cell: ({ list, noFlights, unsure }) => (noFlights ? '–' : `${list.length}${unsure ? `, ${w.unsureShort}` : ''}`),
          number: true,
        },
        { head: c.moths, value: ({ moths }) => moths, cell: ({ moths }) => countText(moths), number: true },
      ]}
    />
  );
}
