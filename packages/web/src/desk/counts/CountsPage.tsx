import type { RoundView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { dayText } from '../../format/day.ts';
import { useWriteRecords } from '../../shared/record/write-records.ts';
import { countsWords as w } from '../../text/counts.ts';
import { language } from '../../text/language.ts';
import { Failure } from '../../ui/Failure.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { useTitle } from '../../ui/media.ts';
import { CountSheet } from './CountSheet.tsx';
import { countsQuery } from './queries.ts';
import { type CountRow, filled, isCounted, rowsOf, TypedCounts, useTyped } from './typed.ts';

const route = getRouteApi('/rounds/counts');

/** The counts of a day, entered at a desk from the sheets of a round. */
export function CountsPage() {
  const { on } = route.useSearch();
  const { data, error, refetch, isPlaceholderData } = useQuery(countsQuery(on));
  useTitle(w.title);
  if (error && !data) return <Failure error={error} again={refetch} />;
  const rows = data ? rowsOf(data) : [];
  const open = data ? rows.filter((row) => !isCounted(row, data.on)).length : 0;
  return (
    <main className="page counts-page" id="page" aria-busy={!data || isPlaceholderData}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{data ? w.sub(open, rows.length, dayText(data.on)) : w.loading}</p>
        </div>
      </div>
      {data && rows.length === 0 && <p className="quiet">{w.none}</p>}
      {data && rows.length > 0 && !isPlaceholderData && <Sheet key={data.on} view={data} rows={rows} />}
      {!data && <div className="skeleton skeleton-field" aria-hidden="true" />}
    </main>
  );
}

function Sheet({ view, rows }: { view: RoundView; rows: readonly CountRow[] }) {
  const [typed] = useState(() => new TypedCounts(view.on, sessionStorage));
  const [insect, chooseInsect] = useState('');
  const [due, onlyDue] = useState(false);
  const [more, withMore] = useState(false);
  const insects = useMemo(
    () =>
      [...new Map(rows.map(({ trap }) => [trap.insect, trap.insectName[language]]))].sort(([, a], [, b]) => a.localeCompare(b)),
    [rows],
  );
  const shown = useMemo(
    () => rows.filter(({ trap }) => (insect === '' || trap.insect === insect) && (!due || trap.due)),
    [rows, insect, due],
  );
  return (
    <>
      <p className="counts-how">{w.how}</p>
      <div className="tools counts-tools">
        <div className="filters">
          <SelectField label={w.insect} value={insect} choices={insects} all={w.allInsects} choose={chooseInsect} />
        </div>
        <Tick label={w.onlyDue} on={due} turn={onlyDue} />
        <Tick label={w.more} on={more} turn={withMore} />
      </div>
      <CountSheet view={view} rows={shown} typed={typed} more={more} />
      <Foot view={view} rows={rows} typed={typed} />
    </>
  );
}

const Tick = ({ label, on, turn }: { label: string; on: boolean; turn: (on: boolean) => void }) => (
  <label className="tick">
    <input type="checkbox" checked={on} onChange={({ currentTarget }) => turn(currentTarget.checked)} />
    {label}
  </label>
);

/** All that is filled in is saved together, also what a filter hides, and is taken back together. */
function Foot({ view, rows, typed }: { view: RoundView; rows: readonly CountRow[]; typed: TypedCounts }) {
  const say = useWriteRecords();
  const all = useTyped(typed);
  const { checks, lacking, odd } = useMemo(() => filled(view, rows, all), [view, rows, all]);
  const [said, tell] = useState<string | null>(null);
  // Which odd counts somebody has been asked about.
  const [asked, ask] = useState<string>('');
  const [busy, work] = useState(false);
  const save = async () => {
    if (checks.length === 0) return tell(w.nothing);
    if (lacking.length > 0) {
      focusOn(lacking[0]!.trapId);
      return tell(w.lacking(lacking.length));
    }
    const now = odd.map((trapId) => `${trapId} ${all[trapId]!.target}`).join();
    if (odd.length > 0 && now !== asked) {
      ask(now);
      focusOn(odd[0]!);
      return tell(w.lookAgain(odd.length));
    }
    work(true);
    const changes = checks.map((value) => ({ kind: 'checks' as const, value, base: null, before: null }));
    const done = await say(w.saved(checks.length, dayText(view.on)), ...changes);
    work(false);
    if (done) typed.clear();
    tell(null);
  };
  return (
    <footer className="counts-foot">
      <button type="button" className="button primary" aria-disabled={busy} onClick={() => !busy && void save()}>
        {w.save(checks.length)}
      </button>
      {checks.length > 0 && (
        <button type="button" className="plain-button" onClick={() => typed.clear()}>
          {w.clear}
        </button>
      )}
      <p role="status">{said ?? (checks.length === 0 ? w.nothing : w.ready(checks.length))}</p>
      <p className="key">{w.emptied}</p>
    </footer>
  );
}

const focusOn = (trapId: string) =>
  document.querySelector<HTMLInputElement>(`input[data-box="target"][data-trap="${CSS.escape(trapId)}"]`)?.focus();
