/** The season's catch as a line: one rate for every stretch in which the same visits speak. */
import { nearbyThreshold } from '../advice/catch-finding.ts';
import { historyOf, type Prepared, trapsThisSeason } from '../advice/prepare.ts';
import { ratePoints } from '../advice/rate-points.ts';
import { cellRules, ruleForDesign } from '../advice/rules.ts';
import { visitDispersion } from '../advice/visit-dispersion.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { FieldRecord, TrapDesign } from '../records/schema.ts';
import type { RateLine } from './schema.ts';

/** One line per trap design that informs the field this season: designs are never pooled. */
export function rateLines(prepared: Prepared, field: FieldRecord, insect: string): RateLine[] {
  const rules = cellRules(prepared, field, insect).catch;
  const byDesign = new Map<TrapDesign, CatchInterval[]>();
  for (const trap of trapsThisSeason(prepared, field, insect)) {
    const intervals = byDesign.get(trap.design) ?? [];
    intervals.push(...historyOf(prepared, trap).intervals);
    byDesign.set(trap.design, intervals);
  }
  const lines: RateLine[] = [];
  for (const [design, intervals] of byDesign) {
    const points = ratePoints(intervals, visitDispersion(prepared, insect, design));
    if (points.length === 0) continue;
    const rule = ruleForDesign(rules, design);
    lines.push({
      design,
      from: points[0]!.from,
      to: points.at(-1)!.to,
      points,
      thresholdPerNight: rule && nearbyThreshold(prepared, field, rule).thresholdPerNight,
    });
  }
  return lines;
}
