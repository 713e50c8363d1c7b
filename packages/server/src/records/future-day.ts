/** What was seen or done cannot have been so on a day that has not begun anywhere. */
import { formatDay, type Problem } from '@duskwatch/core';
import type { StoredKind, ValueOf } from '@duskwatch/store';

/** The day on which what a record tells of was seen or done; kinds that plan are not among them. */
const DAY_OF = {
  stages: 'observedOn',
  lures: 'placedOn',
  checks: 'checkedOn',
  skips: 'skippedOn',
  samples: 'sampledOn',
  treatments: 'appliedOn',
  decisions: 'decidedOn',
} as const satisfies { readonly [K in StoredKind]?: keyof ValueOf<K> };

/** Days begin first at UTC+14. */
const FIRST_MS = 14 * 3_600_000;
const DAY_MS = 86_400_000;

/** A record that tells of a day to come, by a clock that is ahead: it would stand at the end of all for weeks. */
export function futureDay(kind: StoredKind, value: ValueOf<StoredKind> | null, nowMs: number): Problem | null {
  if (value === null || !(kind in DAY_OF)) return null;
  const property = DAY_OF[kind as keyof typeof DAY_OF];
  const said = (value as unknown as Readonly<Record<string, string>>)[property]!;
  const last = formatDay(Math.floor((nowMs + FIRST_MS) / DAY_MS) as Parameters<typeof formatDay>[0]);
  if (said <= last) return null;
  return {
    where: { column: property.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`) },
    got: said,
    expected: `a day up to ${last}`,
    fix: 'Correct the day; the clock of the phone or computer that wrote it may be ahead.',
    fault: { kind: 'future-day', last },
  };
}
