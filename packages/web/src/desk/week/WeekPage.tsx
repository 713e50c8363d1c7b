import { ASSUMPTIONS, type WeekView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useCallback, useMemo } from 'react';
import { weekQuery } from '../../api/queries.ts';
import { dayTextFrom, longDay } from '../../format/day.ts';
import { percentText } from '../../format/number.ts';
import { words } from '../../text/index.ts';
import { DateControl } from '../../ui/DateControl.tsx';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle, useWide } from '../../ui/media.ts';
import { CopyButtons } from './CopyButtons.tsx';
import { DueStrip } from './DueStrip.tsx';
import { Beginning, NoFields } from './Empty.tsx';
import { Filters, VerbFilter } from './Filters.tsx';
import type { WeekSearch } from './search.ts';
import { selectWeek } from './select.ts';
import { useKeptEvidence } from './useKeptEvidence.ts';
import { WeekList } from './WeekList.tsx';
import { WeekSkeleton } from './WeekSkeleton.tsx';
import { WeekTable } from './WeekTable.tsx';

const LEVEL = percentText(ASSUMPTIONS.intervalLevel.value);
const route = getRouteApi('/');

/** Of the filters, or of what they are now. */
type Change = (part: Partial<WeekSearch> | ((before: WeekSearch) => Partial<WeekSearch>)) => void;

/** Fields down, insects across: where must I act? */
export function WeekPage() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { data: view, error, refetch, isPlaceholderData } = useQuery(weekQuery(search.on));
  useTitle(words.week.title);
  useKeptEvidence(isPlaceholderData ? undefined : view, search.on);
  const change = useCallback<Change>(
    (part) =>
      void navigate({
        search: (before) => ({ ...before, ...(typeof part === 'function' ? part(before) : part) }),
        replace: true,
        resetScroll: false,
      }),
    [navigate],
  );

  if (error && !view) return <Failure error={error} again={refetch} />;
  return (
    <main className="page" id="page" aria-busy={!view || isPlaceholderData}>
      <div className="page-head">
        <div>
          <h1>{words.week.title}</h1>
          <p className="sub">
            {view
              ? [
                  longDay(view.on),
                  words.week.countsTo(view.countsTo && dayTextFrom(view.countsTo, view.on)),
                  words.week.weatherTo(view.weatherTo && dayTextFrom(view.weatherTo, view.on)),
                ].join(' · ')
              : words.loading}
          </p>
        </div>
        {(view ?? search.on) && (
          <DateControl
            on={search.on ?? view!.on}
            pinned={search.on !== undefined}
            choose={(on) => navigate({ search: (before) => ({ ...before, on }), resetScroll: false })}
          />
        )}
      </div>
      {view ? <Week view={view} search={search} change={change} /> : <WeekSkeleton />}
    </main>
  );
}

function Week({ view, search, change }: { view: WeekView; search: WeekSearch; change: Change }) {
  const wide = useWide();
  const toggle = useCallback((key: string) => change(({ open }) => ({ open: open === key ? undefined : key })), [change]);
  const { farm, crop, insect, verb, sort = 'farm' } = search;
  const selection = useMemo(() => selectWeek(view, { farm, crop, insect, verb, sort }), [view, farm, crop, insect, verb, sort]);
  if (view.fields.length === 0) return <NoFields view={view} on={search.on} />;
  const body = {
    view,
    selection,
    on: search.on,
    open: search.open,
    toggle,
    groupedBy: sort === 'farm' || sort === 'crop' ? sort : null,
  } as const;
  const filters = <Filters view={view} search={search} change={change} />;
  return (
    <>
      <Beginning view={view} on={search.on} />
      <DueStrip view={view} on={search.on} />
      <div className="tools">
        <VerbFilter view={view} search={search} change={change} />
        {wide ? (
          <div className="filters">{filters}</div>
        ) : (
          <details className="filters-folded">
            <summary>{words.filter.title}</summary>
            <div className="filters">{filters}</div>
          </details>
        )}
      </div>
      {selection.shown === 0 && (
        <p className="no-match">
          {words.week.noMatch}{' '}
          <button
            type="button"
            className="plain-button"
            onClick={() => change({ farm: undefined, crop: undefined, insect: undefined, verb: undefined })}
          >
            {words.week.clear}
          </button>
        </p>
      )}
      {selection.shown > 0 && (wide ? <WeekTable {...body} /> : <WeekList {...body} />)}
      <footer className="week-foot">
        <p className="key">{words.week.key(LEVEL)}</p>
        <div className="actions">
          <span className="shown">{words.week.shown(selection.shown, view.fields.length)}</span>
          <CopyButtons view={view} selection={selection} />
        </div>
      </footer>
    </>
  );
}
