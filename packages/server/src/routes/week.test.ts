import { emptyProgram, type WeekView, weekSchema } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';

const week = async (program = smallProgram(), url = '/api/week', today?: string) => {
  const app = buildServer({ store: memoryStore(program), ...(today === undefined ? {} : { today: () => today }) });
  const answer = await app.inject(url);
  return { status: answer.statusCode, body: answer.json() };
};

describe('GET /api/week', () => {
  it('gives the verb for each field and insect on the pinned day, just as its schema describes', async () => {
    const { status, body } = await week();
    expect(status).toBe(200);
    expect(weekSchema.parse(body)).toEqual(body);
    const view = body as WeekView;
    expect(view.on).toBe('2026-07-15');
    expect(view.fields[0]!.cells[0]!.advice).toMatchObject({ verb: 'decide', reason: null });
    expect(view.due.decisions.map((due) => due.fieldId)).toEqual(['north']);
  });

  it('reads the program as it was known on the day asked for', async () => {
    const { body } = await week(smallProgram(), '/api/week?on=2026-07-10');
    expect(body).toMatchObject({ on: '2026-07-10', countsTo: '2026-07-08' });
  });

  it('reads an unpinned program on today', async () => {
    const { body } = await week(smallProgram({ pinnedOn: null }), '/api/week', '2026-07-14');
    expect(body.on).toBe('2026-07-14');
  });

  it.each(['2026-02-30', '15.07.2026', 'yesterday'])('refuses %s, which is no calendar day', async (on) => {
    const { status, body } = await week(smallProgram(), `/api/week?on=${on}`);
    expect(status).toBe(400);
    expect(body.problems).toEqual([
      { where: { parameter: 'on' }, got: on, expected: 'a calendar day as YYYY-MM-DD', fix: expect.stringContaining('on') },
    ]);
  });

  it('is empty, not faulty, before anything was recorded', async () => {
    const { status, body } = await week(emptyProgram());
    expect(status).toBe(200);
    expect(body).toMatchObject({ fields: [], insects: [], countsTo: null, due: { decisions: [], checks: [] } });
  });
});
