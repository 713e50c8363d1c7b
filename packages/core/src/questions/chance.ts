import { QUALITY_ASSUMPTIONS } from './assumptions.ts';

/** A season's chance of a false alarm shared out evenly over the looks of one kind (Bonferroni). */
export interface Chance {
  readonly probability: number;
  readonly inSeason: number;
}

/** Null unless one look of `looks` is so odd that a sound season would hardly show it. */
export function oddEnough(probability: number, looks: number): Chance | null {
  const inSeason = Math.min(1, probability * looks);
  return inSeason <= QUALITY_ASSUMPTIONS.falseAlarmsPerKind.value ? { probability, inSeason } : null;
}
