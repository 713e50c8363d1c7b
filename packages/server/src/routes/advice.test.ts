import { adviceSchema, adviseAll, adviseCell, day, emptyProgram, prepare } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';

const advised = async (url: string, program = smallProgram()) => {
  const answer = await buildServer({ store: memoryStore(program) }).inject(url);
  return { status: answer.statusCode, body: answer.json() };
};

describe('GET /api/advice', () => {
  it("is the core's own advice, just as its schema describes", async () => {
    const { status, body } = await advised('/api/advice');
    expect(status).toBe(200);
    expect(z.array(adviceSchema).parse(body)).toEqual(body);
    expect(body).toEqual(JSON.parse(JSON.stringify(adviseAll(prepare(smallProgram(), { on: day('2026-07-15') })))));
    expect(body).not.toHaveLength(0);
  });

  it('gives one field and insect alone, and says which of the two there is not', async () => {
    const prepared = prepare(smallProgram(), { on: day('2026-07-15') });
    const { body } = await advised('/api/advice/north/helicoverpa-zea');
    expect(body).toEqual(JSON.parse(JSON.stringify(adviseCell(prepared, 'north', 'helicoverpa-zea'))));
    for (const [url, parameter] of [
      ['/api/advice/nowhere/helicoverpa-zea', 'fieldId'],
      ['/api/advice/north/nothing-known', 'insect'],
    ])
      expect(await advised(url!)).toMatchObject({ status: 404, body: { problems: [{ where: { parameter } }] } });
  });

  it('refuses a day that does not exist', async () => {
    const { status, body } = await advised('/api/advice?on=2026-13-01');
    expect(status).toBe(400);
    expect(body.problems[0]).toMatchObject({ where: { parameter: 'on' }, got: '2026-13-01' });
  });

  it('has nothing to advise on before anything was recorded', async () => {
    expect(await advised('/api/advice', emptyProgram())).toEqual({ status: 200, body: [] });
  });
});
