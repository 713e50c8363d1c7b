import type { Theme } from '../../browser/preferences.ts';
import { roundWords as w } from '../../text/round.ts';
import type { DeviceState } from '../shared/device.ts';
import type { Progress } from '../shared/progress.ts';
import type { RoundSearch } from './search.ts';

interface Props {
  readonly state: DeviceState;
  readonly progress: Progress | null;
  readonly search: RoundSearch;
  readonly go: (to: RoundSearch) => void;
  readonly theme: Theme;
  readonly chooseTheme: (theme: Theme) => void;
}

export function RoundHeader({ state, progress, search, go, theme, chooseTheme }: Props) {
  const other = theme === 'dark' ? 'light' : 'dark';
  const at = progress?.stops.findIndex(({ stop }) => stop.station === search.station) ?? -1;
  const done = progress ? progress.saved + progress.skipped : 0;
  return (
    <header className="round-head">
      <div className="round-head-row">
        {progress && at >= 0 ? (
          <button type="button" className="round-where" onClick={() => go({})}>
            <span aria-hidden="true">‹ </span>
            {w.header.stop(at + 1, progress.stops.length)}
            <span className="unseen">, {w.header.list}</span>
          </button>
        ) : (
          <span className="round-where">{w.header.label}</span>
        )}
        <Unsent state={state} go={go} />
        <button type="button" className="round-theme" onClick={() => chooseTheme(other)}>
          {w.header[other]} <span className="unseen">{w.header.theme}</span>
        </button>
      </div>
      {progress && (
        <progress
          className="round-progress"
          max={Math.max(1, progress.total)}
          value={done}
          aria-label={w.header.progress(done, progress.total)}
        />
      )}
    </header>
  );
}

function Unsent({ state, go }: Pick<Props, 'state' | 'go'>) {
  if (!state.status) return null;
  const { pending, photos, refused } = state.status;
  const kept = pending + photos;
  const text = [refused ? w.header.refused(refused) : '', kept ? w.header.kept(kept) : ''].filter(Boolean).join(' · ');
  return (
    <button type="button" className={`round-unsent${refused ? ' has-refused' : ''}`} onClick={() => go({ show: 'unsent' })}>
      <span className="unseen">{w.header.unsentLabel}: </span>
      {text || w.header.allSent}
    </button>
  );
}
