import { day, prepare, roundView } from '@duskwatch/core';
import { expect, it } from 'vitest';
import { twoFarms } from '../people/two-farms.testing.ts';
import { buildServer } from '../server.ts';
import { memoryStore } from '../small-program.testing.ts';
import { workHere } from '../work/run.ts';

it('the driving order is left to the worker, once for the same stations and the same of them due', async () => {
  const asked: number[] = [];
  const run: typeof workHere.run = (task, program) => {
    if (task.kind === 'way') asked.push(task.places.length);
    return workHere.run(task, program);
  };
  const store = memoryStore(twoFarms);
  const app = buildServer({ store, work: { ...workHere, run } });
  const round = async () => (await app.inject('/api/round')).json();
  const first = await round();
  expect(first).toEqual(roundView(prepare(twoFarms, { on: day('2026-07-15') })));
  expect(await round()).toEqual(first);
  store.write({ ...twoFarms, lures: [] });
  await Promise.all([round(), round()]);
  expect(asked.length).toBeLessThanOrEqual(2);
  store.write({ ...twoFarms, traps: twoFarms.traps.slice(1) });
  expect((await round()).stops).toHaveLength(first.stops.length - 1);
  expect(asked.at(-1)).toBe(first.stops.length - 1);
});
