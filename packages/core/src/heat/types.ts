import type { TemperatureUnit } from '../units/temperature.ts';

export const HEAT_METHODS = [
  'simple-average',
  'modified-average',
  'single-sine',
  'double-sine',
  'single-triangle',
  'double-triangle',
] as const;
export const HEAT_CUTOFFS = ['none', 'horizontal', 'intermediate', 'vertical'] as const;
export type HeatMethod = (typeof HEAT_METHODS)[number];
export type HeatCutoff = (typeof HEAT_CUTOFFS)[number];

/** How heat is counted. A model is valid only with the method and thresholds it was published with. */
export interface HeatRule {
  readonly method: HeatMethod;
  readonly cutoff: HeatCutoff;
  readonly lower: number;
  /** Null when the model has no upper threshold. */
  readonly upper: number | null;
  /** Unit of the thresholds, and of the degree-days that the model's events are stated in. */
  readonly unit: TemperatureUnit;
}
