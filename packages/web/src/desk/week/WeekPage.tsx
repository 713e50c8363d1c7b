import { ASSUMPTIONS, type WeekView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useCallback, useMemo, useState } from 'react';
import { programQuery, weekQuery } from '../../api/queries.ts';
import { dayTextFrom, longDay } from '../../format/day.ts';
import { percentText } from '../../format/number.ts';
import { BeginOwn } from '../../shared/OtherProgram.tsx';
import { words } from '../../text/index.ts';
import { thisWeekWords } from '../../text/this-week.ts';
import { Failure } from '../../ui/Failure.tsx';
import { Folded } from '../../ui/Folded.tsx';
import { useRoomFor, useTitle, useWide } from '../../ui/media.ts';
import { CopyButtons } from './CopyButtons.tsx';
import { DueStrip } from './DueStrip.tsx';
import { Beginning, NoFields } from './Empty.tsx';
import { Filters, VerbFilter } from './Filters.tsx';
import { Headline } from './Headline.tsx';
import type { WeekSearch } from './search.ts';
import { cellKey, selectWeek, type WeekSelection } from './select.ts';
import { useKeptEvidence } from './useKeptEvidence.ts';
import { WeekList } from './WeekList.tsx';
import { WeekSkeleton } from './WeekSkeleton.tsx';
import { type CellRoom, WeekTable } from './WeekTable.tsx';

const LEVEL = percentText(ASSUMPTIONS.intervalLevel.value);
const route = getRouteApi('/');

/** Of the filters, or of what they are now. */
type Change = (part: Partial<WeekSearch> | ((before: WeekSearch) => Partial<WeekSearch>)) => void;

/** Fields down, insects across: where must I act? */
export function WeekPage() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { data: view, error, refetch, isPlaceholderData } = useQuery(weekQuery(search.on));
  const { data: program } = useQuery(programQuery);
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
        {program?.invented && <BeginOwn />}
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
  const room = useCellRoom(selection.columns.length);
  const { unfolded, unfold } = useUnfolded(selection, search.open);
  if (view.fields.length === 0) return <NoFields view={view} on={search.on} />;
  const body = {
    view,
    selection,
    on: search.on,
    open: search.open,
    toggle,
    groupedBy: sort === 'farm' || sort === 'crop' ? sort : null,
    unfolded,
    unfold,
  } as const;
  const filters = <Filters view={view} search={search} change={change} />;
  return (
    <>
      <Beginning view={view} on={search.on} />
      <div className="week-top">
        <Headline view={view} folds={sort === 'farm' && !verb} />
        <div className="actions no-print">
          <CopyButtons view={view} selection={selection} />
        </div>
      </div>
      <DueStrip view={view} on={search.on} />
      <div className="tools">
        <VerbFilter view={view} search={search} change={change} />
        {wide ? (
          <div className="filters">{filters}</div>
        ) : (
          <Folded title={words.filter.title} className="filters-folded">
            <div className="filters">{filters}</div>
          </Folded>
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
      {selection.shown > 0 && (room ? <WeekTable {...body} room={room} /> : <WeekList {...body} />)}
      <footer className="week-foot">
        <p className="key">{thisWeekWords.key(LEVEL)}</p>
        <span className="shown">{words.week.shown(selection.shown, view.fields.length)}</span>
      </footer>
    </>
  );
}

/** Px that a column of field names and the page's edges take. */
const BESIDES = 276;

/** How the cells of so many insects fit side by side; null: they do not, and stand under one another. */
function useCellRoom(insects: number): CellRoom | null {
  const wide = useWide();
  const beside = useRoomFor(BESIDES + insects * 250);
  const under = useRoomFor(BESIDES + insects * 150);
  const narrow = useRoomFor(BESIDES + insects * 84);
  if (!wide) return null;
  return beside ? 'beside' : under ? 'under' : narrow ? 'narrow' : null;
}

/** Groups somebody unfolded, and the one that holds the cell which stands open. */
function useUnfolded({ groups }: WeekSelection, open: string | undefined) {
  const [asked, ask] = useState<ReadonlySet<string>>(new Set());
  const holding =
    open === undefined
      ? undefined
      : groups.find(({ folded }) => folded.some(({ fieldId }) => open.startsWith(cellKey(fieldId, ''))))?.title;
  const unfolded = useMemo(() => (holding ? new Set([...asked, holding]) : asked), [asked, holding]);
  const unfold = useCallback(
    (group: string) =>
      ask((before) => {
        const next = new Set(before);
        if (!next.delete(group)) next.add(group);
        return next;
      }),
    [],
  );
  return { unfolded, unfold };
}
