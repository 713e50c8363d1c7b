/** Where somebody stands who walks a plan: what the units so far say, and what is left to do. */
import { type Judgement, judge, nextJudged, type SequentialPlan, type StopLine, stopLine } from './plan.ts';
import type { ScoutingPlan, WalkedPlaces } from './plan-for.ts';

export interface Standpoint {
  readonly judgement: Judgement;
  readonly samples: number;
  /** Insects, or infested units. */
  readonly total: number;
  /** Units with any. */
  readonly infested: number;
  /** Units left at the most; 0 when the plan has ended. */
  readonly mostMore: number;
  /** Clean units in a row that would end it below; null when even those would not. */
  readonly cleanToBelow: number | null;
  /** Infested units in a row, with one insect each, that would end it above; null when even those would not. */
  readonly infestedToAbove: number | null;
}

/** What the counts of the units examined so far, in the order walked, leave to do. */
export function standpoint(plan: SequentialPlan, counts: readonly number[]): Standpoint {
  const samples = counts.length;
  const total = counts.reduce((sum, count) => sum + count, 0);
  const judgement = judge(plan, counts);
  const open = judgement === 'go-on';
  return {
    judgement,
    samples,
    total,
    infested: counts.filter((count) => count > 0).length,
    mostMore: open ? plan.maxSamples - samples : 0,
    cleanToBelow: open ? unitsUntil('below', plan, samples, total, 0) : null,
    infestedToAbove: open ? unitsUntil('above', plan, samples, total, 1) : null,
  };
}

/** Further units, each with so many insects, until the plan ends with an answer; null when it ends with the other one. */
function unitsUntil(answer: 'below' | 'above', plan: SequentialPlan, samples: number, total: number, each: 0 | 1): number | null {
  for (let n = nextJudged(plan, samples + 1); n > samples; n = n < plan.maxSamples ? nextJudged(plan, n + 1) : 0) {
    const { below, above } = stopLine(plan, n);
    const then = total + each * (n - samples);
    if (below !== null && then <= below) return answer === 'below' ? n - samples : null;
    if (above !== null && then >= above) return answer === 'above' ? n - samples : null;
  }
  return null;
}

/** The place at which the next unit is taken: lap and place from 1, and how many units are still to be taken there. */
export interface PlaceNow {
  readonly lap: number;
  readonly place: number;
  readonly left: number;
}

export function placeNow({ places, perPlace }: WalkedPlaces, samples: number): PlaceNow {
  const visit = Math.floor(samples / perPlace);
  return { lap: Math.floor(visit / places) + 1, place: (visit % places) + 1, left: perPlace - (samples % perPlace) };
}

/** One line of a sheet of paper: the units of one place, and what the totals after them say. */
export interface SheetLine extends StopLine {
  readonly lap: number;
  readonly place: number;
  /** Units taken here. */
  readonly units: number;
}

export function sheetLines(plan: ScoutingPlan): SheetLine[] {
  const lines: SheetLine[] = [];
  for (let before = 0; before < plan.maxSamples; before = lines.at(-1)!.samples) {
    const samples = Math.min(plan.maxSamples, before + plan.walk.perPlace);
    const { lap, place } = placeNow(plan.walk, before);
    lines.push({ ...stopLine(plan, samples), lap, place, units: samples - before });
  }
  return lines;
}
