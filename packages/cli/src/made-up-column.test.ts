/** A column that a schema gains goes through files and the store by itself: nothing lists the columns a second time. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CheckRecord, TrapRecord } from '@duskwatch/core';
import { afterAll, describe, expect, test, vi } from 'vitest';

vi.mock('../../core/src/records/schema.ts', async (actual) => {
  const { schemaWithMoon } = await import('../../core/src/records/made-up-column.testing.ts');
  return schemaWithMoon(await actual());
});
vi.mock('../../core/src/records/column-words.ts', async (actual) => {
  const { wordsWithMoon } = await import('../../core/src/records/made-up-column.testing.ts');
  return wordsWithMoon(await actual());
});

const { emptyProgram, repeatedChecks } = await import('@duskwatch/core');
const { readProgramFolder, readTable, writeProgramFolder } = await import('@duskwatch/exchange');
const { openStore, uuidv7 } = await import('@duskwatch/store');

const folder = mkdtempSync(join(tmpdir(), 'duskwatch-column-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const visit: CheckRecord = {
  trapId: 'T1',
  checkedOn: '2026-07-01',
  visit: 1,
  targetCount: 3,
  otherCount: null,
  condition: 'fit',
  emptied: true,
  note: null,
};
const byFullMoon: CheckRecord = { ...visit, ...{ moonPhase: 'full' } };
const trap: TrapRecord = {
  trapId: 'T1',
  station: 'Gate',
  insect: 'helicoverpa-zea',
  design: 'bucket',
  latitude: null,
  longitude: null,
  hungOn: '2026-06-01',
  takenDownOn: null,
  informs: [],
};

describe('a made-up column of checks', () => {
  test('makes two visits that differ in nothing else two visits', () => {
    expect(repeatedChecks([visit, byFullMoon])).toEqual([]);
    expect(repeatedChecks([byFullMoon, { ...byFullMoon }])).toHaveLength(1);
  });

  test('is written to a program folder, and read from it', async () => {
    const dir = join(folder, 'program');
    const program = { ...emptyProgram(), traps: [trap], checks: [byFullMoon] };
    await writeProgramFolder(program, dir);
    expect(readFileSync(join(dir, 'checks.csv'), 'utf8').split('\n')[0]).toContain('moon_phase');
    const read = await readProgramFolder(dir);
    expect(read.ok && read.value.checks[0]).toMatchObject({ moonPhase: 'full' });
  });

  test('says what may stand in it', () => {
    const read = readTable('checks', 'trap_id,checked_on,target_count,condition,moon_phase\nT1,2026-07-01,3,fit,half\n');
    expect(read).toMatchObject({ ok: false, problems: [{ where: { column: 'moon_phase' }, expected: 'one of new, full' }] });
  });

  test('is kept by the store, and told when a revision changes it', async () => {
    const store = await openStore(join(folder, 'data.sqlite'));
    const id = uuidv7();
    const said = { recordId: id, kind: 'checks' as const, author: 'Ida', value: byFullMoon };
    await store.append([{ ...said, revisionId: id, baseRevisionId: null, at: '2026-07-01T20:00:00Z' }]);
    const later = { ...said, revisionId: uuidv7(), baseRevisionId: id, at: '2026-07-02T20:00:00Z' };
    await store.append([{ ...later, value: { ...byFullMoon, ...{ moonPhase: 'new' } } }]);
    expect((await store.loadProgram()).checks).toEqual([{ ...visit, moonPhase: 'new' }]);
    expect((await store.history(id)).map(({ value }) => value)).toEqual([byFullMoon, { ...visit, moonPhase: 'new' }]);
    await store.close();
  });
});
