/** What fields share that the same traps inform: worked out once, and kept with the program it is known from. */
import type { PhenologyModel } from '../catalogue/types.ts';
import type { DispersionEstimate } from '../catch/index.ts';
import type { CatchInterval, PooledCatch } from '../catch/types.ts';
import type { LarvaeOutlook } from '../forecast/larvae-outlook.ts';
import type { Evidence } from './types.ts';

export interface SharedPool {
  /** Dispersion the rate was read with. */
  readonly dispersion: DispersionEstimate;
  /** Null when no trap of the design can be used. */
  readonly newest: PooledCatch | null;
  readonly unusable: readonly Evidence[];
  /** Doubts about the traps behind the rate. */
  readonly doubts: readonly Evidence[];
  /** Trend of the catch, and what people should be asked about the visits behind it. */
  readonly context: readonly Evidence[];
}

/** What some traps' moths have left in a field of one weather source since one day. */
export interface SharedOutlook {
  readonly trapIds: readonly string[];
  readonly found: CaughtOutlook | null;
}

export interface CaughtOutlook {
  readonly model: PhenologyModel;
  readonly intervals: readonly CatchInterval[];
  readonly outlook: LarvaeOutlook;
}
