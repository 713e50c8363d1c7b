import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { adviseAll, type CheckRecord, day, type Person, prepare, roundView, scopeProgram, weekView } from '@duskwatch/core';
import { openStore, type Revision, type Store, uuidv7 } from '@duskwatch/store';
import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { THIS_MACHINE } from './people/guard.ts';
import { OWN, twoFarms } from './people/two-farms.testing.ts';
import { programReader } from './reader.ts';

const ON = '2026-07-15';
const PEOPLE: readonly Person[] = [
  THIS_MACHINE,
  { ...THIS_MACHINE, role: 'scout' },
  { ...THIS_MACHINE, role: 'grower', farms: [OWN] },
  { ...THIS_MACHINE, role: 'reader' },
];

async function open() {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-reader-'));
  const store = await openStore(join(folder, 'data.sqlite'));
  onTestFinished(async () => {
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const imported = await store.importProgram(twoFarms, { author: 'importer', at: '2026-07-01T00:00:00Z' });
  if (!imported.ok) throw new Error(JSON.stringify(imported.problems));
  let readings = 0;
  const counted: Store = {
    ...store,
    loadProgram() {
      readings++;
      return store.loadProgram();
    },
  };
  return { store, reader: programReader(counted), readings: () => readings };
}

const checkAt = (trapId: string, checkedOn: string, targetCount: number): CheckRecord => ({
  trapId,
  checkedOn,
  visit: 1,
  targetCount,
  otherCount: 1,
  condition: 'fit',
  emptied: true,
  note: null,
});

const revisionOf = (value: CheckRecord | null, base: Base | null = null, at = '2026-07-15T06:00:00Z'): Revision => {
  const revisionId = uuidv7();
  return {
    revisionId,
    recordId: base?.recordId ?? revisionId,
    kind: 'checks',
    baseRevisionId: base?.revisionId ?? null,
    author: 'somebody',
    at,
    value,
  };
};

interface Base {
  readonly revisionId: string;
  readonly recordId: string;
}

/** Everything that people are shown, from what the reader holds and from the store read anew. */
async function expectAsReadAnew(store: Store, reader: ReturnType<typeof programReader>) {
  const anew = await store.loadProgram();
  expect(await reader.everything()).toEqual(anew);
  for (const person of PEOPLE) {
    const held = await reader.prepared(person, ON);
    const fresh = prepare(scopeProgram(anew, person), { on: day(ON) });
    const shown = (prepared: typeof held) => [adviseAll(prepared), weekView(prepared), roundView(prepared)];
    expect(shown(held), person.role).toEqual(shown(fresh));
    expect([...held.checksByTrap.keys()], person.role).toEqual([...fresh.checksByTrap.keys()]);
  }
}

/** What may happen to checks: written, corrected by the clock of now or of long ago, moved to another day, removed. */
const act = fc.record({
  kind: fc.constantFrom('new', 'new', 'new', 'correct', 'correct', 'rival', 'move', 'remove', 'lure'),
  trap: fc.constantFrom('TA', 'TB', 'TM'),
  on: fc.constantFrom('2026-07-09', '2026-07-11', '2026-07-13', '2026-07-14', '2026-07-15'),
  count: fc.nat(60),
  which: fc.nat(20),
  together: fc.boolean(),
});

describe('what a server holds of a program while checks come in', () => {
  it('is the same after any revisions as if the program had been read and prepared anew', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 8 }), async (acts) => {
        const { store, reader } = await open();
        await expectAsReadAnew(store, reader);
        let waiting: Revision[] = [];
        for (const { kind, trap, on, count, which, together } of acts) {
          const current = await store.current('checks');
          const base = current[which % current.length]!;
          const value = base.value;
          if (kind === 'new') waiting.push(revisionOf(checkAt(trap, on, count)));
          if (kind === 'correct') waiting.push(revisionOf({ ...value, targetCount: count }, base));
          if (kind === 'rival') {
            waiting.push(
              revisionOf({ ...value, targetCount: count }, base),
              revisionOf({ ...value, otherCount: count }, base, '2026-07-02T00:00:00Z'),
            );
          }
          if (kind === 'move') waiting.push(revisionOf({ ...value, checkedOn: on, visit: 2 }, base));
          if (kind === 'remove') waiting.push(revisionOf(null, base));
          if (kind === 'lure') {
            const [lure] = await store.current('lures');
            waiting.push({
              ...revisionOf(null, lure),
              kind: 'lures',
              value: { ...lure!.value, lifeDays: 20 + count },
            } as Revision);
          }
          if (together) continue;
          await store.append(waiting);
          waiting = [];
          await expectAsReadAnew(store, reader);
        }
        await store.append(waiting);
        await expectAsReadAnew(store, reader);
      }),
      { numRuns: 40, seed: 26 },
    );
  });

  it('takes in new and corrected checks without reading the program again', async () => {
    const { store, reader, readings } = await open();
    await reader.prepared(THIS_MACHINE, ON);
    expect(readings()).toBe(1);
    const first = revisionOf(checkAt('TA', '2026-07-15', 4));
    await store.append([first, revisionOf(checkAt('TB', '2026-07-15', 7))]);
    const corrected = revisionOf(checkAt('TA', '2026-07-15', 40), first);
    await store.append([corrected]);
    const held = await reader.prepared(THIS_MACHINE, ON);
    expect(held.checksByTrap.get('TA')!.at(-1)!.targetCount).toBe(40);
    await expectAsReadAnew(store, reader);
    expect(readings()).toBe(1);
  });

  it('keeps the visits of traps that nobody was at, and the heat of every source', async () => {
    const { store, reader } = await open();
    const before = await reader.prepared(THIS_MACHINE, ON);
    adviseAll(before);
    await store.append([revisionOf(checkAt('TA', '2026-07-15', 4))]);
    const after = await reader.prepared(THIS_MACHINE, ON);
    expect(after.histories.get('TB')).toBe(before.histories.get('TB'));
    expect(after.histories.has('TA')).toBe(false);
    expect(after.heat).toBe(before.heat);
  });

  it('reads the program again after what is no check', async () => {
    const { store, reader, readings } = await open();
    await reader.everything();
    const [lure] = await store.current('lures');
    await store.append([{ ...revisionOf(null, lure), kind: 'lures', value: { ...lure!.value, lifeDays: 21 } } as Revision]);
    expect((await reader.everything()).lures).toContainEqual({ ...lure!.value, lifeDays: 21 });
    expect(readings()).toBe(2);
  });

  it('shows whoever reads what was acknowledged before they asked, however many ask at once', async () => {
    const { store, reader } = await open();
    await reader.everything();
    for (let i = 1; i <= 30; i++) {
      await store.append([revisionOf({ ...checkAt('TA', '2026-07-15', i), visit: i })]);
      const seen = await Promise.all([reader.everything(), reader.prepared(THIS_MACHINE, ON), reader.everything()]);
      expect(seen[0].checks.filter(({ checkedOn }) => checkedOn === '2026-07-15')).toHaveLength(i);
      expect(seen[1].checksByTrap.get('TA')!.at(-1)!.checkedOn).toBe('2026-07-15');
      expect(seen[2].checks).toHaveLength(seen[0].checks.length);
    }
  });
});
