/** Nights and places of one kind of trap, fitted by turns: the mean of a trap's night is night × habit of the place. */

import type { Day } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import type { CatchInterval } from './types.ts';

/** A trap is told from others by being another object. */
export interface TrapOfSeason {
  /** Visits that carry information, in order. */
  readonly intervals: readonly CatchInterval[];
}

/** Traps of one insect, one design and one flight, night by night. */
export interface NightsOfKind {
  /** The day of index 0. */
  readonly start: Day;
  readonly traps: ReadonlyMap<TrapOfSeason, Nightly & { readonly habit: number }>;
  readonly all: Totals;
}

/** What other traps say of the nights of a visit. */
export interface Others {
  /** Moths that a place of habit 1 would have caught in the nights. */
  readonly expected: number;
  /** Moths it rests on. */
  readonly moths: number;
  /** Visits of equally good places that would tell as much: fewer than the traps, where one catches most. */
  readonly visits: number;
}

/** Moths the others are taken to have caught where they caught none: their rate is low, not nought. */
const UNSEEN = 0.25;
const ROUNDS = 20;
const SHAPE = ASSUMPTIONS.placeShape.value;

/** `traps` have at least one interval between them; those `aside` are taken as not seen. */
export function nightsOfKind(traps: readonly TrapOfSeason[], aside: ReadonlySet<CatchInterval>): NightsOfKind {
  const visits = traps.flatMap(({ intervals }) => intervals);
  const start = Math.min(...visits.map(({ from }) => from)) as Day;
  const days = Math.max(...visits.map(({ to }) => to)) - start;
  const caught = traps.map((trap) => nightly(trap, aside, start, days));
  const habits = habitsOf(caught, days);
  const byTrap = new Map(traps.map((trap, t) => [trap, { ...caught[t]!, habit: habits[t]! }]));
  return { start, traps: byTrap, all: totals(caught, habits, days) };
}

/** The nights of a visit as read from all traps but those `without`; null when too few others saw one of them. */
export function readOthers(
  { start, traps, all }: NightsOfKind,
  { from, to, nights }: CatchInterval,
  without: readonly TrapOfSeason[],
): Others | null {
  const left = without.map((trap) => traps.get(trap)!);
  if (from < start || to - start > all.moths.length) return null;
  let [moths, weight, squares, fewest] = [0, 0, 0, Number.POSITIVE_INFINITY];
  for (let d = from - start; d < to - start; d++) {
    let watchers = all.watchers[d]!;
    moths += all.moths[d]!;
    weight += all.weight[d]!;
    squares += all.squares[d]!;
    for (const own of left) {
      moths -= own.moths[d]!;
      weight -= own.habit * own.seen[d]!;
      squares -= own.habit ** 2 * own.seen[d]!;
      watchers -= own.seen[d]!;
    }
    fewest = Math.min(fewest, watchers);
  }
  if (fewest < ASSUMPTIONS.otherTraps.value) return null;
  const caught = Math.max(moths, UNSEEN);
  return {
    expected: (nights * caught) / weight,
    moths: caught,
    visits: weight ** 2 / (squares * nights),
  };
}

interface Nightly {
  /** Moths of each night, those of a visit spread evenly over its nights. */
  readonly moths: Float64Array;
  readonly seen: Uint8Array;
}

function nightly({ intervals }: TrapOfSeason, aside: ReadonlySet<CatchInterval>, start: Day, days: number): Nightly {
  const moths = new Float64Array(days);
  const seen = new Uint8Array(days);
  for (const interval of intervals) {
    if (aside.has(interval)) continue;
    const { from, to, nights, count } = interval;
    for (let d = from - start; d < to - start; d++) {
      moths[d] = count! / nights;
      seen[d] = 1;
    }
  }
  return { moths, seen };
}

/** What each trap catches against the mean, drawn toward 1 where little was expected of it. */
function habitsOf(caught: readonly Nightly[], days: number): Float64Array {
  const habits = new Float64Array(caught.length).fill(1);
  for (let round = 0; round < ROUNDS; round++) {
    const { moths, weight } = totals(caught, habits, days);
    caught.forEach((own, t) => {
      let [found, expected] = [SHAPE, SHAPE];
      for (let d = 0; d < days; d++)
        if (own.seen[d]) {
          found += own.moths[d]!;
          expected += moths[d]! / weight[d]!;
        }
      habits[t] = found / expected;
    });
  }
  return habits;
}

interface Totals {
  readonly moths: Float64Array;
  /** Sum of the habits of the traps that saw the night. */
  readonly weight: Float64Array;
  /** Sum of their squares. */
  readonly squares: Float64Array;
  /** How many saw it. */
  readonly watchers: Float64Array;
}

function totals(caught: readonly Nightly[], habits: Float64Array, days: number): Totals {
  const [moths, weight, squares, watchers] = Array.from({ length: 4 }, () => new Float64Array(days)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  caught.forEach((own, t) => {
    for (let d = 0; d < days; d++) {
      moths[d]! += own.moths[d]!;
      weight[d]! += habits[t]! * own.seen[d]!;
      squares[d]! += habits[t]! ** 2 * own.seen[d]!;
      watchers[d]! += own.seen[d]!;
    }
  });
  return { moths, weight, squares, watchers };
}
