/** Where no figure is published that a sample could be held against: count, and say how sure the share is. */
import type { Assumption, InfestationRule } from '../catalogue/types.ts';
import { PLAN_ASSUMPTIONS } from './assumptions.ts';
import type { WalkedPlaces } from './plan-for.ts';

export interface CountingPlan {
  readonly insect: string;
  readonly unit: InfestationRule['unit'];
  readonly units: number;
  readonly walk: WalkedPlaces;
  /** ρ, correlation of any two units at one place, by which the share is less sure than its units alone make it. */
  readonly correlation: number;
  readonly assumed: readonly Assumption[];
}

/** A fixed sample, taken in as many places as any other and one lap of them. */
export function countingPlan(insect: string): CountingPlan {
  const { countedUnits, placesWalked, placeCorrelation } = PLAN_ASSUMPTIONS;
  const perPlace = Math.ceil(countedUnits.value / placesWalked.value);
  return {
    insect,
    unit: 'plants',
    units: perPlace * placesWalked.value,
    walk: { places: placesWalked.value, perPlace },
    correlation: placeCorrelation.value,
    assumed: [countedUnits, placesWalked, placeCorrelation],
  };
}
