import { addDays, type Day } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import type { BiofixRule } from '../catalogue/types.ts';
import type { CatchInterval, TrapHistory } from '../catch/types.ts';
import { type CaptureByNight, captureByNight } from './intense-capture.ts';
import type { Biofix } from './types.ts';

/**
 * The day from which heat is counted for a flight: the earliest, over the traps, on which `rule` is fulfilled.
 *
 * `histories` are of one insect and one season. A day the user gives wins over any catch and is marked as theirs.
 * Null while no trap has fulfilled the rule. Nights without information neither fulfil a rule nor speak against it. A trap
 * that fulfils it before any fit visit below it was hung into a running flight: how early that began is then bounded by the
 * last visit below the rule in any other trap, or not at all.
 */
export function findBiofix(rule: BiofixRule, histories: readonly TrapHistory[], override: Day | null = null): Biofix | null {
  if (override !== null)
    return { on: override, rule: { kind: 'user' }, trapId: null, earliest: override, running: false, probability: null };
  const deciding = histories.map(({ trapId, intervals }) => ({ trapId, intervals, found: decidingNights(rule, intervals) }));
  let first: Biofix | null = null;
  for (const { trapId, intervals, found } of deciding) {
    if (found === null) continue;
    const { index, on, probability } = found;
    const running = !intervals.slice(0, index).some(({ count }) => count !== null);
    const earliest = running
      ? latest(deciding.filter((other) => other.trapId !== trapId).map((other) => belowUntil(other.intervals, other.found, on)))
      : (found.from ?? mayHaveBeenFrom(intervals, index));
    const biofix = { on, rule, trapId, earliest, running, probability };
    if (first === null || isBefore(biofix, first)) first = biofix;
  }
  return first;
}

const latest = (days: readonly (Day | null)[]): Day | null =>
  days.reduce((best, day) => (day !== null && (best === null || day > best) ? day : best), null);

/** The last visit by `on` up to which a trap was seen below the rule. */
function belowUntil(intervals: readonly CatchInterval[], found: Deciding | null, on: Day): Day | null {
  const below = found === null ? intervals : intervals.slice(0, found.index);
  return below.findLast(({ count, to }) => count !== null && to < on)?.to ?? null;
}

/** The first visit of any trap that found the target. */
export function firstCatch(histories: readonly TrapHistory[]): Biofix | null {
  return findBiofix({ kind: 'first-catch' }, histories);
}

interface Deciding {
  /** Of the interval in which the rule is first fulfilled. */
  readonly index: number;
  readonly on: Day;
  /** Where the nights of that interval tell more than its ends; null: its beginning. */
  readonly from: Day | null;
  readonly probability: number | null;
}

function decidingNights(rule: BiofixRule, intervals: readonly CatchInterval[]): Deciding | null {
  if (rule.kind === 'intense-capture') return intenseCapture(rule, intervals);
  const index = firstRunOfCatches(intervals, rule.kind === 'first-catch' ? 1 : 1 + rule.followedBy);
  return index === null ? null : { index, on: intervals[index]!.to, from: null, probability: null };
}

type IntenseCapture = BiofixRule & { readonly kind: 'intense-capture' };

/** The days in which it may have been are those between these shares of its probability. */
const SPAN = [0.1, 0.9] as const;

function intenseCapture(rule: IntenseCapture, intervals: readonly CatchInterval[]): Deciding | null {
  const nights = captureByNight(rule, intervals, ASSUMPTIONS.nightDispersionK.value);
  const index = nights.find(({ reached }) => reached >= ASSUMPTIONS.captureLikely.value)?.interval;
  if (index === undefined) return null;
  return { index, ...spanOf(nights.filter((night) => night.interval <= index)) };
}

function spanOf(nights: readonly CaptureByNight[]): { readonly on: Day; readonly from: Day; readonly probability: number } {
  const probability = nights.at(-1)!.reached;
  const nightAt = (share: number) => nights.find(({ reached }) => reached >= share * probability - ROUNDING)!.night;
  return { on: addDays(nightAt(SPAN[1]), 1), from: nightAt(SPAN[0]), probability };
}

/** How probable it is that a rule was reached between visits, and when; of one trap. */
export interface CaptureChance {
  readonly probability: number;
  readonly from: Day;
  readonly on: Day;
  readonly trapId: string;
}

/** The trap in which an intense capture is the most probable, likely or not; null where it cannot have been in any. */
export function captureChance(rule: IntenseCapture, histories: readonly TrapHistory[]): CaptureChance | null {
  return histories.reduce<CaptureChance | null>((best, { trapId, intervals }) => {
    const nights = captureByNight(rule, intervals, ASSUMPTIONS.nightDispersionK.value);
    const probability = nights.at(-1)?.reached ?? 0;
    return probability > Math.max(ROUNDING, best?.probability ?? 0) ? { trapId, ...spanOf(nights) } : best;
  }, null);
}

const ROUNDING = 1e-9;

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

function mayHaveBeenFrom(intervals: readonly CatchInterval[], deciding: number): Day {
  let first = deciding;
  while (first > 0 && intervals[first - 1]!.count === null) first--;
  return intervals[first]!.from;
}

function isBefore(a: Biofix, b: Biofix): boolean {
  if (a.on !== b.on) return a.on < b.on;
  const [from, other] = [a.earliest ?? Number.NEGATIVE_INFINITY, b.earliest ?? Number.NEGATIVE_INFINITY];
  return from < other || (from === other && a.trapId! < b.trapId!);
}
