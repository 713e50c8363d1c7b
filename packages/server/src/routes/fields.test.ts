import { emptyProgram, type FieldView, fieldViewSchema } from '@duskwatch/core';
import { describe, expect, it } from 'vitest';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';

const field = async (url: string, program = smallProgram()) => {
  const answer = await buildServer({ store: memoryStore(program) }).inject(url);
  return { status: answer.statusCode, body: answer.json() };
};

describe('GET /api/fields/:fieldId', () => {
  it("gives the field's season, just as its schema describes", async () => {
    const { status, body } = await field('/api/fields/north');
    expect(status).toBe(200);
    expect(fieldViewSchema.parse(body)).toEqual(body);
    const view = body as FieldView;
    expect(view.field).toMatchObject({ fieldId: 'north', crop: 'sweet-corn' });
    expect(view.insects[0]!.checks.map((mark) => mark.count).sort()).toEqual([14, 30]);
  });

  it('tells an unknown field from an empty one', async () => {
    const { status, body } = await field('/api/fields/south');
    expect(status).toBe(404);
    expect(body.problems[0]).toMatchObject({ where: { parameter: 'fieldId' }, got: 'south' });
  });

  it('finds a field whose name needs escaping in an address', async () => {
    const program = smallProgram();
    const named = { ...program, fields: [{ ...program.fields[0]!, fieldId: 'Nord / 3' }] };
    expect((await field(`/api/fields/${encodeURIComponent('Nord / 3')}`, named)).body.field.fieldId).toBe('Nord / 3');
  });

  it('refuses a day that does not exist', async () => {
    const { status, body } = await field('/api/fields/north?on=2025-02-29');
    expect(status).toBe(400);
    expect(body.problems[0]).toMatchObject({ where: { parameter: 'on' }, got: '2025-02-29' });
  });

  it('knows no field before anything was recorded', async () => {
    expect((await field('/api/fields/north', emptyProgram())).status).toBe(404);
  });
});
