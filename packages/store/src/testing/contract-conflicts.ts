import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Revision } from '../types.ts';
import type { Bench } from './bench.ts';
import { accepted, at, check, first, next } from './samples.ts';

export function conflictContract({ store, harness }: Bench): void {
  test('of two edits of one base the later is current, the other stays and awaits a decision', async () => {
    const s = await store();
    const base = first(check(4), 0);
    const ida = next(base, check(5), 10, 'Ida');
    const ben = next(base, check(6), 20, 'Ben');
    await s.append([base, ben]);
    // Ida's phone had no signal: what she wrote first arrives last.
    const { conflicts } = accepted(await s.append([ida]));
    expect((await s.loadProgram()).checks).toEqual([check(6)]);
    expect(conflicts).toEqual(await s.conflicts());
    expect(conflicts).toMatchObject([
      {
        reason: 'same-record',
        kind: 'checks',
        key: 'low-meadow-1|2026-07-14|1',
        held: { revisionId: ben.revisionId, author: 'Ben', standing: 'current' },
        rivals: [{ revisionId: ida.revisionId, value: check(5), standing: 'rival' }],
      },
    ]);
    expect(await s.counts()).toMatchObject({ rivals: 1, records: { checks: 1 } });
  });

  test('a person decides by restoring one side, or by a new edit that names the rival', async () => {
    const s = await store();
    const base = first(check(4), 0);
    const [ida, ben] = [next(base, check(5), 10), next(base, check(6), 20)];
    await s.append([base, ida, ben]);
    accepted(await s.restore(ida.revisionId, { author: 'Ada', at: at(30) }));
    expect(await s.conflicts()).toEqual([]);
    expect((await s.loadProgram()).checks).toEqual([check(5)]);

    const [decided] = await s.current('checks');
    const [left, right] = [next(decided!, check(7), 40), next(decided!, check(8), 50)];
    await s.append([left, right]);
    expect(await s.conflicts()).toHaveLength(1);
    const both: Revision<'checks'> = { ...next(right as Revision<'checks'>, check(15), 60), settles: [left.revisionId] };
    expect(accepted(await s.append([both])).conflicts).toEqual([]);
    expect((await s.loadProgram()).checks).toEqual([check(15)]);
    expect(await s.history(base.recordId)).toHaveLength(7);
  });

  test('an edit made without knowledge of a removal is at odds with it, whichever came later', async () => {
    const s = await store();
    const base = first(check(4), 0);
    const [removal, edit] = [next(base, null, 10), next(base, check(5), 5)];
    await s.append([base, removal]);
    expect(accepted(await s.append([edit])).conflicts).toMatchObject([
      { reason: 'same-record', held: { value: null, standing: 'removed' }, rivals: [{ revisionId: edit.revisionId }] },
    ]);
    expect((await s.loadProgram()).checks).toEqual([]);
  });

  test('two people who make the same change are not at odds', async () => {
    const s = await store();
    const base = first(check(4), 0);
    const [ida, ben] = [next(base, check(5), 10, 'Ida'), next(base, check(5), 20, 'Ben')];
    expect(accepted(await s.append([base, ida, ben])).conflicts).toEqual([]);
    expect(accepted(await s.append([next(ben, check(6), 30)])).conflicts).toEqual([]);
    expect((await s.loadProgram()).checks).toEqual([check(6)]);
  });

  test('the same check entered by two people offline: both stay, the later is current, and it is listed', async () => {
    const s = await store();
    const [ida, ben] = [first(check(4), 20, 'Ida'), first(check(6), 10, 'Ben')];
    await s.append([ida]);
    expect(accepted(await s.append([ben])).conflicts).toMatchObject([
      { reason: 'same-key', held: { revisionId: ida.revisionId }, rivals: [{ revisionId: ben.revisionId, standing: 'rival' }] },
    ]);
    expect((await s.loadProgram()).checks).toEqual([check(4)]);
    expect(await s.history({ kind: 'checks', key: 'low-meadow-1|2026-07-14|1' })).toHaveLength(2);
  });

  test('of two such checks, removing either leaves the other and nothing to decide', async () => {
    for (const loser of [0, 1]) {
      const s = await store();
      const two = [first(check(4), 10), first(check(6), 20)];
      await s.append(two);
      expect(accepted(await s.append([next(two[loser]!, null, 30)])).conflicts).toEqual([]);
      expect((await s.loadProgram()).checks).toEqual([two[1 - loser]!.value]);
      expect(await s.conflicts()).toEqual([]);
    }
  });

  test('two such checks that were two visits: one becomes the second visit, and nothing is left to decide', async () => {
    const s = await store();
    const two = [first(check(4), 10), first(check(6), 20)];
    await s.append(two);
    await s.append([next(two[0]!, check(4, { visit: 2 }), 30)]);
    expect(await s.conflicts()).toEqual([]);
    expect((await s.loadProgram()).checks).toEqual([check(6), check(4, { visit: 2 })]);
  });

  test('who builds on a revision comes after it, though their clock be slow', async () => {
    const s = await store();
    const base = first(check(4), 0);
    const [fast, other] = [next(base, check(5), 50), next(base, check(6), 40)];
    await s.append([base, fast, other, next(fast, check(7), 10)]);
    expect((await s.loadProgram()).checks).toEqual([check(7)]);
    expect(await s.conflicts()).toMatchObject([{ rivals: [{ revisionId: other.revisionId }] }]);
  });

  test('in whatever order and batches revisions arrive, the same ones end up current, past, removed and rival', async () => {
    const url = await harness.fresh();
    let programs = 0;
    const standings = async (batches: Revision[][]) => {
      const s = await store(url, `program-${programs++}`);
      for (const batch of batches) accepted(await s.append(batch));
      const all = await s.changesSince(0);
      const { checks } = await s.loadProgram();
      await s.close();
      return { standings: Object.fromEntries(all.map((r) => [r.revisionId, r.standing])), checks };
    };
    await fc.assert(
      fc.asyncProperty(anyRevisions, fc.infiniteStream(fc.nat()), async ({ roots, edits }, order) => {
        const shuffled = edits
          .map((edit) => ({ edit, rank: order.next().value as number }))
          .sort((a, b) => a.rank - b.rank)
          .map(({ edit }) => [edit]);
        const atOnce = await standings([[...roots, ...edits]]);
        expect(await standings([[...roots].reverse(), ...shuffled])).toEqual(atOnce);
        const current = Object.values(atOnce.standings).filter((standing) => standing === 'current');
        expect(current).toHaveLength(atOnce.checks.length);
      }),
      { numRuns: 25, interruptAfterTimeLimit: 30_000 },
    );
  }, 120_000);
}

/** Three records that contend for two visits, each edited a few times from any of its revisions. */
const anyRevisions = fc
  .record({
    roots: fc.array(fc.record({ visit: fc.integer({ min: 1, max: 2 }), minute: fc.nat(9) }), { minLength: 1, maxLength: 3 }),
    edits: fc.array(
      fc.record({
        base: fc.nat(),
        settles: fc.option(fc.nat(), { nil: null }),
        minute: fc.nat(9),
        value: fc.option(fc.record({ visit: fc.integer({ min: 1, max: 2 }), count: fc.nat(2) }), { nil: null, freq: 4 }),
      }),
      { maxLength: 7 },
    ),
  })
  .map(({ roots, edits }) => {
    const said: Revision<'checks'>[] = roots.map(({ visit, minute }, n) => first(check(n, { visit }), minute));
    for (const { base, settles, minute, value } of edits) {
      const from = said[base % said.length]!;
      const edit = next(from, value && check(value.count, { visit: value.visit }), minute);
      const other = settles === null ? undefined : said[settles % said.length]!;
      said.push(other && other.recordId === from.recordId && other !== from ? { ...edit, settles: [other.revisionId] } : edit);
    }
    return { roots: said.slice(0, roots.length), edits: said.slice(roots.length) };
  });
