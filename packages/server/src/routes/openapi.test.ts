import { describe, expect, it } from 'vitest';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';

describe('GET /api/openapi.json', () => {
  it('describes every address with its parameters, answer and refusals', async () => {
    const document = (await buildServer({ store: memoryStore(smallProgram()) }).inject('/api/openapi.json')).json();
    expect(document.openapi).toBe('3.1.0');
    expect(Object.keys(document.paths).sort()).toEqual([
      '/api/advice',
      '/api/fields/{fieldId}',
      '/api/health',
      '/api/program',
      '/api/week',
    ]);
    const week = document.paths['/api/week'].get;
    expect(week.parameters).toEqual([expect.objectContaining({ name: 'on', in: 'query', required: false })]);
    expect(week.responses['200'].content['application/json'].schema.properties).toHaveProperty('due');
    expect(week.responses).toHaveProperty('400');
    expect(document.paths['/api/fields/{fieldId}'].get.responses).toHaveProperty('404');
  });
});
