import type { Day } from '../base/day.ts';
import type { BiofixRule } from '../catalogue/types.ts';
import type { TrapHistory } from '../catch/types.ts';
import { findBiofix, firstCatch } from './biofix.ts';
import { peakSoFar } from './peak.ts';
import { trendOf } from './trend.ts';
import type { FlightSummary } from './types.ts';

/**
 * A season's flight of one insect as its traps saw it by the day `on`. With neither a rule nor a day given by the
 * user there is no biofix: a first catch alone is not taken for one.
 */
export function summariseFlight(
  rule: BiofixRule | null,
  histories: readonly TrapHistory[],
  on: Day,
  override: Day | null = null,
): FlightSummary {
  const first = firstCatch(histories);
  const biofix = rule === null && override === null ? null : findBiofix(rule ?? { kind: 'first-catch' }, histories, override);
  return { firstCatch: first, biofix, peak: peakSoFar(histories), trend: trendOf(histories, on) };
}
