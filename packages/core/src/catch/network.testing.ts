/** Invented networks whose faults are known: places differ, flights rise and fall, and some traps are not sound. */

import { addDays, type Day } from '../base/day.ts';
import { type Random, randomFrom } from '../statistics/random.testing.ts';
import { HUNG } from './season.testing.ts';
import { nightsSeen, type TrapDoubt, trapDoubt } from './soundness.ts';
import type { CatchInterval } from './types.ts';
import { visitOf } from './visit.testing.ts';

export interface Network {
  readonly traps: number;
  /** Moths that a middling place catches in the season. */
  readonly moths: number;
  /** Dispersion k between places and between the visits of one trap. */
  readonly placeK: number;
  readonly k: number;
  /** Visits come after this many nights. */
  readonly every?: number;
  /** Nights after which each lure is changed; null: never noted. */
  readonly lureDays?: number | null;
}

/** What is wrong with the first trap, from a night on. */
export interface Fault {
  readonly from: number;
  /** What it catches of what it would: 0 for a dead trap. */
  readonly share: number;
}

export const SEASON_NIGHTS = 134;

export interface NetworkSeason {
  readonly traps: readonly { readonly intervals: readonly CatchInterval[] }[];
  /** What a middling place has caught by each night, as the flight truly went. */
  readonly middling: readonly number[];
}

/** Two flights, the second three times the first; the traps' visits fall on the same days. */
export function inventedNetwork(random: Random, network: Network, fault: Fault | null): NetworkSeason {
  const { traps, moths, placeK, k, every = 3.5 } = network;
  const peaks = [35 + 10 * random.uniform(), 85 + 15 * random.uniform()] as const;
  const shape = Array.from(
    { length: SEASON_NIGHTS },
    (_, night) => 0.02 + Math.exp(-(((night - peaks[0]) / 9) ** 2) / 2) + 3 * Math.exp(-(((night - peaks[1]) / 12) ** 2) / 2),
  );
  const whole = shape.reduce((sum, one) => sum + one, 0);
  const perNight = shape.map((one) => (moths * one) / whole);
  let sum = 0;
  const middling = perNight.map((one) => {
    sum += one;
    return sum;
  });
  const rounds: number[] = [];
  for (let night = every; night <= SEASON_NIGHTS; night += every) rounds.push(Math.round(night));
  return {
    middling,
    traps: Array.from({ length: traps }, (_, t) => {
      // The trap with a fault stands in a middling place, so that its place is not what is found.
      const place = t === 0 && fault ? 1 : random.gamma(placeK) / placeK;
      const intervals = rounds.map((to, i) => {
        const from = rounds[i - 1] ?? 0;
        let mean = 0;
        for (let night = from; night < to; night++)
          mean += place * perNight[night]! * (t === 0 && fault && night >= fault.from ? fault.share : 1);
        return visitOf(`T${t + 1}`, from, to, mean === 0 ? 0 : random.negativeBinomial(mean, k));
      });
      return { intervals };
    }),
  };
}

/** What is doubted of some traps after each of their visits, everything known up to then. */
export function doubtsOf(
  { traps }: NetworkSeason,
  which: readonly number[],
  { k, lureDays = null }: Network,
): (TrapDoubt | null)[][] {
  const byVisit = traps[0]!.intervals.map(({ to }, i) => {
    const known = traps.map((trap) => ({ intervals: trap.intervals.slice(0, i + 1) }));
    const nights = nightsSeen(known)!;
    const putRight: Day[] = [];
    if (lureDays !== null)
      for (let night = lureDays; addDays(HUNG, night) < to; night += lureDays) putRight.push(addDays(HUNG, night));
    return which.map((t) => trapDoubt(nights, { among: known[t]!, visits: known[t]!.intervals, putRight, k }));
  });
  return which.map((_, w) => byVisit.map((doubts) => doubts[w]!));
}

export interface SoundSeasons {
  readonly trapSeasons: number;
  /** Shares of sound trap-seasons in which the trap was ever doubted so. */
  readonly silent: number;
  readonly strong: number;
  readonly loud: number;
}

export function soundSeasons(network: Network, seeds: number): SoundSeasons {
  let [silent, strong, loud] = [0, 0, 0];
  for (let seed = 1; seed <= seeds; seed++) {
    const season = inventedNetwork(randomFrom(seed * 104_729 + network.traps), network, null);
    for (const doubts of doubtsOf(season, [...season.traps.keys()], network)) {
      silent += Number(doubts.some((doubt) => doubt?.kind === 'silent'));
      strong += Number(doubts.some((doubt) => doubt?.degree === 'strong'));
      loud += Number(doubts.some((doubt) => doubt?.kind === 'loud'));
    }
  }
  const trapSeasons = seeds * network.traps;
  return { trapSeasons, silent: silent / trapSeasons, strong: strong / trapSeasons, loud: loud / trapSeasons };
}

export interface Found {
  /** Share of seasons in which the trap was doubted by the end, and nights after the fault's beginning, at the median. */
  readonly found: number;
  readonly nights: number | null;
  /** Moths a middling place had caught by then since the fault began, at the median. */
  readonly moths: number | null;
}

/** How soon a fault is doubted, and how soon strongly. */
export function faultFound(network: Network, fault: Fault, seeds: number): { readonly moderate: Found; readonly strong: Found } {
  const first: { moderate: number[]; strong: number[] } = { moderate: [], strong: [] };
  const moths: { moderate: number[]; strong: number[] } = { moderate: [], strong: [] };
  for (let seed = 1; seed <= seeds; seed++) {
    const season = inventedNetwork(randomFrom(seed * 15_485_863 + network.traps), network, fault);
    const [doubts] = doubtsOf(season, [0], network) as [(TrapDoubt | null)[]];
    for (const degree of ['moderate', 'strong'] as const) {
      const at = doubts.findIndex(
        (doubt, i) =>
          season.traps[0]!.intervals[i]!.to > addDays(HUNG, fault.from) &&
          doubt &&
          (degree === 'moderate' || doubt.degree === 'strong'),
      );
      if (at < 0) continue;
      const night = season.traps[0]!.intervals[at]!.to - HUNG;
      first[degree].push(night - fault.from);
      moths[degree].push(season.middling[Math.min(night, SEASON_NIGHTS) - 1]! - (season.middling[fault.from - 1] ?? 0));
    }
  }
  const foundOf = (degree: 'moderate' | 'strong'): Found => ({
    found: first[degree].length / seeds,
    nights: middle(first[degree]),
    moths: middle(moths[degree]),
  });
  return { moderate: foundOf('moderate'), strong: foundOf('strong') };
}

const middle = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.toSorted((a, b) => a - b)[values.length >> 1]!;
