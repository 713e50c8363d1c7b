import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { lazy, Suspense, useMemo, useState } from 'react';
import { useAround } from '../../shared/record/useAround.ts';
import { stationsQuery } from '../../shared/traps/queries.ts';
import { mapWords as w } from '../../text/map.ts';
import { localName } from '../../text/names.ts';
import { DateControl } from '../../ui/DateControl.tsx';
import { Failure } from '../../ui/Failure.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { useTitle } from '../../ui/media.ts';
import { BaseMapForm } from './BaseMapForm.tsx';
import { ChosenStation } from './ChosenStation.tsx';
import { Key } from './Key.tsx';
import { MarksLayer } from './MarksLayer.tsx';
import { MarksTable } from './MarksTable.tsx';
import { marksOf } from './marks.ts';
import { PlanGround } from './PlanGround.tsx';

const GlGround = lazy(() => import('./GlGround.tsx').then((module) => ({ default: module.GlGround })));
const route = getRouteApi('/fields/map');

/** Whether this browser draws with WebGL 2, which MapLibre needs. */
function drawsMaps(): boolean {
  try {
    return document.createElement('canvas').getContext('webgl2') !== null;
  } catch {
    return false;
  }
}

/** The stations where they stand; nothing between them, since catch is local. */
export function MapPage() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { data: view, error, refetch, isPlaceholderData } = useQuery(stationsQuery(search.on));
  const { names } = useAround();
  const [chosen, choose] = useState<string | null>(null);
  const [webgl] = useState(drawsMaps);
  useTitle(w.title);
  const insect = search.insect ?? null;
  const shown = useMemo(() => (view ? marksOf(view, insect) : null), [view, insect]);
  const insects = useMemo(
    () =>
      new Map(
        (view?.places ?? []).flatMap(({ traps }) =>
          traps
            .filter(({ state }) => state === 'hanging')
            .map((trap) => [trap.insect.id, localName(trap.insect.commonName)] as const),
        ),
      ),
    [view],
  );
  if (error && !view) return <Failure error={error} again={refetch} />;
  const label = w.label(insect === null ? w.all : (insects.get(insect) ?? insect));
  const mark = shown?.marks.find(({ key }) => key === chosen) ?? null;
  const Ground = webgl ? GlGround : PlanGround;
  return (
    <main className="page map-page" id="page" aria-busy={!view || isPlaceholderData}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{shown ? w.sub(shown.marks.length, shown.unplaced.length) : w.loading}</p>
        </div>
        <div className="filters map-tools">
          <SelectField
            label={w.insect}
            value={insect ?? ''}
            all={w.all}
            choices={[...insects]}
            choose={(value) =>
              void navigate({
                search: (before) => ({ ...before, insect: value || undefined }),
                replace: true,
                resetScroll: false,
              })
            }
          />
          {(view ?? search.on) && (
            <DateControl
              on={search.on ?? view!.on}
              pinned={search.on !== undefined}
              choose={(on) => navigate({ search: (before) => ({ ...before, on }), resetScroll: false })}
            />
          )}
        </div>
      </div>
      {!shown && <div className="skeleton skeleton-field" aria-hidden="true" />}
      {shown && shown.marks.length === 0 && <p className="no-match">{w.empty}</p>}
      {shown && shown.marks.length > 0 && (
        <>
          {!webgl && <p className="absent">{w.noWebgl}</p>}
          <div className="map-and-station">
            <Suspense fallback={<div className="ground skeleton skeleton-field" aria-hidden="true" />}>
              <Ground places={shown.marks} label={label}>
                {(now) => (
                  <MarksLayer
                    now={now}
                    marks={shown.marks}
                    highest={shown.highest}
                    fields={[...names.fields.values()]}
                    chosen={chosen}
                    choose={choose}
                    label={label}
                  />
                )}
              </Ground>
            </Suspense>
            {mark && <ChosenStation mark={mark} on={search.on} today={view!.on} />}
          </div>
          <Key />
          <MarksTable marks={shown.marks} chosen={chosen} choose={choose} on={search.on} today={view!.on} />
        </>
      )}
      {shown && shown.unplaced.length > 0 && (
        <ul className="unplaced">
          {shown.unplaced.map((place) => (
            <li key={`${place.station}|${place.place}`}>
              {place.traps[0] && (
                <Link to="/traps/$trapId" params={{ trapId: place.traps[0].trapId }}>
                  {place.station}
                </Link>
              )}
            </li>
          ))}
        </ul>
      )}
      <BaseMapForm />
    </main>
  );
}
