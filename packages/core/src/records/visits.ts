import type { CheckRecord } from './schema.ts';

/** Groups checks by trap and day without building a key for each: tables hold a hundred thousand of them. */
class TrapDays {
  private readonly days = new Map<string, Map<string, number[]>>();

  /** Indexes already noted for the trap and day, to which the caller may add. */
  at(trapId: string, day: string): number[] {
    const ofTrap = getOrAdd(this.days, trapId, () => new Map<string, number[]>());
    return getOrAdd(ofTrap, day, () => []);
  }
}

function getOrAdd<V>(map: Map<string, V>, key: string, make: () => V): V {
  const held = map.get(key);
  if (held !== undefined) return held;
  const made = make();
  map.set(key, made);
  return made;
}

export type UnnumberedCheck = Omit<CheckRecord, 'visit'>;

/** Second and later checks of one trap and day become visits 2, 3, … in the order they stand. */
export function numberVisits(checks: readonly UnnumberedCheck[]): CheckRecord[] {
  const seen = new TrapDays();
  return checks.map((check, index) => {
    const { trapId, checkedOn, targetCount, otherCount, condition, emptied, note } = check;
    const visit = seen.at(trapId, checkedOn).push(index);
    return { trapId, checkedOn, visit, targetCount, otherCount, condition, emptied, note };
  });
}

/** Pairs of checks that agree in all but the visit's number: each later one with the first it repeats. */
export function repeatedChecks(checks: readonly UnnumberedCheck[]): { index: number; first: number }[] {
  const seen = new TrapDays();
  const repeats: { index: number; first: number }[] = [];
  checks.forEach((check, index) => {
    const sameDay = seen.at(check.trapId, check.checkedOn);
    const first = sameDay.find((earlier) => agree(checks[earlier]!, check));
    if (first !== undefined) repeats.push({ index, first });
    sameDay.push(index);
  });
  return repeats;
}

const agree = (a: UnnumberedCheck, b: UnnumberedCheck): boolean =>
  a.targetCount === b.targetCount &&
  a.otherCount === b.otherCount &&
  a.condition === b.condition &&
  a.emptied === b.emptied &&
  a.note === b.note;
