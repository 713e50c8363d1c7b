import '../shared/index.css';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useCallback, useEffect, useState } from 'react';
import { Bar } from '../../shared/bar/Bar.tsx';
import { walkWords as w } from '../../text/walk.ts';
import { useTitle } from '../../ui/media.ts';
import { today } from '../shared/device.ts';
import { NothingKept } from '../shared/NothingKept.tsx';
import { registerServiceWorker } from '../shared/register.ts';
import { Toast, type ToastMessage } from '../shared/Toast.tsx';
import { useNight } from '../shared/useNight.ts';
import { useDevice } from '../shared/useRound.ts';
import { progressOf, type Walk, walkId } from '../shared/walk.ts';
import { BeforePage } from './BeforePage.tsx';
import { ChoosePage } from './ChoosePage.tsx';
import { ScoutHeader } from './ScoutHeader.tsx';
import type { ScoutSearch } from './search.ts';
import { WalkPage } from './WalkPage.tsx';

/** Sampling a field, unit by unit, with a clear answer after each: works without signal from start to finish. */
export function ScoutPage() {
  const search = useSearch({ from: '/scout' });
  const navigate = useNavigate();
  const [state, device] = useDevice();
  const [told, setTold] = useState<ToastMessage | null>(null);
  const [last, setLast] = useState<Walk | null>(null);
  const { scouting } = state;
  const field = scouting?.view.fields.find(({ fieldId }) => fieldId === search.field);
  const pair = field?.pairs.find(({ insect }) => insect === search.insect);
  const walk = state.walks.find(({ id }) => id === walkId(search.field ?? '', search.insect ?? ''));
  const [theme, chooseTheme] = useNight(field ?? scouting?.view.fields[0]);
  useTitle(w.title);
  useEffect(() => void registerServiceWorker(), []);

  const go = useCallback(
    (to: ScoutSearch) => {
      void navigate({ to: '/scout', search: to });
      scrollTo(0, 0);
    },
    [navigate],
  );
  const forget = useCallback(() => setTold(null), []);

  const body = () => {
    if (!state.opened) return <main className="round-body" id="page" aria-busy="true" aria-label={w.opening} />;
    if (!scouting) return state.failure ? <NothingKept {...{ state, device }} /> : <Nothing asking={state.asking} />;
    const on = today(scouting, state.clock);
    if (walk) {
      return <WalkPage key={walk.id} {...{ walk, device, go }} view={scouting.view} tell={setTold} ended={setLast} />;
    }
    if (field && pair) {
      return (
        <BeforePage key={walkId(field.fieldId, pair.insect)} {...{ state, device, field, pair, on, go }} view={scouting.view} />
      );
    }
    return <ChoosePage {...{ state, device, on, go, last }} view={scouting.view} tell={setTold} />;
  };

  return (
    <div className={`round scout${walk ? ` ground-${progressOf(walk).at.judgement}` : ''}`}>
      <a className="skip" href="#page">
        {w.skip}
      </a>
      <ScoutHeader {...{ state, theme, chooseTheme, go }} inside={Boolean(field && pair)} />
      {body()}
      <Toast told={told} forget={forget} />
      {!walk && !pair && <Bar entries={state.entries} />}
    </div>
  );
}

function Nothing({ asking }: { asking: boolean }) {
  return (
    <main className="round-body notice" id="page" aria-busy={asking}>
      <h1>{w.nothing.title}</h1>
      <p>{asking ? w.opening : w.nothing.text}</p>
      <p className="round-actions">
        <Link to="/round" className="big">
          {w.round}
        </Link>
      </p>
    </main>
  );
}
