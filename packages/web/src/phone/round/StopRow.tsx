import type { IsoDay } from '@duskwatch/core';
import { holdsSomething } from '../../shared/check/unsaved-check.ts';
import { driveWords } from '../../text/drive.ts';
import { roundWords as w } from '../../text/round.ts';
import type { DeviceState } from '../shared/device.ts';
import { countText, whole } from '../shared/figures.ts';
import type { StopProgress, TrapState } from '../shared/progress.ts';
import { DueWords } from './DueWords.tsx';
import type { RoundSearch } from './search.ts';

interface Props {
  readonly at: StopProgress;
  readonly index: number;
  readonly on: IsoDay;
  readonly drafts: DeviceState['drafts'];
  readonly go: (to: RoundSearch) => void;
}

/** One stop of the round under way: why it is due while it is open, then what became of each trap. */
export function StopRow({ at, index, on, drafts, go }: Props) {
  const { stop, traps, done } = at;
  const first = traps.find(({ state }) => state.kind === 'open') ?? traps[0];
  const open = traps.filter(({ state }) => state.kind === 'open');
  const passedBy = done && traps.every(({ state }) => state.kind === 'skipped');
  const keepOut = stop.fields.some((field) => field.keepOut.length > 0);
  const asked = new Set(open.map(({ trap }) => trap.trapId));
  return (
    <li className={passedBy ? 'is-skipped' : done ? 'is-done' : undefined}>
      <button type="button" className="stop-row" onClick={() => first && go({ station: stop.station, trap: first.trap.trapId })}>
        <span className="stop-n">{passedBy ? <PassedBy /> : done ? <Tick /> : index + 1}</span>
        <span className="stop-name">
          <strong>{stop.station}</strong>
          {open.length > 0 && <DueWords stop={stop} asked={({ trapId }) => asked.has(trapId)} on={on} />}
        </span>
        <span className="stop-state">
          {keepOut && <em className="warning-word">{w.keepOut.short}</em>}
          {traps.map(({ trap, state }) => state.kind !== 'open' && <span key={trap.trapId}>{stateText(state)}</span>)}
          {open.flatMap(({ trap }) => {
            const typed = typedText(drafts[trap.trapId]);
            return typed === null ? [] : [<b key={trap.trapId}>{typed}</b>];
          })}
          {open.length > 0 && <span>{w.list.open(open.length)}</span>}
        </span>
      </button>
    </li>
  );
}

export function typedText(kept: DeviceState['drafts'][string] | undefined): string | null {
  if (!kept || !holdsSomething(kept.draft)) return null;
  const { target } = kept.draft;
  return target === '' ? driveWords.typed.something : driveWords.typed.row(whole(Number(target)));
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

function PassedBy() {
  return (
    <svg className="tick passed-by" viewBox="0 0 24 24" role="img" aria-label={w.list.passedBy}>
      <circle cx="12" cy="12" r="9" />
      <path d="m6 18L18 6" />
    </svg>
  );
}
