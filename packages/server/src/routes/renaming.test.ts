import { expect, it, onTestFinished } from 'vitest';
import { served } from '../people/served.testing.ts';
import { smallProgram } from '../small-program.testing.ts';

const open = async () => {
  const server = await served({ ...smallProgram(), settings: { ...smallProgram().settings, invented: false } });
  onTestFinished(server.stop);
  return { server, ida: await server.ida() };
};

it('gives a field another identifier everywhere at once, and advice goes on as before', async () => {
  const { ida } = await open();
  const before = (await ida.get('/api/week')).json();
  expect((await ida.post('/api/renaming', { kind: 'fields', from: 'north', to: ' hill-north ' })).json()).toEqual({ renamed: 3 });
  const after = (await ida.get('/api/week')).json();
  expect(JSON.stringify(after)).toBe(JSON.stringify(before).replaceAll('"north"', '"hill-north"'));
  const [said] = (await ida.get('/api/records/fields/hill-north/history')).json();
  expect(said.value.fieldId).toBe('north');
});

it('refuses an identifier that is taken, that is none, or of what is not there, and changes nothing', async () => {
  const { ida } = await open();
  for (const [kind, from, to, said] of [
    ['fields', 'south', 'north', 'one that is there'],
    ['fields', 'north', 'a|b', 'without ; and |'],
    ['fields', 'north', '  ', 'without ; and |'],
  ]) {
    const refused = await ida.post('/api/renaming', { kind: kind!, from: from!, to: to! });
    expect(refused.statusCode).toBe(409);
    expect(refused.json().problems[0].expected).toContain(said);
  }
  expect((await ida.get('/api/records/fields')).json()).toHaveLength(1);
});
