import fastify from 'fastify';
import { describe, expect, it } from 'vitest';
import { EVERY_ROLE, FIELD_WORKERS, guard, personOf, THIS_MACHINE } from './guard.ts';

const person = (role: 'scout' | 'reader') => ({ ...THIS_MACHINE, id: 'p', role });

function served(as: 'scout' | 'reader' | null) {
  const app = fastify();
  guard(app, async () => as && person(as));
  app.register(async (api) => {
    api.get('/open', { config: { allow: 'anyone' } }, async () => 'open');
    api.get('/all', { config: { allow: EVERY_ROLE } }, async (request) => personOf(request).role);
    api.post('/work', { config: { allow: FIELD_WORKERS } }, async () => 'worked');
  });
  return app;
}

describe('who may call a route', () => {
  it('a server with a route that does not say does not start', async () => {
    const app = served('scout');
    app.register(async (api) => {
      api.get('/forgotten', async () => 'told to everybody');
    });
    await expect(app.ready()).rejects.toThrow('GET /forgotten does not say whom it allows');
  });

  it.each([
    [null, [200, 401, 401]],
    ['reader', [200, 200, 403]],
    ['scout', [200, 200, 200]],
  ] as const)('%s', async (as, statuses) => {
    const app = served(as);
    const answers = [await app.inject('/open'), await app.inject('/all'), await app.inject({ method: 'POST', url: '/work' })];
    expect(answers.map((answer) => answer.statusCode)).toEqual(statuses);
  });

  it('an address that does not exist is as unknown to somebody signed out as to anybody', async () => {
    expect((await served(null).inject('/nothing')).statusCode).toBe(404);
  });
});
