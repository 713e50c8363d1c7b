import type { IsoDay } from '@duskwatch/core';
import { dayText } from '../../format/day.ts';
import { driveWords } from '../../text/drive.ts';
import { daysAhead } from '../shared/clock.ts';
import type { DeviceState } from '../shared/device.ts';

/** Where the phone's own day is another than the one written. */
export function ClockNote({ state, on }: { readonly state: DeviceState; readonly on: IsoDay }) {
  const w = driveWords.clock;
  const days = state.kept?.pinnedOn ? 0 : daysAhead(state.clock, Date.now());
  if (days === 0) return null;
  return (
    <p className="clock-note">
      {days > 0 ? w.ahead(days) : w.behind(-days)} {w.written(dayText(on))}
    </p>
  );
}
