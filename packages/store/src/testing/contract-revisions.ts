import { expect, test } from 'vitest';
import { openStore } from '../open.ts';
import type { Bench } from './bench.ts';
import { accepted, at, check, first, next } from './samples.ts';

export function revisionContract({ store, harness }: Bench): void {
  test('a revision sent twice is kept once', async () => {
    const s = await store();
    const said = first(check(4), 0);
    expect(accepted(await s.append([said]))).toMatchObject({ added: [said.revisionId], alreadyThere: [] });
    expect(accepted(await s.append([said, said]))).toMatchObject({ added: [], alreadyThere: [said.revisionId, said.revisionId] });
    expect(await s.history(said.recordId)).toHaveLength(1);
    expect(await s.counts()).toMatchObject({ revisions: 1, lastSequence: 1, records: { checks: 1 } });
  });

  test('a revision id that comes back with other contents is refused, and the first contents stay', async () => {
    const s = await store();
    const said = first(check(4), 0);
    await s.append([said]);
    const answer = await s.append([{ ...said, value: check(40) }]);
    expect(answer).toMatchObject({ ok: false, problems: [{ where: { column: 'revisionId' }, got: said.revisionId }] });
    expect((await s.loadProgram()).checks).toEqual([check(4)]);
  });

  test('history holds every revision in order of arrival, with author and instant; only the last is current', async () => {
    const s = await store();
    const one = first(check(4), 0);
    const two = next(one, check(5), 5, 'Ben');
    await s.append([one]);
    await s.append([two]);
    const history = await s.history(one.recordId);
    expect(history.map((r) => [r.sequence, r.author, r.at, r.value, r.standing])).toEqual([
      [1, 'Ida', at(0), check(4), 'past'],
      [2, 'Ben', at(5), check(5), 'current'],
    ]);
    expect(await s.history({ kind: 'checks', key: 'low-meadow-1|2026-07-14|1' })).toEqual(history);
    expect((await s.current('checks')).map((r) => r.revisionId)).toEqual([two.revisionId]);
  });

  test('a correction of the date moves the record to its new key and frees the old one', async () => {
    const s = await store();
    const one = first(check(4), 0);
    await s.append([one, next(one, check(4, { checkedOn: '2026-07-13' }), 1)]);
    const again = first(check(9), 2);
    expect(accepted(await s.append([again])).conflicts).toEqual([]);
    expect((await s.loadProgram()).checks.map((c) => c.checkedOn)).toEqual(['2026-07-13', '2026-07-14']);
  });

  test('a removed record leaves the program, keeps its history and can be restored', async () => {
    const s = await store();
    const one = first(check(4), 0);
    const gone = next(one, null, 1);
    await s.append([one, gone]);
    expect((await s.loadProgram()).checks).toEqual([]);
    expect((await s.history({ kind: 'checks', key: 'low-meadow-1|2026-07-14|1' })).map((r) => r.standing)).toEqual([
      'past',
      'removed',
    ]);
    accepted(await s.restore(one.revisionId, { author: 'Ben', at: at(2) }));
    expect((await s.loadProgram()).checks).toEqual([check(4)]);
    expect((await s.history(one.recordId)).map((r) => [r.author, r.standing])).toEqual([
      ['Ida', 'past'],
      ['Ida', 'past'],
      ['Ben', 'current'],
    ]);
    expect(await s.conflicts()).toEqual([]);
  });

  test('what cannot be restored or removed is refused with a reason', async () => {
    const s = await store();
    const stray = first(check(1), 0);
    expect(await s.restore(stray.revisionId, { author: 'Ida', at: at(0) })).toMatchObject({ ok: false });
    expect(await s.append([next(stray, null, 1)])).toMatchObject({ ok: false, problems: [{ where: { column: 'recordId' } }] });
    expect(await s.counts()).toMatchObject({ revisions: 0, lastSequence: 0 });
  });

  test('one faulty revision keeps the whole batch out, and every fault is named', async () => {
    const s = await store();
    const faulty = [
      { ...first(check(-3), 0) },
      { ...first(check(1), 0), at: 'yesterday' },
      { ...first(check(1), 0), author: ' ' },
      { ...first(check(1), 0), revisionId: 'r1' },
    ];
    const answer = await s.append([first(check(4), 0), ...faulty]);
    expect(answer.ok ? [] : answer.problems.map((p) => [p.where.row, p.where.column])).toEqual([
      [2, 'targetCount'],
      [3, 'at'],
      [4, 'author'],
      [5, 'revisionId'],
    ]);
    expect(await s.counts()).toMatchObject({ revisions: 0 });
  });

  test('an instant written in another zone is the same instant', async () => {
    const s = await store();
    const said = { ...first(check(4), 0), at: '2026-07-14T18:00:00-03:00' };
    await s.append([said]);
    expect((await s.history(said.recordId))[0]!.at).toBe(at(0));
  });

  test('changes since a sequence number come oldest first and can be read in pages', async () => {
    const s = await store();
    const all = [1, 2, 3, 4, 5].map((n) => first(check(n, { visit: n }), n));
    await s.append(all);
    const page = await s.changesSince(1, 2);
    expect(page.map((r) => r.revisionId)).toEqual([all[1]!.revisionId, all[2]!.revisionId]);
    expect((await s.changesSince(page.at(-1)!.sequence)).map((r) => r.sequence)).toEqual([4, 5]);
    expect(await s.changesSince(5)).toEqual([]);
  });

  test('changes sent on to another store make it say the same', async () => {
    const [here, there] = [await store(), await store()];
    const one = first(check(4), 0);
    await here.append([one, next(one, check(5), 5), next(one, check(6), 3), first(check(8), 1)]);
    accepted(
      await there.append((await here.changesSince(0)).map(({ key: _k, sequence: _s, standing: _t, ...revision }) => revision)),
    );
    expect(await there.loadProgram()).toEqual(await here.loadProgram());
    expect(await there.conflicts()).toEqual(await here.conflicts());
  });

  test('programs in one database do not see one another', async () => {
    const url = await harness.fresh();
    const [east, west] = [await store(url, 'east'), await store(url, 'west')];
    const said = first(check(4), 0);
    await east.append([said]);
    expect(await west.history(said.recordId)).toEqual([]);
    accepted(await west.append([first(check(7), 0), said].slice(0, 1)));
    expect((await east.loadProgram()).checks).toEqual([check(4)]);
    expect((await west.loadProgram()).checks).toEqual([check(7)]);
    expect(await west.counts()).toMatchObject({ lastSequence: 1 });
  });

  test('what was written is there when the database is opened again', async () => {
    const url = await harness.fresh();
    const before = await openStore(url);
    await before.append([first(check(4), 0)]);
    await before.close();
    expect((await (await store(url)).loadProgram()).checks).toEqual([check(4)]);
  });

  test('a database from a newer Duskwatch is refused with a clear message', async () => {
    const url = await harness.fresh();
    await (await openStore(url)).close();
    await harness.makeNewer(url);
    await expect(openStore(url)).rejects.toMatchObject({
      code: 'newer-schema',
      message: expect.stringContaining('Update Duskwatch'),
    });
  });
}
