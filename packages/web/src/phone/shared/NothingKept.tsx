import { roundWords as w } from '../../text/round.ts';
import type { DeviceState, RoundDevice } from './device.ts';

export function NothingKept({ state, device }: { state: DeviceState; device: RoundDevice }) {
  return (
    <main className="round-body notice" id="page" aria-busy={state.asking}>
      <h1>{w.nothing.title}</h1>
      <p>{state.failure === 'refused' ? w.nothing.reader : w.nothing.text}</p>
      <p className="round-actions">
        <button type="button" className="big primary" aria-disabled={state.asking} onClick={() => void device.refresh()}>
          {state.asking ? w.nothing.reading : w.nothing.again}
        </button>
        {state.failure === 'signed-out' ? (
          <a className="big" href="/sign-in">
            {w.unsent.signIn}
          </a>
        ) : (
          <a className="big" href="/">
            {w.nothing.desk}
          </a>
        )}
      </p>
    </main>
  );
}
