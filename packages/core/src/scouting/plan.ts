/** A sequential test as it is walked: whole insects, a smallest and a largest sample. */
import type { SequentialTest } from './wald.ts';

export interface SequentialPlan {
  readonly test: SequentialTest;
  /** No stop before this many units, so that one corner of the field never decides alone. */
  readonly minSamples: number;
  /** With this many units and no line crossed, the plan ends undecided. */
  readonly maxSamples: number;
  /** Units taken at one place. The plan is judged when they are done: what stands there stands together. */
  readonly perPlace: number;
  /** ρ, correlation of any two units at one place: 0 when infested ones stand anywhere, 1 when places are all or none. */
  readonly correlation: number;
}

export type Judgement = 'below' | 'above' | 'go-on' | 'undecided-at-limit';

/**
 * What the counts of the units examined so far, in the order walked, say. The first line crossed ends the plan:
 * units examined after it change nothing.
 */
export function judge(plan: SequentialPlan, samples: readonly number[]): Judgement {
  let total = 0;
  for (const [i, count] of samples.slice(0, plan.maxSamples).entries()) {
    total += count;
    const { below, above } = stopLine(plan, i + 1);
    if (below !== null && total <= below) return 'below';
    if (above !== null && total >= above) return 'above';
  }
  return samples.length < plan.maxSamples ? 'go-on' : 'undecided-at-limit';
}

/** Totals at which to stop after n units; null: not possible there. */
export interface StopLine {
  readonly samples: number;
  /** Stop, below, at this total or fewer. */
  readonly below: number | null;
  /** Stop, above, at this total or more. */
  readonly above: number | null;
}

export function stopLine(plan: SequentialPlan, samples: number): StopLine {
  if (nextJudged(plan, samples) !== samples) return { samples, below: null, above: null };
  const { test } = plan;
  const below = Math.floor(test.slope * samples + test.lowerIntercept);
  const above = Math.ceil(test.slope * samples + test.upperIntercept);
  const possible = test.distribution.kind !== 'binomial' || above <= samples;
  return { samples, below: below >= 0 ? below : null, above: possible ? above : null };
}

/** The number of units, this one or the next, at which the plan is judged. */
export function nextJudged({ minSamples, maxSamples, perPlace }: SequentialPlan, samples: number): number {
  return Math.min(maxSamples, Math.ceil(Math.max(samples, minSamples) / perPlace) * perPlace);
}

/** The totals at every number of units at which the plan is judged. */
export function stopLines(plan: SequentialPlan): StopLine[] {
  const lines: StopLine[] = [];
  for (let n = nextJudged(plan, 1); lines.at(-1)?.samples !== n; n = nextJudged(plan, n + 1)) lines.push(stopLine(plan, n));
  return lines;
}
