/**
 * From moths caught to their offspring: each night's catch moved through the stages by heat.
 *
 * Everything is relative. A trap catches males, and a share of them that nobody knows; so amounts are in "moths caught"
 * and say which stage the offspring of these moths are in, never how many eggs or larvae a plant carries.
 */

import { addDays, type Day } from '../base/day.ts';
import type { PhenologyModel, StageDuration } from '../catalogue/types.ts';
import type { CatchInterval } from '../catch/types.ts';

export type StageName = StageDuration['stage'];

/** The stages in order of development. A model gives either two sizes of larva or one. */
const ORDER: readonly StageName[] = ['pre-egg-laying-adult', 'egg', 'small-larva', 'large-larva', 'larva', 'pupa'];

/** A stage on the heat axis that begins when an egg is laid. */
interface StageSpan {
  readonly stage: StageName;
  readonly from: number;
  readonly to: number;
}

export interface LifeLine {
  /** Heat that a moth takes before it lays; 0 when the model does not say. A moth caught may be anywhere in it. */
  readonly beforeLaying: number;
  readonly stages: readonly StageSpan[];
  /** From egg to the emergence of the next moth. */
  readonly eggToAdult: number;
}

/** The stages of a model laid end to end; null when it has no egg stage, so that nothing can be counted from laying. */
export function lifeLine(model: PhenologyModel): LifeLine | null {
  const lasts = new Map(model.stages.map(({ stage, lasts }) => [stage, lasts]));
  if (!lasts.has('egg')) return null;
  const stages: StageSpan[] = [];
  let heat = 0;
  for (const stage of ORDER) {
    const length = lasts.get(stage);
    if (length === undefined || stage === 'pre-egg-laying-adult') continue;
    stages.push({ stage, from: heat, to: heat + length });
    heat += length;
  }
  return { beforeLaying: lasts.get('pre-egg-laying-adult') ?? 0, stages, eggToAdult: heat };
}

/** Moths of one night. */
export interface Night {
  readonly on: Day;
  readonly moths: number;
}

/** Counts spread evenly over the nights they cover; nights without information are counted apart, never zeros. */
export function nightsOf(
  intervals: readonly CatchInterval[],
  on: Day,
): { nights: Night[]; moths: number; unknownNights: number } {
  const byDay = new Map<Day, number>();
  let [moths, unknownNights] = [0, 0];
  for (const { from, to, nights, count } of intervals) {
    if (to > on) continue;
    if (count === null) {
      unknownNights += nights;
      continue;
    }
    moths += count;
    for (let night = from; night < to; night = addDays(night, 1)) byDay.set(night, (byDay.get(night) ?? 0) + count / nights);
  }
  const nights = [...byDay].map(([night, each]) => ({ on: night, moths: each })).sort((a, b) => a.on - b.on);
  return { nights, moths, unknownNights };
}

/**
 * Share of the eggs of a night's moths that have been laid and then developed past `age` degree-days, `heat` degree-days
 * after the night. Its moths are taken as evenly spread over the time before laying, so eggs come evenly from 0 to
 * `beforeLaying`. Own simplification: each moth lays at once and once, and none dies.
 */
export function sharePast(line: LifeLine, age: number, heat: number): number {
  const since = heat - age;
  if (since < 0) return 0;
  return line.beforeLaying === 0 ? 1 : Math.min(1, since / line.beforeLaying);
}

/** Where the offspring of some nights are, in moths caught. All together they are the moths caught. */
export interface StageAmounts {
  readonly 'pre-egg-laying-adult': number;
  readonly egg: number;
  readonly 'small-larva': number;
  readonly 'large-larva': number;
  /** Larvae of a model that does not tell two sizes apart. */
  readonly larva: number;
  readonly pupa: number;
  /** Gone on to be moths of the next flight. */
  readonly 'next-adults': number;
}

/** `heatSince(night)`: degree-days from that night to the moment asked about. Nights still ahead are passed over. */
export function stageAmounts(line: LifeLine, nights: readonly Night[], heatSince: (night: Day) => number): StageAmounts {
  const amounts = {
    'pre-egg-laying-adult': 0,
    egg: 0,
    'small-larva': 0,
    'large-larva': 0,
    larva: 0,
    pupa: 0,
    'next-adults': 0,
  };
  for (const { on, moths } of nights) {
    const heat = heatSince(on);
    if (heat < 0) continue;
    // Stages lie end to end: what has left one has entered the next.
    let entered = moths * sharePast(line, 0, heat);
    amounts['pre-egg-laying-adult'] += moths - entered;
    for (const { stage, to } of line.stages) {
      const left = entered === 0 ? 0 : moths * sharePast(line, to, heat);
      amounts[stage] += entered - left;
      entered = left;
    }
    amounts['next-adults'] += entered;
  }
  return amounts;
}
