import { Link } from '@tanstack/react-router';
import type { Theme } from '../../browser/preferences.ts';
import { roundWords } from '../../text/round.ts';
import { walkWords as w } from '../../text/walk.ts';
import type { DeviceState } from '../shared/device.ts';
import type { ScoutSearch } from './search.ts';

interface Props {
  readonly state: DeviceState;
  readonly inside: boolean;
  readonly theme: Theme;
  readonly chooseTheme: (theme: Theme) => void;
  readonly go: (to: ScoutSearch) => void;
}

export function ScoutHeader({ state, inside, theme, chooseTheme, go }: Props) {
  const h = roundWords.header;
  const other = theme === 'dark' ? 'light' : 'dark';
  const { pending = 0, photos = 0, refused = 0 } = state.status ?? {};
  const kept = [refused ? h.refused(refused) : '', pending + photos ? h.kept(pending + photos) : ''].filter(Boolean).join(' · ');
  return (
    <header className="round-head">
      <div className="round-head-row">
        {inside ? (
          <button type="button" className="round-where" onClick={() => go({})}>
            <span aria-hidden="true">‹ </span>
            {w.fields}
          </button>
        ) : (
          <Link to="/round" className="round-where">
            <span aria-hidden="true">‹ </span>
            {w.round}
          </Link>
        )}
        <Link to="/round" search={{ show: 'unsent' }} className={`round-unsent${refused ? ' has-refused' : ''}`}>
          <span className="unseen">{h.unsentLabel}: </span>
          {kept || h.allSent}
        </Link>
        <button type="button" className="round-theme" onClick={() => chooseTheme(other)}>
          {h[other]} <span className="unseen">{h.theme}</span>
        </button>
      </div>
    </header>
  );
}
