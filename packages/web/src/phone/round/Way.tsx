import type { RoundStop } from '@duskwatch/core';
import { driveWords } from '../../text/drive.ts';
import type { DeviceState } from '../shared/device.ts';
import { askHere, useHere } from '../shared/here.ts';
import { lastStop, type Progress } from '../shared/progress.ts';
import { mapHref, wayFrom } from '../shared/way.ts';

interface Props {
  readonly to: RoundStop;
  readonly progress: Progress;
  readonly state: DeviceState;
  /** Beside much else: without asking where the phone is. */
  readonly brief?: boolean;
}

/** How far the next stop is and which way, from the last one or from where the phone is; and the phone's own map. */
export function Way({ to, progress, state, brief = false }: Props) {
  const w = driveWords.way;
  const here = useHere();
  const from = lastStop(progress, state.written);
  const way = from && from.station !== to.station ? wayFrom(from, to) : null;
  const own = here.place && wayFrom(here.place, to);
  const href = mapHref(to, to.station, navigator.userAgent);
  if (href === null) return <p className="way">{w.noPlace}</p>;
  return (
    <div className="way">
      <p role="status">
        {own ? w.fromYou(own.distance, own.wind) : way ? w.from(way.distance, way.wind, from!.station) : ''}
        <small>{here.state === 'failed' ? w.failed : w.caution}</small>
      </p>
      {!own && !brief && (
        <button type="button" onClick={askHere} aria-disabled={here.state === 'finding'}>
          {here.state === 'finding' ? w.finding : w.here}
        </button>
      )}
      <a href={href} aria-label={w.mapLabel(to.station)}>
        {w.map}
      </a>
    </div>
  );
}
