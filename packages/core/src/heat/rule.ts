import { type Problem, type Result, refuse } from '../base/problem.ts';
import { celsius } from '../base/temperature.ts';
import type { HeatRule } from './types.ts';

/** A heat rule in °C, its cutoff as numbers. */
export interface Thresholds {
  readonly lowerC: number;
  /** +Infinity when there is no upper threshold or no cutoff. */
  readonly upperC: number;
  /** How many times the heat above the upper threshold is taken off. */
  readonly excess: number;
  /** How many times the whole span between the thresholds is taken off for the time above the upper one. */
  readonly timeAbove: number;
}

/**
 * With H(T) the heat above T, the cutoffs take off H(L):
 * horizontal H(U); intermediate 2·H(U), down to 0 for a day; vertical H(U) and (U − L) for the share of the day above U,
 * so that only time between the thresholds counts.
 *
 * Zalom et al. 1983, UC Leaflet 21373; Roltsch et al. 1999, Int. J. Biometeorol. 42:169–176.
 */
export function thresholdsOf(rule: HeatRule): Thresholds {
  const lowerC = celsius(rule.lower, rule.unit);
  const cut = rule.method === 'modified-average' ? 'horizontal' : rule.cutoff;
  if (rule.upper === null || cut === 'none') return { lowerC, upperC: Number.POSITIVE_INFINITY, excess: 0, timeAbove: 0 };
  return {
    lowerC,
    upperC: celsius(rule.upper, rule.unit),
    excess: cut === 'intermediate' ? 2 : 1,
    timeAbove: cut === 'vertical' ? 1 : 0,
  };
}

/** Refuses a rule that no day can be summed by, with what to change. */
export function checkHeatRule(rule: HeatRule): Result<HeatRule> {
  const problems: Problem[] = [];
  const unit = `°${rule.unit}`;
  if (!Number.isFinite(rule.lower))
    problems.push({
      where: { column: 'lower' },
      got: String(rule.lower),
      expected: `a temperature in ${unit}`,
      fix: 'give the lower threshold',
    });
  if (rule.upper !== null && !(rule.upper > rule.lower))
    problems.push({
      where: { column: 'upper' },
      got: `${rule.upper} ${unit}`,
      expected: `a temperature above the lower threshold of ${rule.lower} ${unit}`,
      fix: 'give both thresholds in the same unit, the lower one first',
    });
  if (rule.cutoff !== 'none' && rule.upper === null)
    problems.push({
      where: { column: 'cutoff' },
      got: rule.cutoff,
      expected: 'an upper threshold to cut off at',
      fix: 'give the upper threshold, or use no cutoff',
    });
  if (rule.method === 'modified-average' && (rule.cutoff === 'intermediate' || rule.cutoff === 'vertical'))
    problems.push({
      where: { column: 'cutoff' },
      got: `${rule.cutoff} with the modified average`,
      expected: 'horizontal or none: the modified average already holds both extremes within the thresholds',
      fix: 'use the horizontal cutoff, or a sine or triangle method',
    });
  return problems.length === 0 ? { ok: true, value: rule } : refuse(...problems);
}
