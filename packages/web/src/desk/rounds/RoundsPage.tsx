import { planRounds, type Rounds, type RoundsRequest, SEASON_ASSUMPTIONS, type TravelTable } from '@duskwatch/core';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useEffect, useMemo, useState } from 'react';
import { ApiError, send } from '../../api/client.ts';
import { sessionQuery } from '../../api/session.ts';
import { useLengthUnit } from '../../browser/preferences.ts';
import { dayText } from '../../format/day.ts';
import { distanceText } from '../../format/length.ts';
import { rateText } from '../../format/number.ts';
import { plannedRoundsWords as w } from '../../text/planned-rounds.ts';
import { Failure } from '../../ui/Failure.tsx';
import { useTitle } from '../../ui/media.ts';
import { DueTable } from './DueTable.tsx';
import { type RoundsAnswer, roundsQuery } from './queries.ts';
import { RoundSheet } from './RoundSheet.tsx';
import { SetupForm } from './SetupForm.tsx';
import { daysFrom, keepSetup, readSetup, requestFor, type Setup } from './setup.ts';
import { type Travel, TravelChoice } from './TravelChoice.tsx';

interface Planned {
  readonly request: RoundsRequest;
  readonly rounds: Rounds;
}

/** Who drives past which stations on which day, and in which order. */
export function RoundsPage() {
  const { data: session } = useQuery(sessionQuery);
  const { data: first, error, refetch } = useQuery(roundsQuery(undefined));
  const [setup, setSetup] = useState<Setup>(() => readSetup(session?.person?.name ?? w.scout(1)));
  const until = first && daysFrom(first.on, setup.days).at(-1);
  const { data } = useQuery({ ...roundsQuery(until), enabled: first !== undefined });
  const [travel, chooseTravel] = useState<Travel>({ kind: 'circle' });
  const [planned, show] = useState<Planned | null>(null);
  const [state, tell] = useState<{ busy: boolean; fault: string | null }>({ busy: false, fault: null });
  useTitle(w.title);
  useEffect(() => keepSetup(setup), [setup]);

  if (error && !first) return <Failure error={error} again={refetch} />;
  const change = (next: Setup) => {
    setSetup(next);
    show(null);
  };
  const plan = async (view: RoundsAnswer) => {
    tell({ busy: true, fault: null });
    try {
      const request = requestFor(view.stations, setup, view.on, travel.kind === 'table' ? travel.table : null);
      const table = travel.kind === 'service' ? await askService(request) : request.travel;
      const whole = { ...request, travel: table };
      show({ request: whole, rounds: planRounds(whole) });
      tell({ busy: false, fault: null });
    } catch (failure) {
      if (!(failure instanceof ApiError)) throw failure;
      tell({ busy: false, fault: `${w.failed} ${failure.problems[0]?.got ?? failure.message}` });
    }
  };
  return (
    <main className="page rounds-page" id="page" aria-busy={!data}>
      <div className="page-head">
        <div>
          <h1>{w.title}</h1>
          <p className="sub">{data ? w.sub(data.stations.length, dayText(data.until)) : w.loading}</p>
        </div>
        <div className="actions">
          <Link to="/round" search={{}} className="button">
            {w.toPhone}
          </Link>
        </div>
      </div>
      {data ? (
        <>
          <div className="rounds-desk">
            <SetupForm setup={setup} change={change} />
            <div>
              <TravelChoice
                travel={travel}
                choose={(next) => {
                  chooseTravel(next);
                  show(null);
                }}
                service={data.drivingTimesFrom}
              />
              <p className="actions">
                <button
                  type="button"
                  className="button primary"
                  aria-disabled={state.busy || data.stations.length === 0}
                  onClick={() => !state.busy && data.stations.length > 0 && void plan(data)}
                >
                  {state.busy ? w.planning : w.plan}
                </button>
              </p>
              {state.fault && <p className="entries-fault">{state.fault}</p>}
            </div>
          </div>
          {planned && <Result planned={planned} view={data} />}
          <DueTable view={data} setup={setup} change={change} />
        </>
      ) : (
        <div className="skeleton skeleton-field" aria-hidden="true" />
      )}
    </main>
  );
}

/** All stations with a place, and the start points by the names of their scouts. */
function askService({ stations, scouts }: RoundsRequest): Promise<TravelTable> {
  const places = [...stations, ...scouts.flatMap(({ id, home }) => (home ? [{ id, ...home }] : []))].flatMap(
    ({ id, latitude, longitude }) => (latitude === null || longitude === null ? [] : [{ id, latitude, longitude }]),
  );
  return send('POST', '/api/rounds/driving-times', { places });
}

function Result({ planned: { request, rounds }, view }: { planned: Planned; view: RoundsAnswer }) {
  const stations = useMemo(() => new Map(view.stations.map((station) => [station.id, station])), [view]);
  const [length] = useLengthUnit();
  const { roadFactor, drivingKmPerHour, stopMinutes, trapMinutes } = SEASON_ASSUMPTIONS;
  return (
    <section className="rounds-result" aria-labelledby="rounds-result">
      <div className="page-head">
        <h2 id="rounds-result">{w.result}</h2>
        <div className="actions">
          <button type="button" className="button" onClick={() => print()}>
            {w.print}
          </button>
        </div>
      </div>
      <p className="caution-line">{w.cautions}</p>
      {rounds.rounds.map((round) => (
        <RoundSheet
          key={`${round.day} ${round.scout}`}
          round={round}
          stations={stations}
          scout={request.scouts.find(({ id }) => id === round.scout)!}
        />
      ))}
      {rounds.unserved.length > 0 && (
        <section className="rounds-unserved">
          <h3>{w.unserved}</h3>
          <ul>
            {rounds.unserved.map(({ station, why }) => {
              const until = stations.get(station)?.keepOutUntil;
              return (
                <li key={station}>
                  <b>{station}</b>: {w.why[why]}
                  {why === 'keep-out' && until ? `, ${w.blockedUntil(dayText(until))}` : ''}
                </li>
              );
            })}
          </ul>
        </section>
      )}
      {!request.travel && (
        <p className="key">
          {w.assumed(
            rateText(roadFactor.value),
            `${distanceText(drivingKmPerHour.value, length)}/h`,
            rateText(stopMinutes.value),
            rateText(trapMinutes.value),
          )}
        </p>
      )}
    </section>
  );
}
