import type { IsoDay, RoundView } from '@duskwatch/core';
import { useState } from 'react';
import { shortDay } from '../../format/day.ts';
import { roundWords as w } from '../../text/round.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import { countText, wayText } from '../shared/figures.ts';
import { nextPlace, type Progress, type StopProgress, type TrapState } from '../shared/progress.ts';
import type { RoundSearch } from './search.ts';

interface Props {
  readonly state: DeviceState;
  readonly device: RoundDevice;
  readonly view: RoundView;
  readonly on: IsoDay;
  readonly progress: Progress;
  readonly go: (to: RoundSearch) => void;
}

/** All stops of the round under way, and what comes next. */
export function RoundList({ state, device, view, on, progress, go }: Props) {
  const [ending, setEnding] = useState(false);
  const next = nextPlace(progress, null);
  const open = progress.total - progress.saved - progress.skipped;
  const { startedOn, all } = state.round!;
  const unsent = state.status ? state.status.pending + state.status.photos : 0;
  const end = () => void device.end();
  return (
    <main className="round-body" id="page">
      <div className="round-title">
        <h1>{next ? w.title : w.list.finished}</h1>
        <p>
          {shortDay(startedOn)} · {w.header.progress(progress.saved + progress.skipped, progress.total)} ·{' '}
          {wayText(progress.lengthKm)}
        </p>
        {startedOn < on && <p className="warning-line">{w.start.old(shortDay(startedOn))}</p>}
      </div>
      {!next && (
        <p className="start-sum">
          {w.list.finishedText(progress.saved, progress.skipped)} {unsent > 0 && w.list.unsentText(unsent)}
        </p>
      )}
      <ol className="stops">
        {progress.stops.map((each, index) => (
          <StopRow key={each.stop.station} at={each} index={index} go={go} />
        ))}
      </ol>
      {!all && (
        <p className="round-actions">
          <button type="button" className="big" onClick={() => void device.addAll(view)}>
            {w.list.addAll}
          </button>
        </p>
      )}
      <div className="round-foot">
        {ending ? (
          <>
            <p className="hint">{w.list.endOpenHelp}</p>
            <button type="button" className="big" onClick={() => setEnding(false)}>
              {w.list.cancel}
            </button>
            <button type="button" className="big primary" onClick={end}>
              {w.list.endOpen(open)}
            </button>
          </>
        ) : (
          <>
            <button type="button" className={next ? 'big' : 'big primary'} onClick={() => (next ? setEnding(true) : end())}>
              {w.list.end}
            </button>
            {next && (
              <button type="button" className="big primary" onClick={() => go({ station: next.station, trap: next.trapId })}>
                {w.list.next}: {next.station}
              </button>
            )}
          </>
        )}
      </div>
    </main>
  );
}

function StopRow({ at, index, go }: { at: StopProgress; index: number; go: Props['go'] }) {
  const { stop, traps, done } = at;
  const to = (trapId: string) => go({ station: stop.station, trap: trapId });
  const first = traps.find(({ state }) => state.kind === 'open') ?? traps[0];
  const open = traps.filter(({ state }) => state.kind === 'open').length;
  const keepOut = stop.fields.some((field) => field.keepOut.length > 0);
  return (
    <li className={done ? 'is-done' : undefined}>
      <button type="button" className="stop-row" onClick={() => first && to(first.trap.trapId)}>
        <span className="stop-n">{done ? <Tick /> : index + 1}</span>
        <span className="stop-name">
          <strong>{stop.station}</strong>
          <small>{stop.fields.map(({ name }) => name).join(', ')}</small>
        </span>
        <span className="stop-state">
          {keepOut && <em className="warning-word">{w.keepOut.short}</em>}
          {traps.map(({ trap, state }) => state.kind !== 'open' && <span key={trap.trapId}>{stateText(state)}</span>)}
          {open > 0 && <span>{w.list.open(open)}</span>}
        </span>
      </button>
    </li>
  );
}

function stateText(state: Exclude<TrapState, { kind: 'open' }>): string {
  return state.kind === 'saved' ? countText(state.check) : w.list.skipped(w.skipSheet.reasons[state.skip.reason]);
}

function Tick() {
  return (
    <svg className="tick" viewBox="0 0 24 24" role="img" aria-label={w.list.done}>
      <path d="m4 13 5 5L20 6" />
    </svg>
  );
}
