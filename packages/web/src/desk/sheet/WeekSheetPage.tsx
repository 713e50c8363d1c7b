import type { IsoDay, WeekSheetView } from '@duskwatch/core';
import { keepPreviousData, queryOptions, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { dated, getJson } from '../../api/client.ts';
import { weekQuery } from '../../api/queries.ts';
import { dayText, dayTextFrom } from '../../format/day.ts';
import { weekSheetWords as w } from '../../text/week-sheet.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { AllFields } from './AllFields.tsx';
import { Drives, ToDo } from './DueTables.tsx';

const route = getRouteApi('/sheet');

const sheetQuery = (on: IsoDay | undefined) =>
  queryOptions({
    queryKey: ['week', 'sheet', on ?? null],
    queryFn: ({ signal }) => getJson<WeekSheetView>(dated('/api/week/sheet', on), signal),
    placeholderData: keepPreviousData,
  });

/** The week for a wall and a cab: what to decide and to look at, the drives, and every field. */
export function WeekSheetPage() {
  const { on } = route.useSearch();
  const week = useQuery(weekQuery(on));
  const sheet = useQuery(sheetQuery(on));
  useTitle(w.title);
  const error = week.error ?? sheet.error;
  const { data: view } = week;
  const { data: due } = sheet;
  if (error && !(view && due)) return <Failure error={error} again={() => void Promise.all([week.refetch(), sheet.refetch()])} />;
  const known = (date: IsoDay | null) => (date && view ? dayTextFrom(date, view.on) : w.none);
  return (
    <main
      className="page week-sheet-page"
      id="page"
      aria-busy={!view || !due || week.isPlaceholderData || sheet.isPlaceholderData}
    >
      <div className="page-head no-print">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{w.preview}</p>
        </div>
        <div className="actions">
          <button type="button" className="button primary" onClick={() => window.print()} disabled={!view || !due}>
            {w.print}
          </button>
        </div>
      </div>
      {view && due ? (
        <>
          <Paper
            title={w.due}
            notes={[w.span(dayText(due.on), dayText(due.until)), w.known(known(view.countsTo), known(view.weatherTo))]}
          >
            <ToDo sheet={due} />
          </Paper>
          <Paper title={w.drives} notes={[w.span(dayText(due.on), dayText(due.until))]}>
            <Drives sheet={due} />
          </Paper>
          <Paper title={w.all} notes={[w.key, w.asOf(dayText(view.on))]}>
            <AllFields view={view} />
          </Paper>
        </>
      ) : (
        <div className="skeleton skeleton-field" aria-hidden="true" />
      )}
    </main>
  );
}

/** One sheet; on a narrow screen it is moved under one's finger, or with the arrow keys. */
const Paper = ({ title, notes, children }: { title: string; notes: readonly string[]; children: ReactNode }) => (
  // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keyboard
  <section className="paper" aria-label={title} tabIndex={0}>
    <header>
      <h2>{title}</h2>
      {notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
    </header>
    {children}
  </section>
);
