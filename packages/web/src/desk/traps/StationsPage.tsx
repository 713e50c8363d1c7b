import { insectById, scientificNameOf, type TrapsView } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { lazy, Suspense, useMemo, useState } from 'react';
import { useDesk } from '../../shared/record/desk.ts';
import { stationsLater } from '../../shared/record/later.ts';
import { useMayWrite } from '../../shared/record/useMayWrite.ts';
import { stationsQuery } from '../../shared/traps/queries.ts';
import { documentsWords } from '../../text/documents.ts';
import { trapsWords as w } from '../../text/traps.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle, useWide } from '../../ui/media.ts';
import { NewField } from './NewField.tsx';
import { NewTrap } from './NewTrap.tsx';
import { allRows, type Row, selectRows } from './rows.ts';
import type { StationsSearch } from './search.ts';
import { Tools } from './Tools.tsx';
import { TrapCards } from './TrapCards.tsx';
import { TrapTable } from './TrapTable.tsx';

const LabelsPanel = lazy(async () => ({ default: (await import('./LabelsPanel.tsx')).LabelsPanel }));

const route = getRouteApi('/fields');

const insectNameOf = (id: string) => {
  const known = insectById(id);
  return known
    ? { id, scientificName: known.scientificName, commonName: known.commonName }
    : { id, scientificName: scientificNameOf(id), commonName: { en: scientificNameOf(id), es: scientificNameOf(id) } };
};

/** A trap that was taken down needs no label. */
const toLabel = (rows: readonly Row[]) => rows.filter(({ trap }) => trap.state !== 'taken-down').map(({ trap }) => trap.trapId);

/** Every trap of the program: where it stands, what it last told, what is due. */
export function StationsPage() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { data, error, refetch, isPlaceholderData } = useQuery(stationsQuery(search.on));
  const { entries } = useDesk();
  const mayWrite = useMayWrite();
  const [adding, add] = useState<'trap' | 'field' | 'labels' | null>(null);
  useTitle(w.title);
  const later = useMemo(() => (data ? stationsLater(data, entries, insectNameOf) : null), [data, entries]);
  const change = (part: Partial<StationsSearch>) =>
    navigate({ search: (before) => ({ ...before, ...part }), replace: true, resetScroll: false });

  if (error && !data) return <Failure error={error} again={refetch} />;
  const hanging = later?.view.places.flatMap(({ traps }) => traps).filter(({ state }) => state === 'hanging').length ?? 0;
  return (
    <main className="page" id="page" aria-busy={!data || isPlaceholderData}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{later ? w.sub(later.view.places.filter(({ inUse }) => inUse).length, hanging) : w.loading}</p>
        </div>
        <div className="actions">
          {data && mayWrite('traps') && (
            <button type="button" className="button primary" onClick={() => add('trap')}>
              {w.add}
            </button>
          )}
          {data && mayWrite('fields') && (
            <button type="button" className="button" onClick={() => add('field')}>
              {w.addField}
            </button>
          )}
          {later && mayWrite('checks') && later.view.places.length > 0 && (
            <button type="button" className="button" onClick={() => add('labels')}>
              {documentsWords.open}
            </button>
          )}
          <Link to="/map" className="button">
            {w.onMap}
          </Link>
        </div>
      </div>
      {later ? (
        <Traps view={later.view} notSent={later.notSent} search={search} change={change} />
      ) : (
        <div className="skeleton skeleton-field" aria-hidden="true" />
      )}
      {adding === 'trap' && later && <NewTrap view={later.view} close={() => add(null)} />}
      {adding === 'field' && <NewField close={() => add(null)} />}
      {adding === 'labels' && later && (
        <Suspense>
          <LabelsPanel trapIds={toLabel(selectRows(later.view, search))} close={() => add(null)} />
        </Suspense>
      )}
    </main>
  );
}

function Traps(props: {
  view: TrapsView;
  notSent: ReadonlySet<string>;
  search: StationsSearch;
  change: (part: Partial<StationsSearch>) => void;
}) {
  const { view, notSent, search, change } = props;
  const wide = useWide();
  if (view.places.length === 0) {
    return (
      <section className="quiet">
        <h2>{w.empty.title}</h2>
        <p>{w.empty.text}</p>
      </section>
    );
  }
  const rows = selectRows(view, search);
  const body = { rows, view, notSent, search, change };
  return (
    <>
      <Tools view={view} rows={rows} all={allRows(view).length} search={search} change={change} />
      {rows.length === 0 ? (
        <p className="no-match">
          {w.filter.none}{' '}
          <button
            type="button"
            className="plain-button"
            onClick={() => change({ find: undefined, insect: undefined, farm: undefined, state: 'all' })}
          >
            {w.filter.clear}
          </button>
        </p>
      ) : wide ? (
        <TrapTable {...body} />
      ) : (
        <TrapCards {...body} />
      )}
    </>
  );
}
