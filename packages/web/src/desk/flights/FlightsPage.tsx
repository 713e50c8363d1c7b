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
import { useTitle } from '../../ui/media.ts';

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
        <label className="fit-filter">
          {w.insect}{' '}
          <select value={insect} onChange={({ target }) => choose(target.value)}>
            <option value="">{w.allInsects}</option>
            {insects.map((id) => (
              <option key={id} value={id}>
                {nameOf(id)}
              </option>
            ))}
          </select>
        </label>
      )}
      {!data && <div className="skeleton skeleton-field" aria-hidden="true" />}
      {data && of === 0 && (
        <section className="quiet">
          <h2>{w.empty.title}</h2>
          <p>{w.empty.text}</p>
          <p>
            <Link to="/traps">{w.empty.link}</Link>
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
    <td className="number">
      {said}
      {span && <small>{span}</small>}
    </td>
  );
}

function Rows({ rows, day }: { rows: readonly FlightRow[]; day: string | undefined }) {
  const c = w.columns;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="flight-scroll" aria-label={w.title} tabIndex={0}>
      <table className="figures flight-rows">
        <thead>
          <tr>
            <th scope="col">{c.field}</th>
            <th scope="col">{c.insect}</th>
            <th scope="col">{c.flight}</th>
            <th scope="col" className="number">
              {c.flown}
            </th>
            <th scope="col">{c.peak}</th>
            <th scope="col">{c.end}</th>
            <th scope="col" className="number">
              {c.count}
            </th>
            <th scope="col" className="number">
              {c.moths}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const flight = present(row);
            return (
              <tr key={`${row.fieldId}|${row.insect}`}>
                <th scope="row">
                  <Link to="/fields/$fieldId" params={{ fieldId: row.fieldId }} search={{ on: day }} hash={row.insect}>
                    {row.field}
                  </Link>
                  <small>{row.farm}</small>
                </th>
                <td>{nameOf(row.insect)}</td>
                {flight ? (
                  <>
                    <td>
                      {w.numbered(flight.number)}, {w.status[flight.status]}
                    </td>
                    <Flown flown={flight.flown} />
                    <td>{momentText(flight.peak)}</td>
                    <td>{momentText(flight.end)}</td>
                  </>
                ) : (
                  <td colSpan={4}>{row.noFlights ? w.why[row.noFlights] : w.none}</td>
                )}
                <td className="number">{row.noFlights ? '–' : `${row.list.length}${row.unsure ? `, ${w.unsureShort}` : ''}`}</td>
                <td className="number">{countText(row.moths)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
