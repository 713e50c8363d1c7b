import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { emptyProgram, type Program } from '@duskwatch/core';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openStore } from '../open.ts';
import { anyProgram } from './arbitraries.ts';
import type { Bench } from './bench.ts';
import { accepted, at, check, first, next } from './samples.ts';

const by = { author: 'Ida', at: at(0) };
const manyChecks = (count: number) =>
  Array.from({ length: count }, (_, n) => check(n % 9, { trapId: `t-${n % 400}`, visit: 1 + (Math.floor(n / 400) % 99) }));

export function importContract({ store, harness }: Bench): void {
  test('whatever a program holds, it is loaded as it was imported; and importing it again adds nothing', async () => {
    const url = await harness.fresh();
    let programs = 0;
    await fc.assert(
      fc.asyncProperty(anyProgram, async (program) => {
        const s = await store(url, `program-${programs++}`);
        accepted(await s.importProgram(program, by));
        expect(await s.loadProgram()).toEqual(program);
        const { revisions } = await s.counts();
        expect(accepted(await s.importProgram(program, { ...by, at: at(9) }))).toEqual({
          added: 0,
          changed: 0,
          unchanged: revisions,
        });
        expect(await s.counts()).toMatchObject({ revisions, rivals: 0 });
        expect(await s.verify()).toEqual({ checked: revisions, problems: [] });
        await s.close();
      }),
      { numRuns: 20, interruptAfterTimeLimit: 30_000 },
    );
  }, 120_000);

  test('an import revises what changed, adds what is new, and leaves alone what it does not name', async () => {
    const s = await store();
    const before = {
      settings: { name: 'Hollow Vale', invented: true, pinnedOn: null },
      checks: [check(4), check(5, { visit: 2 })],
    };
    await s.importProgram(before, by);
    const later = { checks: [check(6, { visit: 2 }), check(1, { visit: 3 })] };
    expect(accepted(await s.importProgram(later, { author: 'Ben', at: at(5) }))).toEqual({ added: 1, changed: 1, unchanged: 0 });
    const loaded = await s.loadProgram();
    expect(loaded.checks).toEqual([check(4), ...later.checks]);
    expect(loaded.settings).toEqual(before.settings);
    const history = await s.history({ kind: 'checks', key: 'low-meadow-1|2026-07-14|2' });
    expect(history.map((r) => [r.author, r.standing, r.value])).toEqual([
      ['Ida', 'past', check(5, { visit: 2 })],
      ['Ben', 'current', check(6, { visit: 2 })],
    ]);
    expect(history[1]!.baseRevisionId).toBe(history[0]!.revisionId);
    expect(await s.conflicts()).toEqual([]);
  });

  test('what a file brought is taken back whole: what it changed says again what it said before, what it added is removed', async () => {
    const s = await store();
    const before = { checks: [check(4), check(5, { visit: 2 })] };
    await s.importProgram(before, by);
    const file = { importId: 'file-1', file: 'counts.xlsx', reading: null, match: null };
    const later = { checks: [check(6, { visit: 2 }), check(1, { visit: 3 })] };
    expect(accepted(await s.importProgram(later, { author: 'Ben', at: at(5), as: file }))).toMatchObject({
      added: 1,
      changed: 1,
    });
    // Sent again, as a phone does that had no answer.
    expect(accepted(await s.importProgram(later, { author: 'Ben', at: at(5), as: file }))).toMatchObject({
      added: 0,
      changed: 0,
    });
    expect(await s.imports.list()).toEqual([{ ...file, author: 'Ben', at: at(5), added: 1, changed: 1, undone: null }]);
    expect((await s.imports.revisions('file-1'))?.map(({ key }) => key)).toHaveLength(2);

    expect(accepted(await s.imports.undo('file-1', { author: 'Ida', at: at(8) }))).toEqual({ undone: 2 });
    expect((await s.loadProgram()).checks).toEqual(before.checks);
    expect((await s.imports.list())[0]).toMatchObject({ undone: { author: 'Ida', at: at(8) } });
    expect(accepted(await s.imports.undo('file-1', { author: 'Ida', at: at(9) }))).toEqual({ undone: 0 });
    expect(await s.verify()).toMatchObject({ problems: [] });
  });

  test('an import is not taken back where somebody changed a record of it since', async () => {
    const s = await store();
    const file = { importId: 'file-1', file: 'counts.csv', reading: null, match: null };
    await s.importProgram({ checks: [check(4), check(5, { visit: 2 })] }, { ...by, as: file });
    await s.importProgram({ checks: [check(7)] }, { author: 'Ben', at: at(5) });
    const refused = await s.imports.undo('file-1', { author: 'Ida', at: at(8) });
    expect(refused).toMatchObject({
      ok: false,
      problems: [{ got: expect.stringContaining('changed after the import (1 in all)') }],
    });
    expect((await s.loadProgram()).checks).toEqual([check(7), check(5, { visit: 2 })]);
    expect((await s.imports.undo('none', by)).ok).toBe(false);
  });

  test('a removed record that an import names again goes on with its own history', async () => {
    const s = await store();
    const one = first(check(4), 0);
    await s.append([one, next(one, null, 1)]);
    expect(accepted(await s.importProgram({ checks: [check(4)] }, by))).toEqual({ added: 1, changed: 0, unchanged: 0 });
    expect((await s.history(one.recordId)).map((r) => r.standing)).toEqual(['past', 'past', 'current']);
  });

  test('an import settles no conflict: that is for a person', async () => {
    const s = await store();
    const base = first(check(4), 0);
    await s.append([base, next(base, check(5), 10), next(base, check(6), 20)]);
    await s.importProgram({ checks: [check(7)] }, by);
    expect((await s.loadProgram()).checks).toEqual([check(7)]);
    expect(await s.conflicts()).toMatchObject([{ held: { value: check(7) }, rivals: [{ value: check(5) }] }]);
  });

  test('faulty records and two different records of one key keep the whole import out, each with its row', async () => {
    const s = await store();
    const answer = await s.importProgram({ checks: [check(4), check(-1, { visit: 2 }), check(5)] }, by);
    expect(answer.ok ? [] : answer.problems.map((p) => p.where)).toEqual([
      { file: 'checks', row: 2, column: 'targetCount' },
      { file: 'checks', row: 3 },
    ]);
    expect(await s.counts()).toMatchObject({ revisions: 0, lastSequence: 0 });
  });

  test('progress rises to the number of records', async () => {
    const s = await store();
    const seen: { done: number; total: number }[] = [];
    await s.importProgram({ checks: manyChecks(12_000) }, { ...by, onProgress: (progress) => seen.push(progress) });
    expect(seen.length).toBeGreaterThan(2);
    expect(seen.map((p) => p.done)).toEqual([...seen.map((p) => p.done)].sort((a, b) => a - b));
    expect(seen.at(-1)).toEqual({ done: 12_000, total: 12_000 });
  });

  test('an import that fails half way leaves nothing, and the same import succeeds after', async () => {
    const s = await store();
    const checks = manyChecks(12_000);
    const stop = () => {
      throw new Error('the cable was pulled');
    };
    await expect(s.importProgram({ checks }, { ...by, onProgress: stop })).rejects.toThrow('cable');
    expect(await s.counts()).toMatchObject({ revisions: 0, lastSequence: 0 });
    expect((await s.loadProgram()).checks).toEqual([]);
    expect(accepted(await s.importProgram({ checks }, by))).toMatchObject({ added: 12_000 });
  });

  test('two people at once, one importing while the other writes: both are kept, numbered without gaps', async () => {
    const url = await harness.fresh();
    const [ida, ben] = [await store(url), await store(url)];
    const bens = Array.from({ length: 20 }, (_, n) => first(check(n, { trapId: 'bens', visit: n + 1 }), n, 'Ben'));
    const answers = await Promise.all([
      ida.importProgram({ checks: manyChecks(6_000) }, by),
      ...bens.map((said) => ben.append([said])),
      ida.append([first(check(3, { trapId: 'idas' }), 0)]),
    ]);
    expect(answers.every((answer) => answer.ok)).toBe(true);
    expect(await ben.counts()).toMatchObject({ revisions: 6_021, lastSequence: 6_021, records: { checks: 6_021 } });
    expect((await ida.changesSince(0, 10_000)).map((r) => r.sequence)).toEqual(Array.from({ length: 6_021 }, (_, n) => n + 1));
  });

  test('two people who import the same folder at once bring it in once', async () => {
    const url = await harness.fresh();
    const [ida, ben] = [await store(url), await store(url)];
    const program: Program = { ...emptyProgram({ name: 'Hollow Vale' }), checks: manyChecks(500) };
    const [one, two] = await Promise.all([ida.importProgram(program, by), ben.importProgram(program, by)]);
    expect(accepted(one).added + accepted(two).added).toBe(501);
    expect(await ben.counts()).toMatchObject({ revisions: 501, rivals: 0 });
  });

  test('a backup is one file, whole, opens as a store, and is never overwritten', async () => {
    const url = await harness.fresh();
    const [s, west] = [await store(url), await store(url, 'west')];
    const base = first(check(4), 0);
    await s.append([base, next(base, check(5), 10), next(base, check(6), 20)]);
    await west.append([first(check(9), 0)]);
    const folder = mkdtempSync(join(tmpdir(), 'duskwatch-backup-'));
    try {
      const file = join(folder, 'vale.duskwatch');
      await s.backup(file);
      expect(readdirSync(folder)).toEqual(['vale.duskwatch']);
      await expect(s.backup(file)).rejects.toMatchObject({ code: 'file-exists' });
      const copy = await openStore(file);
      expect(await copy.changesSince(0)).toEqual(await s.changesSince(0));
      expect(await copy.conflicts()).toEqual(await s.conflicts());
      expect(await copy.verify()).toEqual({ checked: 3, problems: [] });
      await copy.close();
      const westCopy = await openStore(file, { program: 'west' });
      expect((await westCopy.loadProgram()).checks).toEqual([check(9)]);
      await westCopy.close();
      expect(existsSync(`${file}.part`)).toBe(false);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
}
