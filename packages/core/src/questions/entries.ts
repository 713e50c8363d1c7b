/** Checks of several days entered in one go, where it is known who entered what and when. */
import { groupBy } from '../base/group-by.ts';
import type { CheckRecord } from '../records/schema.ts';
import { QUALITY_ASSUMPTIONS } from './assumptions.ts';
import { asWritten } from './repeated.ts';
import type { RecordQuestion } from './types.ts';

/** When a check was first written, and by whom. */
export interface Entry {
  readonly check: CheckRecord;
  readonly author: string;
  /** ISO 8601 instant. */
  readonly at: string;
}

export function enteredInBulk(entries: readonly Entry[], farmOf: (trapId: string) => string | null): RecordQuestion[] {
  return [...groupBy(entries, ({ author }) => author).values()].flatMap((own) =>
    sittings(own).flatMap((sitting): RecordQuestion[] => {
      const checks = sitting.map(({ check }) => check).sort((a, b) => (a.checkedOn < b.checkedOn ? -1 : 1));
      const days = new Set(checks.map(({ checkedOn }) => checkedOn)).size;
      if (days < QUALITY_ASSUMPTIONS.bulkDays.value) return [];
      const shown = { checks: checks.map(asWritten), farm: farmOf(checks[0]!.trapId), whom: 'whoever-entered' } as const;
      return [{ kind: 'entered-in-bulk', author: sitting[0]!.author, days, ...shown, probability: null, inSeason: null }];
    }),
  );
}

/** Entries that follow one another closely. */
function sittings(entries: readonly Entry[]): Entry[][] {
  const within = QUALITY_ASSUMPTIONS.bulkMinutes.value * 60_000;
  const inOrder = [...entries].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  const found: Entry[][] = [];
  for (const entry of inOrder) {
    const open = found.at(-1);
    if (open && Date.parse(entry.at) - Date.parse(open[0]!.at) <= within) open.push(entry);
    else found.push([entry]);
  }
  return found;
}
