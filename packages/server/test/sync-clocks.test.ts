import { expect, test } from 'vitest';
import { newRevision } from '../../web/src/sync/index.ts';
import { type Bench, bench, check, NOON } from './bench.ts';

const HOUR = 3_600_000;
const MINUTE = 60_000;

/** A first count that everybody has seen, and two phones that correct it without knowledge of one another. */
async function twoCorrections(b: Bench, skews: { readonly ida: number; readonly ben: number }) {
  const clocks = { ida: () => b.nowMs + skews.ida, ben: () => b.nowMs + skews.ben };
  const ida = await b.phone({ now: clocks.ida });
  const ben = await b.phone({ now: clocks.ben });
  const seen = newRevision('checks', check('2026-07-14', 4), null, b.nowMs);
  const desk = await b.phone();
  await desk.put(seen);
  await desk.sync();
  // Ida writes ten minutes before Ben; both send in the evening.
  b.nowMs = NOON + 10 * MINUTE;
  await ida.put(newRevision('checks', check('2026-07-14', 5), seen, clocks.ida()));
  b.nowMs = NOON + 20 * MINUTE;
  await ben.put(newRevision('checks', check('2026-07-14', 6), seen, clocks.ben()));
  b.nowMs = NOON + 8 * HOUR;
  return { ida, ben, seen };
}

test.each([
  ['right', 0, 0],
  ['Ida’s five hours ahead', 5 * HOUR, 0],
  ['Ben’s five hours behind', 0, -5 * HOUR],
  ['Ida’s from before the battery died, in 2010', -16 * 365 * 24 * HOUR, 0],
  ['Ida’s a year ahead, Ben’s a day behind', 365 * 24 * HOUR, -24 * HOUR],
])(
  'with clocks %s, the later edit is current and the other awaits a decision, whichever arrives first',
  async (_, idaOff, benOff) => {
    for (const order of ['ida', 'ben'] as const) {
      const b = await bench();
      const { ida, ben, seen } = await twoCorrections(b, { ida: idaOff, ben: benOff });
      for (const phone of order === 'ida' ? [ida, ben] : [ben, ida]) expect(await phone.sync()).toBe('sent');
      expect((await b.store.loadProgram()).checks).toEqual([check('2026-07-14', 6)]);
      expect(await b.store.conflicts()).toMatchObject([
        { reason: 'same-record', held: { value: { targetCount: 6 } }, rivals: [{ value: { targetCount: 5 } }] },
      ]);
      expect(await b.store.history(seen.recordId)).toHaveLength(3);
      expect(ida.status().clockSkewMs).toBe(idaOff);
    }
  },
);

test('a clock that was ahead and was put right before sending wins at most by the moment of arrival', async () => {
  const b = await bench();
  const ida = await b.phone();
  const ben = await b.phone();
  const seen = newRevision('checks', check('2026-07-14', 4), null, NOON - HOUR);
  await ida.put(seen);
  await ida.sync();
  // Written with a clock a day ahead; at sending the clock is right, so that nothing can be measured.
  await ida.put(newRevision('checks', check('2026-07-14', 5), seen, NOON + 24 * HOUR));
  await ida.sync();
  b.nowMs = NOON + HOUR;
  await ben.put(newRevision('checks', check('2026-07-14', 6), seen, b.nowMs));
  await ben.sync();
  expect((await b.store.loadProgram()).checks).toEqual([check('2026-07-14', 6)]);
  expect(await b.store.conflicts()).toHaveLength(1);
});

test('a clock that was behind and was put right before sending may lose, but not in silence', async () => {
  const b = await bench();
  const { ida, ben, seen } = await twoCorrections(b, { ida: 0, ben: 0 });
  await ida.sync();
  await ben.sync();
  const slow = await b.phone();
  const late = newRevision('checks', check('2026-07-14', 9), seen, NOON - 48 * HOUR);
  await slow.put(late);
  await slow.sync();
  const [conflict] = await b.store.conflicts();
  expect(conflict!.rivals.map((said) => said.revisionId)).toContain(late.revisionId);
});

test('who builds on a revision comes after it, whatever the two clocks say', async () => {
  const b = await bench();
  const ahead = await b.phone({ now: () => b.nowMs + 5 * HOUR });
  const right = await b.phone();
  const seen = newRevision('checks', check('2026-07-14', 4), null, NOON + 5 * HOUR);
  await ahead.put(seen);
  await ahead.sync();
  await right.put(newRevision('checks', check('2026-07-14', 5), seen, NOON));
  await right.sync();
  expect((await b.store.loadProgram()).checks).toEqual([check('2026-07-14', 5)]);
  expect(await b.store.conflicts()).toEqual([]);
});

test('two phones that count one trap on one day make one conflict, and deciding it ends it', async () => {
  const b = await bench();
  const [ida, ben] = [await b.phone(), await b.phone()];
  await ida.put(newRevision('checks', check('2026-07-14', 5), null, NOON));
  await ben.put(newRevision('checks', check('2026-07-14', 6), null, NOON + MINUTE));
  b.nowMs = NOON + HOUR;
  await ben.sync();
  await ida.sync();
  const listed = (await b.app.inject('/api/conflicts')).json();
  expect(listed).toMatchObject([
    {
      reason: 'same-key',
      key: 'T1|2026-07-14|1',
      held: { value: { targetCount: 6 }, authorName: 'This machine' },
      rivals: [{ value: { targetCount: 5 } }],
    },
  ]);
  const { kind, key, rivals } = listed[0];
  const decide = () =>
    b.app.inject({ method: 'POST', url: '/api/conflicts/settle', payload: { kind, key, keepRevisionId: rivals[0].revisionId } });
  expect((await decide()).json()).toMatchObject({ open: 0 });
  expect((await b.store.loadProgram()).checks).toEqual([check('2026-07-14', 5)]);
  // Decided twice is decided once.
  expect((await decide()).statusCode).toBe(404);
  const history = (await b.app.inject(`/api/records/checks/${encodeURIComponent(key)}/history`)).json();
  expect(history.map((said: { value: { targetCount: number } | null }) => said.value?.targetCount ?? null)).toEqual([
    6,
    5,
    null,
    5,
  ]);
});
