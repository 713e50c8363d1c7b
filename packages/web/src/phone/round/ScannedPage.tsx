import type { RoundView } from '@duskwatch/core';
import { shortDay } from '../../format/day.ts';
import { roundWords as w } from '../../text/round.ts';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import { local } from '../shared/figures.ts';
import { Cautions } from './StartPage.tsx';
import type { RoundSearch } from './search.ts';

/** A label's code was scanned, and the round under way does not pass that trap: or there is no round, or no such trap. */
export function ScannedPage(props: {
  state: DeviceState;
  device: RoundDevice;
  view: RoundView;
  trapId: string;
  go: (to: RoundSearch) => void;
}) {
  const { state, device, view, trapId, go } = props;
  const stop = view.stops.find(({ traps }) => traps.some((trap) => trap.trapId === trapId));
  const trap = stop?.traps.find((each) => each.trapId === trapId);
  if (!stop || !trap) {
    return (
      <main className="round-body notice" id="page" aria-busy={state.asking}>
        <h1>{w.scanned.unknown(trapId)}</h1>
        <p>{w.scanned.unknownWhy}</p>
        {state.round !== null && <p>{w.scanned.underWay}</p>}
        <p className="round-actions">
          <button type="button" className="big primary" aria-disabled={state.asking} onClick={() => void device.refresh()}>
            {state.asking ? w.nothing.reading : w.scanned.readAgain}
          </button>
          <button type="button" className="big" onClick={() => go({})}>
            {w.scanned.toRound}
          </button>
        </p>
      </main>
    );
  }
  const open = async () => {
    await device.visit({ station: stop.station, trapId }, view);
    go({ station: stop.station, trap: trapId });
  };
  return (
    <main className="round-body start" id="page">
      <div className="round-title">
        <h1>{trapId}</h1>
        <p>
          {stop.station} · {local(trap.insectName)}
        </p>
      </div>
      <p className="start-sum">
        <strong>{trap.due ? w.scanned.due : w.scanned.notDue(shortDay(trap.checkDue))}</strong>
        <br />
        {state.round ? w.scanned.joins : w.scanned.begins}
      </p>
      {state.round === null && <Cautions stops={[stop]} />}
      <div className="round-foot">
        <button type="button" className="big" onClick={() => go({})}>
          {w.scanned.toRound}
        </button>
        <button type="button" className="big primary" onClick={() => void open()}>
          {w.scanned.check}
        </button>
      </div>
    </main>
  );
}
