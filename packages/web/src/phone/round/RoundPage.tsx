import '../shared/index.css';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useCallback, useEffect, useState } from 'react';
import { Bar } from '../../shared/bar/Bar.tsx';
import { roundWords as w } from '../../text/round.ts';
import { useTitle } from '../../ui/media.ts';
import type { RoundDevice } from '../shared/device.ts';
import { NothingKept } from '../shared/NothingKept.tsx';
import type { Round } from '../shared/progress.ts';
import { registerServiceWorker, takeUpdates } from '../shared/register.ts';
import { Toast, type ToastMessage } from '../shared/Toast.tsx';
import { useNight } from '../shared/useNight.ts';
import { useDevice, useRoundNow } from '../shared/useRound.ts';
import { RoundHeader } from './RoundHeader.tsx';
import { RoundList } from './RoundList.tsx';
import { ScannedPage } from './ScannedPage.tsx';
import { StartPage } from './StartPage.tsx';
import { StopPage } from './StopPage.tsx';
import type { RoundSearch } from './search.ts';
import { UnsentPage } from './UnsentPage.tsx';

/** The phone's own app within the app: everything on it works without signal. */
export function RoundPage() {
  const search = useSearch({ from: '/round' });
  const navigate = useNavigate();
  const [state, device] = useDevice();
  const { on, view, progress } = useRoundNow(state);
  const [told, setTold] = useState<ToastMessage | null>(null);
  const { kept, round } = state;
  const stop = view?.stops.find(({ station }) => station === search.station);
  const [theme, chooseTheme] = useNight(stop ?? view?.stops[0]);
  useTitle(w.title);
  useEffect(() => void registerServiceWorker(), []);
  // Not while it reads from the server, either.
  useUpdateBetweenRounds(device, state.opened && !state.asking, round);

  const go = useCallback(
    (to: RoundSearch) => {
      if (!to.trap) setTold(null);
      void navigate({ to: '/round', search: to });
      scrollTo(0, 0);
    },
    [navigate],
  );
  const forget = useCallback(() => setTold(null), []);

  const body = () => {
    if (!state.opened) return <main className="round-body" id="page" aria-busy="true" aria-label={w.opening} />;
    if (search.show === 'unsent') return <UnsentPage {...{ state, device, view, go }} tell={setTold} />;
    if (!kept || !view || !on) return <NothingKept {...{ state, device }} />;
    const scanned = search.trap !== undefined && search.station === undefined;
    const at = progress?.stops.find(({ stop }) =>
      scanned ? stop.traps.some(({ trapId }) => trapId === search.trap) : stop.station === search.station,
    );
    if (scanned && !at) return <ScannedPage {...{ state, device, view, go }} trapId={search.trap!} />;
    if (!round || !progress) return <StartPage {...{ state, device, view }} planned={search.stops?.split(';') ?? null} />;
    const trap = at?.stop.traps.find(({ trapId }) => trapId === search.trap);
    if (at && trap) {
      return (
        <StopPage
          key={`${at.stop.station} ${trap.trapId}`}
          {...{ state, device, view, on, progress, at, trap, go }}
          tell={setTold}
        />
      );
    }
    return <RoundList {...{ state, device, view, on, progress, go }} />;
  };

  return (
    <div className="round">
      <a className="skip" href="#page">
        {w.skip}
      </a>
      <RoundHeader {...{ state, progress, on, search, go, theme, chooseTheme }} />
      {body()}
      <Toast told={told} forget={forget} />
      {search.trap === undefined && <Bar entries={state.entries} />}
    </div>
  );
}

/** A new version of the app takes over only while no round is under way, so that nothing changes in a scout's hands. */
function useUpdateBetweenRounds(device: RoundDevice, idle: boolean, round: Round | null) {
  useEffect(() => {
    if (!idle || round !== null) return;
    return takeUpdates(() => device.isBetweenRounds());
  }, [device, idle, round]);
}
