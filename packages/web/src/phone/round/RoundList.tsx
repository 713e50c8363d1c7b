import type { IsoDay, RoundStop, RoundView } from '@duskwatch/core';
import { useState } from 'react';
import { shortDay } from '../../format/day.ts';
import { roundWords as w } from '../../text/round.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import { wayText } from '../shared/figures.ts';
import { nextPlace, type Progress } from '../shared/progress.ts';
import { Ending, typedHere } from './Ending.tsx';
import { StopRow } from './StopRow.tsx';
import type { RoundSearch } from './search.ts';
import { Way } from './Way.tsx';

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
  const nextStop = next && progress.stops.find(({ stop }) => stop.station === next.station)?.stop;
  if (ending) return <Ending {...{ state, device, progress, open, go }} back={() => setEnding(false)} />;
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
          <StopRow key={each.stop.station} at={each} index={index} on={view.on} drafts={state.drafts} go={go} />
        ))}
      </ol>
      {!all && (
        <p className="round-actions">
          <button type="button" className="big" onClick={() => void device.addAll(view)}>
            {w.list.addAll}
          </button>
        </p>
      )}
      {next && nextStop && <NextStop stop={nextStop} progress={progress} state={state} />}
      <div className="round-foot">
        <button
          type="button"
          className={next ? 'big' : 'big primary'}
          onClick={() => (next || typedHere(state, progress).length > 0 ? setEnding(true) : void device.end())}
        >
          {w.list.end}
        </button>
        {next && (
          <button type="button" className="big primary" onClick={() => go({ station: next.station, trap: next.trapId })}>
            {w.list.next}: {next.station}
          </button>
        )}
      </div>
    </main>
  );
}

function NextStop({ stop, progress, state }: Pick<Props, 'progress' | 'state'> & { readonly stop: RoundStop }) {
  return (
    <section className="next-stop" aria-label={`${w.list.next}: ${stop.station}`}>
      <p>
        {w.list.next}: <b>{stop.station}</b>
      </p>
      <Way to={stop} progress={progress} state={state} />
    </section>
  );
}
