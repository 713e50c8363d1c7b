import type { IsoDay, RoundTrap } from '@duskwatch/core';
import type { DeviceState, RoundDevice } from '../shared/device.ts';
import type { Progress, StopProgress } from '../shared/progress.ts';
import type { ToastMessage } from '../shared/Toast.tsx';
import type { RoundSearch } from './search.ts';

/** What the page of a stop and the pages of its traps go by. */
export interface StopProps {
  readonly state: DeviceState;
  readonly device: RoundDevice;
  readonly on: IsoDay;
  readonly progress: Progress;
  readonly at: StopProgress;
  readonly trap: RoundTrap;
  readonly go: (to: RoundSearch) => void;
  readonly tell: (told: ToastMessage) => void;
}
