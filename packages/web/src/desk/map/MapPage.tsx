import type { FieldRecord, StationTrap, TrapDesign } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { lazy, Suspense, useMemo, useState } from 'react';
import { weekQuery } from '../../api/queries.ts';
import { useAround } from '../../shared/record/useAround.ts';
import { stationsQuery } from '../../shared/traps/queries.ts';
import { mapWords as w } from '../../text/map.ts';
import { localName } from '../../text/names.ts';
import { useWording } from '../../text/wording.ts';
import { Failure } from '../../ui/Failure.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { useTitle } from '../../ui/media.ts';
import { BaseMapForm } from './BaseMapForm.tsx';
import { RateKey, VerbKey } from './Key.tsx';
import { MapPanel } from './MapPanel.tsx';
import { MarksLayer, type Pointed } from './MarksLayer.tsx';
import { MarksTable } from './MarksTable.tsx';
import { fieldMarks, mostPressingFirst, stationMarks } from './marks.ts';
import { PlacingCross, UnplacedFields, WORLD } from './Placing.tsx';
import { PlanGround } from './PlanGround.tsx';
import type { MapSearch } from './search.ts';

const GlGround = lazy(() => import('./GlGround.tsx').then((module) => ({ default: module.GlGround })));
const route = getRouteApi('/map');

/** Whether this browser draws with WebGL 2, which MapLibre needs. */
function drawsMaps(): boolean {
  try {
    return document.createElement('canvas').getContext('webgl2') !== null;
  } catch {
    return false;
  }
}

const hangingOf = (places: readonly { readonly traps: readonly StationTrap[] }[]) =>
  places.flatMap(({ traps }) => traps.filter(({ state }) => state === 'hanging'));

/** Where to act: the fields by their most pressing verb where they lie; or the rates of one insect in one design. */
export function MapPage() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const { data: view, error, refetch, isPlaceholderData } = useQuery(stationsQuery(search.on));
  const { data: week, error: weekError, refetch: weekAgain } = useQuery(weekQuery(search.on));
  const { names } = useAround();
  const wording = useWording();
  const [webgl] = useState(drawsMaps);
  useTitle(w.title);
  const insect = search.insect ?? null;
  const design = search.design ?? null;
  const asksRates = search.show === 'rates';
  const rates = asksRates && insect !== null && design !== null;
  const stations = useMemo(
    () => (view ? stationMarks(view, { insect, design: asksRates ? design : null }) : null),
    [view, insect, design, asksRates],
  );
  const fields = useMemo(() => (week ? fieldMarks(week, names.fields, insect) : null), [week, names, insect]);
  const walked = useMemo(() => (stations && week ? mostPressingFirst(stations.marks, week) : null), [stations, week]);
  const [placing, place] = useState<FieldRecord | null>(null);
  const marked = useMemo(() => [...(fields ?? []), ...(stations?.marks ?? [])], [fields, stations]);
  const places = marked.length === 0 && placing !== null ? WORLD : marked;
  const hanging = hangingOf(view?.places ?? []);
  const insects = new Map(hanging.map((trap) => [trap.insect.id, localName(trap.insect.commonName)]));
  const designs = new Map<TrapDesign, string>(
    hanging
      .filter((trap) => insect === null || trap.insect.id === insect)
      .map((trap) => [trap.design, wording.design[trap.design]]),
  );
  if (error && !view) return <Failure error={error} again={refetch} />;
  if (weekError && !week) return <Failure error={weekError} again={weekAgain} />;
  const change = (next: Partial<MapSearch>) =>
    void navigate({ search: (before) => ({ ...before, ...next }), replace: true, resetScroll: false });
  const chosen: Pointed = { station: search.station, field: search.field };
  const choose = (pointed: Pointed) => change({ station: undefined, field: undefined, ...pointed });
  const chooseInsect = (id: string) => {
    const kept = hanging.some((trap) => trap.insect.id === id && trap.design === design);
    change({ insect: id || undefined, ...(id && !kept ? { design: undefined } : {}) });
  };
  const label = rates
    ? w.labelRates(insects.get(insect!) ?? insect!, designs.get(design as TrapDesign) ?? design!)
    : w.labelVerbs;
  const Ground = webgl ? GlGround : PlanGround;
  const ready = fields && stations && walked && week;
  return (
    <main className="page map-page" id="page" aria-busy={!ready || isPlaceholderData}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{ready ? w.sub(fields.length, stations.marks.length, stations.unplaced.length) : w.loading}</p>
        </div>
      </div>
      <div className="filters map-tools">
        <fieldset className="choice-of-two">
          <legend className="unseen">{w.show.label}</legend>
          <button type="button" aria-pressed={!asksRates} onClick={() => change({ show: undefined })}>
            {w.show.verbs}
          </button>
          <button type="button" aria-pressed={asksRates} onClick={() => change({ show: 'rates' })}>
            {w.show.rates}
          </button>
        </fieldset>
        <SelectField
          label={w.insect}
          value={insect ?? ''}
          all={asksRates ? w.choose : w.allInsects}
          choices={[...insects]}
          choose={chooseInsect}
        />
        {asksRates && (
          <SelectField
            label={w.design}
            value={design ?? ''}
            all={w.choose}
            choices={[...designs]}
            choose={(value) => change({ design: value || undefined })}
          />
        )}
      </div>
      {!webgl && <p className="basis">{w.noWebgl}</p>}
      {asksRates && !rates && (
        <p className="needs-both" role="status">
          {w.needsBoth}
        </p>
      )}
      {!ready && <div className="skeleton skeleton-field" aria-hidden="true" />}
      {ready && places.length === 0 && <p className="no-match">{w.empty}</p>}
      {ready && places.length > 0 && (
        <>
          <div className="map-and-panel">
            <div className="map-column">
              <Suspense fallback={<div className="ground ground-map" aria-hidden="true" />}>
                <Ground places={places} label={label}>
                  {(now) => (
                    <>
                      <MarksLayer
                        now={now}
                        fields={asksRates ? [] : fields}
                        stations={stations.marks}
                        highest={rates ? stations.highest : 0}
                        rates={rates}
                        chosen={chosen}
                        choose={choose}
                        label={label}
                      />
                      {placing && <PlacingCross now={now} field={placing} done={() => place(null)} />}
                    </>
                  )}
                </Ground>
              </Suspense>
              {rates && <RateKey highest={stations.highest} />}
              {!asksRates && <VerbKey fields={fields} />}
            </div>
            <MapPanel week={week} fields={fields} stations={walked} chosen={chosen} choose={choose} on={search.on} />
          </div>
          <MarksTable fields={fields} stations={walked} chosen={chosen} choose={choose} on={search.on} today={week.on} />
        </>
      )}
      <UnplacedFields
        fields={names.fields.values()}
        place={(field) => {
          place(field);
          document.getElementById('page')?.scrollIntoView();
        }}
      />
      {stations && stations.unplaced.length > 0 && (
        <>
          <h2 className="unplaced-head">{w.unplaced}</h2>
          <ul className="unplaced">
            {stations.unplaced.map((place) => (
              <li key={`${place.station}|${place.place}`}>
                {place.traps[0] && (
                  <Link to="/traps/$trapId" params={{ trapId: place.traps[0].trapId }} search={{ on: search.on }}>
                    {place.station}
                  </Link>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      <BaseMapForm />
    </main>
  );
}
