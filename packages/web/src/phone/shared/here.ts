/** Where the phone is: asked only when somebody taps, kept nowhere, and forgotten after some minutes. */
import { useSyncExternalStore } from 'react';

interface Here {
  readonly state: 'unasked' | 'finding' | 'failed' | 'found';
  readonly place: { readonly latitude: number; readonly longitude: number } | null;
}

const FRESH_MS = 5 * 60_000;
const ASK = { timeout: 15_000, maximumAge: 60_000, enableHighAccuracy: true };

const UNASKED: Here = { state: 'unasked', place: null };
let here = UNASKED;
const listeners = new Set<() => void>();
let forgetting: ReturnType<typeof setTimeout> | undefined;

function tell(next: Here): void {
  here = next;
  for (const listener of listeners) listener();
}

export function askHere(): void {
  if (!navigator.geolocation) {
    tell({ state: 'failed', place: null });
    return;
  }
  tell({ state: 'finding', place: here.place });
  navigator.geolocation.getCurrentPosition(
    ({ coords: { latitude, longitude } }) => {
      tell({ state: 'found', place: { latitude, longitude } });
      clearTimeout(forgetting);
      forgetting = setTimeout(() => tell(UNASKED), FRESH_MS);
    },
    () => tell({ state: 'failed', place: null }),
    ASK,
  );
}

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => void listeners.delete(listener);
};

export const useHere = (): Here => useSyncExternalStore(subscribe, () => here);
