import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Base, type NewRevision, newRevision, type Outbox } from '../../web/src/sync/index.ts';
import { bench, check, dayFrom, type Fault } from './bench.ts';

type Step =
  | { readonly do: 'write'; readonly phone: 0 | 1; readonly day: number; readonly count: number; readonly edits: boolean }
  | { readonly do: 'remove'; readonly phone: 0 | 1; readonly day: number }
  | { readonly do: 'sync'; readonly phone: 0 | 1; readonly faults: readonly Fault[] }
  | { readonly do: 'look'; readonly phone: 0 | 1 }
  | { readonly do: 'backup' }
  | { readonly do: 'restore' };

const phone = fc.constantFrom(0 as const, 1 as const);
const day = fc.integer({ min: 0, max: 2 });
const fault = fc.constantFrom<Fault>('before', 'after', 'half', 'twice', 'none');
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      do: fc.constant('write' as const),
      phone,
      day,
      count: fc.integer({ min: 0, max: 3 }),
      edits: fc.boolean(),
    }),
  },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('remove' as const), phone, day }) },
  { weight: 4, arbitrary: fc.record({ do: fc.constant('sync' as const), phone, faults: fc.array(fault, { maxLength: 3 }) }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('look' as const), phone }) },
  { weight: 1, arbitrary: fc.constant({ do: 'backup' as const }) },
  { weight: 1, arbitrary: fc.constant({ do: 'restore' as const }) },
);

/**
 * Whatever two phones write, in whatever order they send, whatever the network drops or doubles, and though the
 * server goes back to a backup in between: when all is sent, everything ever written is in the history, and each
 * count is current, built upon, decided over or listed for a decision.
 */
test('nothing that was written is ever lost, whatever happens on the way', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 4, maxLength: 18 }), async (steps) => {
      const b = await bench();
      const phones: Outbox[] = [await b.phone({ batchSize: 2 }), await b.phone({ batchSize: 3 })];
      /** What each phone has in view, by natural key: what it wrote itself or last saw on the server. */
      const views: Map<string, Base>[] = [new Map(), new Map()];
      const written: NewRevision<'checks'>[] = [];
      let backup: string | null = null;

      const put = async (who: 0 | 1, revision: NewRevision<'checks'>, key: string) => {
        await phones[who]!.put(revision);
        written.push(revision);
        if (revision.value === null) views[who]!.delete(key);
        else views[who]!.set(key, revision);
      };
      for (const each of steps) {
        b.nowMs += 60_000;
        if (each.do === 'write') {
          const value = check(dayFrom(each.day), each.count);
          const key = `T1|${value.checkedOn}|1`;
          await put(
            each.phone,
            newRevision('checks', value, each.edits ? (views[each.phone]!.get(key) ?? null) : null, b.nowMs),
            key,
          );
        } else if (each.do === 'remove') {
          const key = `T1|${dayFrom(each.day)}|1`;
          const base = views[each.phone]!.get(key);
          if (base) await put(each.phone, newRevision<'checks'>('checks', null, base, b.nowMs), key);
        } else if (each.do === 'sync') {
          b.faults.push(...each.faults);
          await phones[each.phone]!.sync();
          b.faults.length = 0;
        } else if (each.do === 'look') {
          const current = await b.store.current('checks');
          for (const record of current) views[each.phone]!.set(record.key, record);
        } else if (each.do === 'backup') backup = await b.backup();
        else if (backup) await b.restart(backup);
      }
      // Twice: what one phone refused or built on may only now be there.
      for (const outbox of [...phones, ...phones]) expect(await outbox.sync()).toBe('sent');

      const stored = await b.store.changesSince(0, 10_000);
      const known = new Map(stored.map((said) => [said.revisionId, said]));
      const conflicts = await b.store.conflicts();
      const listed = new Set(conflicts.flatMap((conflict) => [conflict.held, ...conflict.rivals]).map((said) => said.revisionId));
      const settled = new Set(stored.flatMap((said) => [said.baseRevisionId, ...(said.settles ?? [])]));
      const refused = new Set(
        (await Promise.all(phones.map((outbox) => outbox.refused()))).flat().map(({ revision }) => revision.revisionId),
      );
      const alike = (said: NewRevision) =>
        stored.some(
          (other) =>
            other.revisionId !== said.revisionId &&
            other.baseRevisionId === said.baseRevisionId &&
            other.recordId === said.recordId &&
            JSON.stringify(other.value) === JSON.stringify(known.get(said.revisionId)!.value),
        );
      for (const said of written) {
        if (refused.has(said.revisionId)) continue;
        const held = known.get(said.revisionId);
        expect(held).toMatchObject({ recordId: said.recordId, value: said.value });
        const accounted =
          ['current', 'removed'].includes(held!.standing) ||
          settled.has(said.revisionId) ||
          listed.has(said.revisionId) ||
          alike(said);
        expect(accounted).toBe(true);
      }
      // A removal of what a restored server has forgotten for good is the only thing ever refused here.
      for (const outbox of phones) for (const { revision } of await outbox.refused()) expect(revision.value).toBeNull();
      for (const outbox of phones) expect(outbox.status()).toMatchObject({ pending: 0 });
      const keys = (await b.store.current('checks')).map((record) => record.key);
      expect(new Set(keys).size).toBe(keys.length);
    }),
    { numRuns: 60 },
  );
}, 240_000);
