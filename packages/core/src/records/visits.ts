import { type CheckRecord, checkSchema } from './schema.ts';

/** A trap seen more often on one day is a wrong date; what lies beyond is not compared, so that reading stays quick. */
export const MAX_VISITS = 99;

/** Finds checks of one trap and day without building a key for each: tables hold a hundred thousand of them. */
class TrapDays {
  private readonly first = new Map<string, Map<string, number>>();
  private readonly several = new Map<string, number[]>();

  /** Notes a check and gives the indexes of the first earlier ones of its trap and day, or null when there is none. */
  note({ trapId, checkedOn }: UnnumberedCheck, index: number): readonly number[] | null {
    let days = this.first.get(trapId);
    if (days === undefined) {
      days = new Map();
      this.first.set(trapId, days);
    }
    const first = days.get(checkedOn);
    if (first === undefined) {
      days.set(checkedOn, index);
      return null;
    }
    const key = `${trapId}|${checkedOn}`;
    const held = this.several.get(key) ?? [first];
    const earlier = held.slice(0, MAX_VISITS);
    if (held.length <= MAX_VISITS) this.several.set(key, [...held, index]);
    return earlier;
  }
}

export type UnnumberedCheck = Omit<CheckRecord, 'visit'>;

/** The number of each check's visit: second and later ones of one trap and day are 2, 3, … in the order they stand. */
export function visitNumbers(checks: readonly UnnumberedCheck[]): number[] {
  const seen = new TrapDays();
  return checks.map((check, index) => (seen.note(check, index)?.length ?? 0) + 1);
}

/** Checks that agree with an earlier one in all but the visit's number: each with the first it repeats. */
export function repeatedChecks(checks: readonly UnnumberedCheck[]): { index: number; first: number }[] {
  const seen = new TrapDays();
  const repeats: { index: number; first: number }[] = [];
  checks.forEach((check, index) => {
    const first = seen.note(check, index)?.find((earlier) => agree(checks[earlier]!, check));
    if (first !== undefined) repeats.push({ index, first });
  });
  return repeats;
}

const COMPARED = Object.keys(checkSchema.omit({ visit: true }).shape) as readonly (keyof UnnumberedCheck)[];

/** In every property of the schema; one left out and null say the same. */
const agree = (a: UnnumberedCheck, b: UnnumberedCheck): boolean =>
  COMPARED.every((property) => (a[property] ?? null) === (b[property] ?? null));
