import { characteristicCurve, type ExactCharacteristic, exactCharacteristic } from './exact.ts';
import type { ScoutingPlan } from './plan-for.ts';

/** A plan's operating characteristic and average sample number, ready to draw. */
export interface PlanCurves {
  /** From a field without insects to one that is surely above, evenly spaced. */
  readonly curve: readonly ExactCharacteristic[];
  readonly atM0: ExactCharacteristic;
  readonly atThreshold: ExactCharacteristic;
  readonly atM1: ExactCharacteristic;
}

/** Beyond this many times m₁ nothing changes any more. */
const TO_M1 = 1.6;

export function planCurves(plan: ScoutingPlan, points = 49): PlanCurves {
  const { m0, m1, distribution } = plan.test;
  const top = distribution.kind === 'binomial' ? Math.min(1, TO_M1 * m1) : TO_M1 * m1;
  const means = Array.from({ length: points }, (_, i) => (top * i) / (points - 1));
  const [atM0, atThreshold, atM1] = [m0, plan.threshold, m1].map((mean) => exactCharacteristic(plan, mean));
  return { curve: characteristicCurve(plan, means), atM0: atM0!, atThreshold: atThreshold!, atM1: atM1! };
}
