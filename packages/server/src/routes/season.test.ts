import { emptyProgram, type SeasonView, seasonTruthSchema, seasonViewSchema } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { twoFarms } from '../people/two-farms.testing.ts';
import { buildServer } from '../server.ts';
import { memoryStore } from '../small-program.testing.ts';

const asked = async (url: string, program = twoFarms) => {
  const answer = await buildServer({ store: memoryStore(program) }).inject(url);
  return { status: answer.statusCode, body: answer.json() };
};

describe('GET /api/season', () => {
  it('gives the plan that the records ask for, just as its schema describes', async () => {
    const { status, body } = await asked('/api/season');
    expect(status).toBe(200);
    expect(seasonViewSchema.parse(body)).toEqual(body);
    const view = body as SeasonView;
    // Written for 2027 and not for 2026, in which the program stands.
    expect([view.season, view.state]).toEqual([2027, 'ahead']);
    expect(view.lines.map(({ fields }) => fields.map(({ fieldId }) => fieldId))).toEqual([['birch-1']]);
    expect(view.lines[0]).toMatchObject({
      traps: { count: 3, why: 'stated' },
      hang: { basis: 'stated', on: '2027-06-10', why: 'no-model' },
    });
    expect(view.budget!.rows.find(({ kind }) => kind === 'lure')!.price).toMatchObject({ low: 8123.25, standing: 'user' });
  });

  it('holds the plan against the season so far', async () => {
    const { status, body } = await asked('/api/season/truth?year=2026');
    expect(status).toBe(200);
    expect(seasonTruthSchema.parse(body)).toEqual(body);
    expect(body).toMatchObject({ season: 2026, state: 'running' });
  });

  it('is empty, not faulty, before anything was recorded', async () => {
    const { status, body } = await asked('/api/season', emptyProgram());
    expect(status).toBe(200);
    expect(body).toMatchObject({ lines: [], trapsInAll: 0, questions: [], lures: { orders: [] } });
  });

  it.each(['abc', '1500', '2026.5'])('refuses %s, which is no year', async (year) => {
    expect((await asked(`/api/season?year=${year}`)).status).toBe(400);
  });
});
