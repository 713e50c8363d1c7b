import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildServer } from './server.ts';
import { memoryStore, smallProgram } from './small-program.testing.ts';

describe('reading the store', () => {
  it('reads the program once for many requests, and again after a write by anybody', async () => {
    const store = memoryStore(smallProgram());
    const app = buildServer({ store });
    await Promise.all(['/api/week', '/api/advice', '/api/fields/north', '/api/week?on=2026-07-10'].map((url) => app.inject(url)));
    expect(store.readings).toBe(1);

    store.write(smallProgram({ name: 'Renamed' }));
    expect((await app.inject('/api/week')).json().program.name).toBe('Renamed');
    expect(store.readings).toBe(2);
  });
});

describe('the app in front of the API', () => {
  let webRoot: string;
  const get = (url: string, headers = {}) =>
    buildServer({ store: memoryStore(smallProgram()), webRoot }).inject({ url, headers });

  beforeAll(() => {
    const folder = mkdtempSync(join(tmpdir(), 'duskwatch-web-'));
    webRoot = join(folder, 'dist');
    mkdirSync(join(webRoot, 'assets'), { recursive: true });
    writeFileSync(join(webRoot, 'index.html'), '<title>the app</title>');
    writeFileSync(join(webRoot, 'assets', 'index-a1b2c3.js'), 'start()');
    writeFileSync(join(folder, 'private.txt'), 'not for the web');
    writeFileSync(join(webRoot, '.built'), 'not for the web');
  });
  afterAll(() => rmSync(join(webRoot, '..'), { recursive: true, force: true }));

  it.each(['/', '/fields/north', '/fields/plot.3?on=2026-07-15', '/.built'])(
    'answers %s with its document, asked for anew each time',
    async (url) => {
      const answer = await get(url);
      expect(answer.statusCode).toBe(200);
      expect(answer.body).toContain('the app');
      expect(answer.headers['cache-control']).toBe('no-cache');
    },
  );

  it('lets a browser keep the files whose name changes with their content', async () => {
    const answer = await get('/assets/index-a1b2c3.js');
    expect(answer.headers['cache-control']).toContain('immutable');
    expect(answer.headers['content-type']).toContain('javascript');
  });

  it.each(['/assets/index-old.js', '/assets/', '/api/nothing', '/api'])('does not pass its document off as %s', async (url) => {
    const answer = await get(url);
    expect(answer.statusCode).toBe(404);
    expect(answer.json().problems[0]).toHaveProperty('fix');
  });

  it.each(['/../private.txt', '/%2e%2e/private.txt', '/..%2fprivate.txt', '/assets/../../private.txt', '/.built'])(
    'gives nothing that was not built for the web: %s',
    async (url) => {
      expect((await get(url)).body).not.toContain('not for the web');
    },
  );

  it('says how to build the app when it is not built', async () => {
    const answer = await buildServer({ store: memoryStore(smallProgram()), webRoot: join(webRoot, 'none') }).inject('/');
    expect(answer.statusCode).toBe(404);
    expect(answer.json().problems[0].fix).toContain('npm run setup');
  });

  it('answers nobody who names it other than by this machine, while there are no accounts', async () => {
    expect((await get('/api/week', { host: 'elsewhere.example' })).statusCode).toBe(403);
    expect((await get('/', { host: 'elsewhere.example:4180' })).body).not.toContain('the app');
    for (const host of ['localhost:4180', '127.0.0.1:4180', '[::1]:4180'])
      expect((await get('/api/week', { host })).statusCode).toBe(200);
  });

  it('lets a page load only what comes from here', async () => {
    for (const url of ['/', '/api/week', '/api/nothing']) {
      const { headers } = await get(url);
      expect(headers['content-security-policy']).toContain("default-src 'self'");
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
    }
  });
});
