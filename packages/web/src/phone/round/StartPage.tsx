import { distanceKm, type RoundStop, type RoundTrap, type RoundView, roundLengthKm } from '@duskwatch/core';
import { Link } from '@tanstack/react-router';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { longDay, shortDay } from '../../format/day.ts';
import { driveWords } from '../../text/drive.ts';
import { words } from '../../text/index.ts';
import { roundWords as w } from '../../text/round.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import { wayText } from '../shared/figures.ts';
import { askHere, useHere } from '../shared/here.ts';
import { isAsked, planned as plannedStops, planOrder, stopsAsked } from '../shared/progress.ts';
import { Sign } from '../shared/Sign.tsx';
import type { Place } from '../shared/way.ts';
import { ClockNote } from './ClockNote.tsx';
import { DueWords } from './DueWords.tsx';
import { TakeAlong } from './TakeAlong.tsx';

/** Before the round: what is due, in which order, and what may happen to a person on the way. */
export function StartPage(props: {
  state: DeviceState;
  device: RoundDevice;
  view: RoundView;
  /** Stations of a planned round in driving order; null: what is due, in the shortest order. */
  planned: readonly string[] | null;
}) {
  const { planned, ...rest } = props;
  const stops = planned === null ? [] : plannedStops(props.view, planned);
  return stops.length === 0 ? <DueStart {...rest} /> : <PlannedStart {...rest} stops={stops} asked={planned!} />;
}

type Start = Omit<Parameters<typeof StartPage>[0], 'planned'>;

/** A round that somebody planned at a desk. */
function PlannedStart({ state, device, view, stops, asked }: Start & { stops: readonly RoundStop[]; asked: readonly string[] }) {
  const traps = stops.flatMap((stop) => stop.traps);
  const missing = asked.filter((station) => stops.every((stop) => stop.station !== station));
  const left = view.stops.filter((stop) => stop.due && !stops.includes(stop)).length;
  return (
    <main className="round-body start" id="page">
      <div className="round-title">
        <h1>{w.planned.title}</h1>
        <p>
          {longDay(view.on)} · {view.program.name}
          {view.program.invented && <span className="round-invented"> {words.app.invented}</span>}
        </p>
        <ClockNote state={state} on={view.on} />
      </div>
      <p className="start-sum">
        <strong>{w.start.due(stops.length, traps.length)}</strong>
        <br />
        {w.start.distance(wayText(roundLengthKm(stops)))}
      </p>
      <TakeAlong stops={stops} asked={() => true} />
      {missing.length > 0 && <p className="warning-line">{w.planned.missing(missing.join(', '))}</p>}
      {left > 0 && <p className="hint">{w.planned.left(left)}</p>}
      <Cautions stops={stops} />
      <ol className="stops">
        {stops.map((stop, index) => (
          <li key={stop.station} className="stop-row">
            <span className="stop-n">{index + 1}</span>
            <span className="stop-name">
              <strong>{stop.station}</strong>
              <DueWords stop={stop} asked={() => true} on={view.on} />
            </span>
          </li>
        ))}
      </ol>
      <div className="round-foot">
        <a className="big" href="/round">
          {w.planned.instead}
        </a>
        <button type="button" className="big primary" onClick={() => void device.startPlanned(asked, view)}>
          {w.start.go}
        </button>
      </div>
    </main>
  );
}

/** What may happen to a person on the way, and fields to keep out of. */
export function Cautions({ stops }: { stops: readonly RoundStop[] }) {
  const keepOut = new Set(
    stops.flatMap(({ fields }) => fields.filter((field) => field.keepOut.length > 0).map(({ fieldId }) => fieldId)),
  );
  return (
    <section className="before" aria-labelledby="before">
      <h2 id="before">{w.start.before}</h2>
      {keepOut.size > 0 && (
        <p className="warning-line">
          <Sign /> {w.start.keepOut(keepOut.size)}
        </p>
      )}
      <ul>
        {w.start.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}

function DueStart({ state, device, view }: Start) {
  const [all, setAll] = useState(false);
  const [from, setFrom] = useState<string | null>(null);
  const here = useHere();
  const asked = useMemo(() => stopsAsked(view, all), [view, all]);
  const { order, lengthKm } = useMemo(() => planOrder(view, all, from), [view, all, from]);
  const byStation = new Map(asked.map((stop) => [stop.station, stop]));
  const stops = order.map((station) => byStation.get(station)!);
  const isAskedNow = useCallback((trap: RoundTrap) => isAsked(trap, all), [all]);
  const traps = stops.flatMap((stop) => stop.traps.filter(isAskedNow));
  const placed = stops.some(({ latitude }) => latitude !== null);
  const { fetchedMs } = state.kept!;

  const nearest = here.place && nearestTo(here.place, asked);
  useEffect(() => {
    if (nearest) setFrom(nearest);
  }, [nearest]);

  return (
    <main className="round-body start" id="page">
      <div className="round-title">
        <h1>{w.title}</h1>
        <p>
          {longDay(view.on)} · {view.program.name}
          {view.program.invented && <span className="round-invented"> {words.app.invented}</span>}
        </p>
        <ClockNote state={state} on={view.on} />
      </div>
      {stops.length === 0 ? (
        <p className="start-sum">
          <strong>{w.start.none}</strong> {w.start.noneHow}
        </p>
      ) : (
        <p className="start-sum">
          <strong>{w.start.due(stops.length, traps.length)}</strong>
          <br />
          {placed ? w.start.distance(wayText(lengthKm)) : w.start.noDistance}
        </p>
      )}
      <TakeAlong stops={stops} asked={isAskedNow} />
      <label className="switch">
        <input type="checkbox" checked={all} onChange={(event) => setAll(event.currentTarget.checked)} />
        <span>
          {w.start.all} <small>{w.start.allHelp}</small>
        </span>
      </label>

      <Cautions stops={stops} />

      {stops.length > 0 && (
        <section aria-labelledby="from">
          <h2 id="from">{w.start.from}</h2>
          <div className="choices two">
            <button type="button" aria-pressed={from === null} onClick={() => setFrom(null)}>
              {w.start.anywhere}
            </button>
            <button
              type="button"
              aria-pressed={nearest !== null && from === nearest}
              onClick={() => (nearest ? setFrom(nearest) : askHere())}
              aria-disabled={here.state === 'finding'}
            >
              {here.state === 'finding' ? w.start.finding : w.start.nearest}
            </button>
          </div>
          <p className="hint" role="status">
            {here.state === 'failed' ? w.start.notFound : w.start.tapStation}
          </p>
          <ol className="stops">
            {stops.map((stop, index) => (
              <li key={stop.station}>
                <button
                  type="button"
                  className="stop-row"
                  aria-pressed={from === stop.station}
                  onClick={() => setFrom(stop.station)}
                >
                  <span className="stop-n">{index + 1}</span>
                  <span className="stop-name">
                    <span className="unseen">{w.start.startAt}</span> <strong>{stop.station}</strong>
                    <DueWords stop={stop} asked={isAskedNow} on={view.on} />
                  </span>
                  <span className="stop-state">
                    {stop.fields.some((field) => field.keepOut.length > 0) && <em className="warning-word">{w.keepOut.short}</em>}
                    {index === 0 && from === stop.station && w.start.first}
                  </span>
                </button>
              </li>
            ))}
          </ol>
        </section>
      )}
      <p className="hint">
        {w.start.read(readWhen(fetchedMs), daysSince(fetchedMs))}.{' '}
        {state.failure === 'signed-out' ? (
          <>
            {driveWords.signal.signedOutText} <a href="/sign-in">{w.unsent.signIn}</a>
          </>
        ) : (
          state.failure && w.start.stale
        )}
      </p>
      <div className="round-foot">
        <Link to="/scout" className="big narrow">
          {w.start.scout}
        </Link>
        <button
          type="button"
          className="big primary"
          aria-disabled={stops.length === 0}
          onClick={() => stops.length > 0 && void device.start(all, from, view)}
        >
          {w.start.go}
        </button>
      </div>
    </main>
  );
}

function nearestTo(place: Place, stops: readonly RoundStop[]): string | null {
  const near = stops
    .map((stop) => ({ station: stop.station, km: distanceKm(place, stop) ?? Infinity }))
    .reduce<{ station: string; km: number } | null>((best, each) => (best && best.km <= each.km ? best : each), null);
  return near?.station ?? null;
}

/** Whole days; none when the clock was set back. */
const daysSince = (ms: number) => Math.max(0, Math.floor((Date.now() - ms) / 86_400_000));

/** `Sat 12 Jul, 07:40`. */
function readWhen(ms: number): string {
  const at = new Date(ms);
  const two = (value: number) => String(value).padStart(2, '0');
  const date = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${shortDay(date)}, ${two(at.getHours())}:${two(at.getMinutes())}`;
}
