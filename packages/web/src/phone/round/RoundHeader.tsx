import type { IsoDay } from '@duskwatch/core';
import type { Theme } from '../../browser/preferences.ts';
import { shortDay } from '../../format/day.ts';
import { driveWords } from '../../text/drive.ts';
import { roundWords as w } from '../../text/round.ts';
import { visitWords } from '../../text/visit.ts';
import type { DeviceState } from '../shared/device.ts';
import type { Progress } from '../shared/progress.ts';
import type { RoundSearch } from './search.ts';

interface Props {
  readonly state: DeviceState;
  readonly progress: Progress | null;
  /** The day that is written on what is saved. */
  readonly on: IsoDay | null;
  readonly search: RoundSearch;
  readonly go: (to: RoundSearch) => void;
  readonly theme: Theme;
  readonly chooseTheme: (theme: Theme) => void;
}

export function RoundHeader({ state, progress, on, search, go, theme, chooseTheme }: Props) {
  const other = theme === 'dark' ? 'light' : 'dark';
  const at = progress?.stops.findIndex(({ stop }) => stop.station === search.station) ?? -1;
  const atStop = at >= 0 && search.trap !== undefined;
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
        {atStop && on && <span className="round-day">{visitWords.countFor(shortDay(on))}</span>}
        <Unsent state={state} go={go} short={atStop} />
        {!atStop && (
          <button type="button" className="round-theme" onClick={() => chooseTheme(other)}>
            {w.header[other]} <span className="unseen">{w.header.theme}</span>
          </button>
        )}
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

/** @param short while something else needs the room; the whole is said to whoever listens */
function Unsent({ state, go, short }: Pick<Props, 'state' | 'go'> & { readonly short: boolean }) {
  if (!state.status) return null;
  const { pending, photos, refused } = state.status;
  const kept = pending + photos;
  const whole = [refused ? w.header.refused(refused) : '', kept ? w.header.kept(kept) : ''].filter(Boolean).join(' · ');
  const brief = [refused ? w.header.refused(refused) : '', kept ? w.header.keptShort(kept) : ''].filter(Boolean).join(' · ');
  const why = trouble(state);
  const text = short ? brief || (why ? '' : w.header.sentShort) : whole || w.header.allSent;
  return (
    <button
      type="button"
      className={`round-unsent${refused ? ' has-refused' : ''}`}
      aria-label={`${w.header.unsentLabel}: ${why ? `${why}, ` : ''}${whole || w.header.allSent}`}
      onClick={() => go({ show: 'unsent' })}
    >
      {[why, text].filter(Boolean).join(', ')}
    </button>
  );
}

/** Signed out is not without signal: one of them ends by itself. */
function trouble({ failure, status }: DeviceState): string {
  if (failure === 'signed-out' || status?.trouble === 'signed-out') return driveWords.signal.signedOut;
  return failure === 'unreachable' || status?.trouble === 'unreachable' ? driveWords.signal.none : '';
}
