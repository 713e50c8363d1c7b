import type { Day } from '../base/day.ts';
import type { CatchInterval, TrapHistory } from '../catch/types.ts';
import type { Biofix, BiofixRule } from './types.ts';

/**
 * The day from which heat is counted for a flight: the earliest, over the traps, on which `rule` is fulfilled.
 *
 * `histories` are of one insect and one season. A day the user gives wins over any catch and is marked as theirs.
 * Null while no trap has fulfilled the rule. Nights without information neither fulfil a rule nor speak against it.
 */
export function findBiofix(rule: BiofixRule, histories: readonly TrapHistory[], override: Day | null = null): Biofix | null {
  if (override !== null) return { on: override, rule: { kind: 'user' }, trapId: null, earliest: override };
  let first: Biofix | null = null;
  for (const { trapId, intervals } of histories) {
    const deciding = decidingInterval(rule, intervals);
    if (deciding === null) continue;
    const found = { on: intervals[deciding]!.to, rule, trapId, earliest: mayHaveBeenFrom(intervals, deciding) };
    if (first === null || isBefore(found, first)) first = found;
  }
  return first;
}

/** The first visit of any trap that found the target. */
export function firstCatch(histories: readonly TrapHistory[]): Biofix | null {
  return findBiofix({ kind: 'first-catch' }, histories);
}

/** Index of the interval in which the rule is first fulfilled. */
function decidingInterval(rule: BiofixRule, intervals: readonly CatchInterval[]): number | null {
  switch (rule.kind) {
    case 'first-catch':
      return firstRunOfCatches(intervals, 1);
    case 'sustained-catch':
      return firstRunOfCatches(intervals, 1 + rule.followedBy);
    case 'intense-capture':
      return firstIntenseCapture(intervals, rule.moths, rule.nights);
  }
}

/** Where `length` visits in a row, passing over those without information, first found moths. */
function firstRunOfCatches(intervals: readonly CatchInterval[], length: number): number | null {
  let [start, found] = [0, 0];
  for (const [index, { count }] of intervals.entries()) {
    if (count === null) continue;
    if (count === 0) found = 0;
    else {
      if (found === 0) start = index;
      found++;
      if (found === length) return start;
    }
  }
  return null;
}

/** Rounding error in shares of counts must not keep 9 moths from being 9. */
const TOLERANCE = 1e-9;

function firstIntenseCapture(intervals: readonly CatchInterval[], moths: number, nights: number): number | null {
  let lastNights: number[] = [];
  for (const [index, interval] of intervals.entries()) {
    if (interval.count === null) {
      lastNights = [];
      continue;
    }
    for (let night = 0; night < interval.nights; night++) {
      lastNights.push(interval.count / interval.nights);
      if (lastNights.length > nights) lastNights.shift();
      const caught = lastNights.reduce((sum, count) => sum + count, 0);
      if (caught >= moths - TOLERANCE) return index;
    }
  }
  return null;
}

function mayHaveBeenFrom(intervals: readonly CatchInterval[], deciding: number): Day {
  let first = deciding;
  while (first > 0 && intervals[first - 1]!.count === null) first--;
  return intervals[first]!.from;
}

function isBefore(a: Biofix, b: Biofix): boolean {
  if (a.on !== b.on) return a.on < b.on;
  return a.earliest < b.earliest || (a.earliest === b.earliest && a.trapId! < b.trapId!);
}
