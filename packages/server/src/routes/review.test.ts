import { emptyProgram } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';
import { workHere } from '../work/run.ts';

describe('what a program learned', () => {
  it('is worked out once for each day until something is written', async () => {
    let runs = 0;
    const run: typeof workHere.run = (task, program) => {
      runs++;
      return workHere.run(task, program);
    };
    const store = memoryStore(smallProgram());
    const app = buildServer({ store, work: { ...workHere, run } });
    const review = async (on: string) => (await app.inject(`/api/review?on=${on}`)).json();
    const first = await review('2026-07-15');
    expect(first).toMatchObject({ year: 2026, farms: [{ farm: 'Hill farm' }] });
    expect(await review('2026-07-15')).toEqual(first);
    await review('2026-07-14');
    expect(runs).toBe(2);
    store.write({ ...smallProgram(), checks: [] });
    expect((await review('2026-07-15')).program.visits.visits).toBe(0);
    expect(runs).toBe(3);
  });

  it('of an empty program is empty, and a day that is none is refused', async () => {
    const empty = buildServer({ store: memoryStore(emptyProgram()) });
    expect((await empty.inject('/api/review/lessons')).json()).toMatchObject({ sideBySide: [], lures: [], infestation: [] });
    expect((await empty.inject('/api/review')).json()).toMatchObject({ farms: [], program: { timing: [] } });
    expect((await empty.inject('/api/review/lessons?on=2026-02-30')).statusCode).toBe(400);
  });
});
