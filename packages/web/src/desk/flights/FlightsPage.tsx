import { type FarmFlights, insectById } from '@duskwatch/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useEffect } from 'react';
import { countText } from '../../format/number.ts';
import { VerbMark } from '../../shared/advice/VerbMark.tsx';
import { VERBS } from '../../shared/advice/verbs.ts';
import { flightsQuery } from '../../shared/flights/queries.ts';
import { flightsWords as w } from '../../text/flights.ts';
import { localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { useWidth } from '../../ui/chart/useWidth.ts';
import { Failure } from '../../ui/Failure.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { useOnPaper, useTitle, useWide } from '../../ui/media.ts';
import { Table } from '../../ui/table/Table.tsx';
import { calendarAxis, type FlightAxis, heatAxis } from './axis.ts';
import { AxisHead, FlightPicture, KeyMark } from './FlightRow.tsx';
import { eventText, nowText, present, whenText } from './in-words.ts';
import type { FlightsSearch } from './search.ts';

const route = getRouteApi('/flights');

/** What the words of a row take up beside its picture; on a narrow page the picture stands below them. */
const WORDS_WIDE = 760;
const NARROW = 900;

/** Where each insect is in its flight, farm by farm, in the order of what happens next; growing while the server fits. */
export function FlightsPage() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { data, error, refetch, hasNextPage, isFetching, fetchNextPage } = useInfiniteQuery(flightsQuery(search.on));
  const [ref, width] = useWidth<HTMLDivElement>();
  const wide = useWide();
  const paper = useOnPaper();
  useTitle(w.title);
  useEffect(() => {
    if (hasNextPage && !isFetching && !error) void fetchNextPage();
  }, [hasNextPage, isFetching, error, fetchNextPage]);
  if (error && !data) return <Failure error={error} again={refetch} />;
  const rows = data?.pages.flatMap((page) => page.rows) ?? [];
  const of = data?.pages.at(-1)?.of ?? 0;
  const on = data?.pages[0]?.on;
  const change = (next: Partial<FlightsSearch>) =>
    void navigate({ search: (before) => ({ ...before, ...next }), replace: true, resetScroll: false });
  const insects = [...new Set(rows.map((row) => row.insect))];
  const farms = [...new Set(rows.map((row) => row.farm))].sort();
  const shown = rows.filter(
    ({ insect, farm }) => (!search.insect || insect === search.insect) && (!search.farm || farm === search.farm),
  );
  const flying = shown.filter(({ list }) => list.length > 0).sort(byNext);
  const without = shown.filter(({ list }) => list.length === 0);
  const drawn = width >= NARROW ? Math.max(260, width - WORDS_WIDE) : Math.max(260, width - 4);
  // The axes of insects differ in their rules: farms are lined up by the heat of one.
  const heat = search.axis === 'heat' && (search.insect !== undefined || insects.length === 1);
  const axis = on && width > 0 ? (heat ? heatAxis : calendarAxis)(flying, on, drawn) : null;
  // On a phone the week comes first and the rest behind it; with nothing in the week, all stands.
  const week = on ? flying.filter(({ next }) => next && next.dates.middle <= inAWeek(on)).length : 0;
  const soon = flying.slice(0, wide || paper || week === 0 ? flying.length : week);
  const later = flying.slice(soon.length);
  return (
    <main className="page flights-page" id="page" aria-busy={hasNextPage || !data}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{data && !hasNextPage && of > 0 ? w.sub(week) : ' '}</p>
        </div>
        <div className="filters">
          {insects.length > 1 && (
            <SelectField
              label={w.insect}
              value={search.insect ?? ''}
              all={w.allInsects}
              choices={insects.map((id) => [id, nameOf(id)])}
              choose={(insect) => change({ insect: insect || undefined })}
            />
          )}
          {farms.length > 1 && (
            <SelectField
              label={w.farm}
              value={search.farm ?? ''}
              all={w.allFarms}
              choices={farms.map((farm) => [farm, farm])}
              choose={(farm) => change({ farm: farm || undefined })}
            />
          )}
          <fieldset className="choice-of-two">
            <legend className="unseen">{w.axis.label}</legend>
            <button type="button" aria-pressed={search.axis !== 'heat'} onClick={() => change({ axis: undefined })}>
              {w.axis.calendar}
            </button>
            <button type="button" aria-pressed={search.axis === 'heat'} onClick={() => change({ axis: 'heat' })}>
              {w.axis.heat}
            </button>
          </fieldset>
        </div>
      </div>
      {search.axis === 'heat' && !heat && <p role="status">{w.axis.needsInsect}</p>}
      {data && of > 0 && (
        <p className={hasNextPage ? 'fit-progress' : 'unseen'} role="status">
          {hasNextPage ? w.progress(rows.length, of) : w.ready(of)}
          {hasNextPage && <progress value={rows.length} max={of} aria-label={w.progress(rows.length, of)} />}
        </p>
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
      <div ref={ref}>
        {on && axis && flying.length > 0 && (
          <>
            <Rows rows={soon} axis={axis} on={on} day={search.on} />
            {later.length > 0 && (
              <Folded title={w.later(later.length)} open={paper}>
                <Rows rows={later} axis={axis} on={on} day={search.on} />
              </Folded>
            )}
            <Key />
          </>
        )}
      </div>
      {without.length > 0 && <Without rows={without} day={search.on} />}
    </main>
  );
}

const inAWeek = (on: string) => new Date(Date.parse(on) + 7 * 86_400_000).toISOString().slice(0, 10);
const byNext = (a: FarmFlights, b: FarmFlights) =>
  (a.next?.dates.middle ?? '9').localeCompare(b.next?.dates.middle ?? '9') || a.farm.localeCompare(b.farm);

const nameOf = (id: string) => {
  const known = insectById(id);
  return known ? localName(known.commonName) : id;
};

const mothsText = (moths: number) => w.moths(countText(moths), moths === 1);

function Rows(props: { rows: readonly FarmFlights[]; axis: FlightAxis; on: string; day: string | undefined }) {
  const { rows, axis, on, day } = props;
  const c = w.columns;
  const wording = useWording();
  return (
    <Table
      label={w.title}
      className="flight-rows"
      rows={rows}
      keyOf={({ farm, insect }) => `${farm}|${insect}`}
      columns={[
        {
          head: c.next,
          value: ({ next }) => next?.dates.middle ?? null,
          said: eventText,
          cell: (row) => (
            <>
              <b className="event">{eventText(row)}</b>
              <small>{whenText(row, on)}</small>
            </>
          ),
        },
        {
          head: c.insect,
          value: ({ insect, farm }) => `${nameOf(insect)} ${farm}`,
          cell: ({ insect, farm, traps, moths }) => (
            <>
              <span className="insect-name">{nameOf(insect)}</span>
              <small>{w.caught(farm, traps, mothsText(moths))}</small>
            </>
          ),
          names: true,
        },
        {
          head: c.season,
          value: ({ list }) => present(list)?.peak.dates?.middle ?? null,
          below: <AxisHead axis={axis} today={axis.kind === 'calendar' && rows[0] ? axis.today(rows[0]) : null} />,
          cell: (row) => <FlightPicture row={row} axis={axis} />,
          className: 'season',
        },
        {
          head: c.flight,
          value: ({ list }) => present(list)?.flown.share ?? null,
          said: (row) => Object.values(nowText(row)).filter(Boolean).join('; '),
          cell: (row) => {
            const { said, share, unsure } = nowText(row);
            return (
              <>
                {said}
                {share && <small>{share}</small>}
                {unsure && <small>{unsure}</small>}
              </>
            );
          },
        },
        {
          head: c.fields,
          value: ({ fields }) => VERBS.indexOf(fields[0]?.verb ?? 'none'),
          said: ({ fields }) => fields.map(({ name, verb }) => `${name}: ${wording.verb[verb]}`).join(', '),
          cell: (row) => <Fields row={row} day={day} />,
        },
      ]}
    />
  );
}

function Fields({ row: { fields, insect }, day }: { row: FarmFlights; day: string | undefined }) {
  const wording = useWording();
  return (
    <ul className="flight-fields">
      {fields.map(({ fieldId, name, verb }) => (
        <li key={fieldId}>
          <VerbMark verb={verb} />
          <Link to="/fields/$fieldId" params={{ fieldId }} search={{ on: day }} hash={insect}>
            {name}
          </Link>
          <span className="unseen">{verb === 'none' ? '' : wording.verb[verb]}</span>
        </li>
      ))}
    </ul>
  );
}

function Key() {
  return (
    <ul className="legend flight-key">
      {(['caught', 'expected', 'peak', 'end', 'eggs', 'larvae'] as const).map((of) => (
        <li key={of}>
          <KeyMark of={of} /> {w.key[of]}
        </li>
      ))}
      <li>{w.key.note}</li>
    </ul>
  );
}

/** Insects on farms with a trap but no flight, folded to a line an insect and reason. */
function Without({ rows, day }: { rows: readonly FarmFlights[]; day: string | undefined }) {
  const c = w.without.columns;
  const whyOf = ({ noFlights }: FarmFlights) => (noFlights ? w.why[noFlights] : w.none);
  const groups = new Map<string, FarmFlights[]>();
  for (const row of rows) {
    const key = `${row.insect}|${whyOf(row)}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return (
    <section className="without-flight">
      <h2>{w.without.title}</h2>
      {[...groups].map(([key, members]) => {
        const title = w.without.count(nameOf(members[0]!.insect), members.length);
        return (
          <Folded
            key={key}
            title={
              <>
                <b className="insect-name">{title}</b> <span>{whyOf(members[0]!)}</span>{' '}
                <span className="faint">
                  {members.map(({ farm, moths }) => w.without.farm(farm, countText(moths))).join(', ')}
                </span>
              </>
            }
          >
            <Table
              label={title}
              rows={members}
              keyOf={({ farm }) => farm}
              columns={[
                { head: c.farm, value: ({ farm }) => farm, names: true },
                { head: c.traps, value: ({ traps }) => traps, number: true },
                { head: c.moths, value: ({ moths }) => moths, cell: ({ moths }) => countText(moths), number: true },
                { head: c.why, value: whyOf },
                {
                  head: c.fields,
                  value: ({ fields }) => VERBS.indexOf(fields[0]?.verb ?? 'none'),
                  cell: (row) => <Fields row={row} day={day} />,
                },
              ]}
            />
          </Folded>
        );
      })}
    </section>
  );
}
