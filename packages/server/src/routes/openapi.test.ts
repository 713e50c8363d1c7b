import { describe, expect, it } from 'vitest';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';

describe('GET /api/openapi.json', () => {
  it('describes every address with its parameters, answer and refusals', async () => {
    const app = buildServer({ store: memoryStore(smallProgram()) });
    const document = (await app.inject('/api/openapi.json')).json();
    expect(document.openapi).toBe('3.1.0');
    const addresses = app.allowed.map(({ route }) => route.replace(/^\S+ /, '').replace(/:(\w+)/g, '{$1}'));
    const described = new Set(addresses.filter((address) => address !== '/api/openapi.json'));
    expect(described).toContain('/api/fields/{fieldId}');
    expect(Object.keys(document.paths).sort()).toEqual([...described].sort());
    const week = document.paths['/api/week'].get;
    expect(week.parameters).toEqual([expect.objectContaining({ name: 'on', in: 'query', required: false })]);
    expect(week.responses['200'].content['application/json'].schema.properties).toHaveProperty('due');
    expect(week.responses).toHaveProperty('400');
    expect(document.paths['/api/fields/{fieldId}'].get.responses).toHaveProperty('404');
  });
});
