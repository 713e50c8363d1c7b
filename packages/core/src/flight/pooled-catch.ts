/** Traps of one region as one catch: each with its own abundance, the same nights counted once. */
import type { HeatSpan, SpannedCatch } from './heat-spans.ts';

/** Moths of the traps that were out in the same nights, on the heat axis. */
export interface PooledSpan {
  readonly from: number;
  readonly to: number;
  readonly nights: number;
  readonly count: number;
  /** Mean traps that these would make: the sum of their abundances. */
  readonly exposure: number;
  /** Dispersion of the count; null: Poisson. */
  readonly k: number | null;
  /** Below 1 where traps with other visits were out in some of the same nights: they share the nights' weather. */
  readonly weight: number;
}

/** How counts scatter about the flight curves, as variances of a factor with mean 1. */
export interface Scatter {
  /** Of one trap's visit, whatever others caught in its nights. */
  readonly ofVisit: number;
  /** Of one night, for all traps of the region together; over n nights an nth of it. */
  readonly ofNight: number;
}

/** Shape of the gamma distribution of abundances over places: k between sites on the same nights, about 0.9 (Battles et al. 2024). */
const PLACES_K = 0.9;
const ROUNDS = 8;

/**
 * How many times as much as the mean trap of the region each one catches in the same nights, its few moths pulled
 * towards 1 by what places differ: (moths + 0.9) / (moths a mean trap would have caught in its nights + 0.9).
 */
export function abundances({ spans, traps }: SpannedCatch): Float64Array {
  const abundance = new Float64Array(traps).fill(1);
  if (traps < 2) return abundance;
  const moths = new Float64Array(traps);
  for (const { trap, count } of spans) moths[trap]! += count;
  const first = Math.min(...spans.map(({ begins }) => begins));
  const last = Math.max(...spans.map(({ begins, nights }) => begins + nights));
  const caught = new Float64Array(last - first);
  for (const { begins, nights, count } of spans)
    for (let night = begins - first; night < begins - first + nights; night++) caught[night]! += count / nights;
  const out = new Float64Array(last - first);
  for (let round = 0; round < ROUNDS; round++) {
    out.fill(0);
    for (const { trap, begins, nights } of spans)
      for (let night = begins - first; night < begins - first + nights; night++) out[night]! += abundance[trap]!;
    const expected = new Float64Array(traps);
    for (const { trap, begins, nights } of spans)
      for (let night = begins - first; night < begins - first + nights; night++) expected[trap]! += caught[night]! / out[night]!;
    for (let trap = 0; trap < traps; trap++) abundance[trap] = (moths[trap]! + PLACES_K) / (expected[trap]! + PLACES_K);
  }
  return abundance;
}

export interface NightGroup {
  readonly begins: number;
  readonly nights: number;
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly exposure: number;
  /** Σ abundance² / (Σ abundance)²: 1 for one trap, an nth for n equal ones. */
  readonly concentration: number;
  readonly members: readonly HeatSpan[];
}

/** Visits over exactly the same nights and heat, taken together. */
export function nightGroups(spans: readonly HeatSpan[], abundance: Float64Array): NightGroup[] {
  const groups = new Map<string, HeatSpan[]>();
  for (const span of spans) {
    const key = `${span.begins} ${span.nights} ${span.from} ${span.to}`;
    const known = groups.get(key);
    if (known) known.push(span);
    else groups.set(key, [span]);
  }
  return [...groups.values()].map((members) => {
    const { begins, nights, from, to } = members[0]!;
    let [count, exposure, squares] = [0, 0, 0];
    for (const member of members) {
      const own = abundance[member.trap]!;
      count += member.count;
      exposure += own;
      squares += own * own;
    }
    return { begins, nights, from, to, count, exposure, concentration: squares / (exposure * exposure), members };
  });
}

/**
 * Groups with their dispersion and weight. n counts that share a part S of their variance V say as much as
 * n·V/(V + (n − 1)·S) of them would if they were strangers; here n − 1 is the overlap with other groups, in nights.
 * `expected`: moths expected in each group.
 */
export function pooledSpans(groups: readonly NightGroup[], scatter: Scatter, expected: ArrayLike<number> | null): PooledSpan[] {
  const overlaps = overlapNights(groups);
  return groups.map(({ from, to, nights, count, exposure, concentration }, i) => {
    const shared = scatter.ofNight / nights;
    const own = scatter.ofVisit * concentration;
    const mean = Math.max(expected ? expected[i]! : count, 0.5);
    const variance = 1 / mean + own + shared;
    const weight = variance / (variance + (overlaps[i]! / nights) * shared);
    const spread = own + shared;
    return { from, to, nights, count, exposure, k: spread > 0 ? 1 / spread : null, weight };
  });
}

/** Nights that other groups share with each. */
function overlapNights(groups: readonly NightGroup[]): Float64Array {
  const overlaps = new Float64Array(groups.length);
  const order = groups.map((_, i) => i).sort((a, b) => groups[a]!.begins - groups[b]!.begins);
  for (let i = 0; i < order.length; i++) {
    const a = groups[order[i]!]!;
    const end = a.begins + a.nights;
    for (let j = i + 1; j < order.length && groups[order[j]!]!.begins < end; j++) {
      const b = groups[order[j]!]!;
      const common = Math.min(end, b.begins + b.nights) - b.begins;
      overlaps[order[i]!]! += common;
      overlaps[order[j]!]! += common;
    }
  }
  return overlaps;
}

/** What is believed of the scatter before counts speak, and how many visits that belief weighs. */
export interface ScatterBelief extends Scatter {
  readonly visits: number;
}

/** Scatter from visits of one region about fitted curves (moments), held by the belief where visits are few. */
export function scatterAbout(
  groups: readonly NightGroup[],
  abundance: Float64Array,
  expected: ArrayLike<number>,
  unknowns: number,
  belief: ScatterBelief,
): Scatter {
  let [within, withinWeight] = [belief.visits * belief.ofVisit, belief.visits];
  for (const { members, count, exposure } of groups) {
    if (members.length < 2 || count === 0) continue;
    for (const { trap, count: own } of members) {
      const part = abundance[trap]! / exposure;
      const mean = Math.max(part * count, 0.2);
      const weight = (mean * belief.ofVisit) / (1 + mean * belief.ofVisit);
      const trust = weight * weight;
      within += (trust * ((own - part * count) ** 2 / (1 - part) - mean)) / (mean * mean);
      withinWeight += trust;
    }
  }
  const ofVisit = Math.min(3, Math.max(0.02, within / withinWeight));
  const spare = groups.length / Math.max(groups.length - unknowns, 0.3 * groups.length);
  let [between, betweenWeight] = [belief.visits * belief.ofNight, belief.visits];
  for (const [i, { count, nights, concentration }] of groups.entries()) {
    const mean = Math.max(expected[i]!, 0.2);
    const typical = belief.ofVisit + belief.ofNight / nights;
    const weight = (mean * typical) / (1 + mean * typical);
    const trust = weight * weight;
    between += trust * nights * ((spare * (count - mean) ** 2 - mean) / (mean * mean) - ofVisit * concentration);
    betweenWeight += trust;
  }
  const least = Math.max(0, 0.05 - ofVisit);
  return { ofVisit, ofNight: Math.min(6, Math.max(least, between / betweenWeight)) };
}
