import { describe, expect, test } from 'vitest';
import { reasonsOutOfNotes } from '../reasons-out-of-notes.ts';
import type { Bench } from './bench.ts';
import { accepted, check, first } from './samples.ts';

export function migrationContract({ store, harness }: Bench): void {
  describe('a database of an older version', () => {
    const unfit = (visit: number, note: string | null) => check(0, { visit, condition: 'unfit', targetCount: null, note });
    const told = [
      unfit(1, 'down'),
      unfit(2, 'caída. Un ciervo, por las huellas'),
      unfit(3, 'lure missing. "down. full" stood on the lid'),
      unfit(4, 'downed by wind'),
      unfit(5, 'said "condition":"unfit", "note":"down. x"'),
      unfit(6, null),
      check(3, { visit: 7, note: 'down. But caught three' }),
    ];

    test('has the reasons of its unfit visits taken out of their notes, in either language, and nothing else', async () => {
      const url = await harness.fresh();
      const older = await store(url);
      accepted(await older.append(told.map((value, minute) => first(value, minute))));
      for (const statement of reasonsOutOfNotes()) await harness.execute(url, statement);
      const checks = (await older.loadProgram()).checks.toSorted((a, b) => a.visit - b.visit);
      expect(checks).toEqual([
        { ...told[0], unfitReason: 'down', note: null },
        { ...told[1], unfitReason: 'down', note: 'Un ciervo, por las huellas' },
        { ...told[2], unfitReason: 'lure-missing', note: '"down. full" stood on the lid' },
        ...told.slice(3),
      ]);
    });
  });
}
