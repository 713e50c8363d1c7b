import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { type DeviceState, RoundDevice, today, viewOn } from './device.ts';
import { progressOf } from './progress.ts';

let shared: RoundDevice | null = null;

/** One device for all pages of the round: the outbox is opened once. */
function roundDevice(): RoundDevice {
  if (!shared) {
    shared = new RoundDevice();
    void shared.open();
  }
  return shared;
}

export function useDevice(): [DeviceState, RoundDevice] {
  const device = roundDevice();
  return [useSyncExternalStore(device.subscribe, device.snapshot), device];
}

/** The round as it stands now: its view, and how far it has got when one is under way. */
export function useRoundNow(state: DeviceState) {
  const { kept, clock, round, entries, written } = state;
  const on = useToday(kept, clock);
  // A round keeps the view it began with: its own checks must not make its stops vanish.
  const upto = round?.afterPlace ?? Infinity;
  const view = useMemo(
    () => (kept && on ? viewOn(kept, round?.startedOn ?? on, entries, upto) : null),
    [kept, on, round?.startedOn, entries, upto],
  );
  const progress = useMemo(() => (view && round ? progressOf(view, round, written) : null), [view, round, written]);
  return { on, view, progress };
}

/** Today, read again whenever the phone is taken out of the pocket. */
function useToday(kept: DeviceState['kept'], clock: DeviceState['clock']) {
  const [, look] = useState(0);
  useEffect(() => {
    const again = () => look((times) => times + 1);
    document.addEventListener('visibilitychange', again);
    return () => document.removeEventListener('visibilitychange', again);
  }, []);
  return kept && today(kept, clock);
}
