import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { buildServer } from './server.ts';
import { memoryStore, smallProgram } from './small-program.testing.ts';

describe('what is sent over the air', () => {
  it('an answer worth it is compressed for whoever takes that, and the same for who does not', async () => {
    const app = buildServer({ store: memoryStore(smallProgram()) });
    const plain = await app.inject('/api/openapi.json');
    const small = await app.inject({ url: '/api/openapi.json', headers: { 'accept-encoding': 'gzip, br' } });
    expect(small.headers['content-encoding']).toBe('gzip');
    expect(small.headers.vary).toBe('accept-encoding');
    expect(gunzipSync(small.rawPayload).toString()).toBe(plain.body);
    expect(small.rawPayload.length).toBeLessThan(plain.rawPayload.length / 2);
    expect(plain.headers['content-encoding']).toBeUndefined();
    const short = await app.inject({ url: '/api/health', headers: { 'accept-encoding': 'gzip' } });
    expect(short.headers['content-encoding']).toBeUndefined();
  });

  it('a file of the app goes out as the build compressed it', async () => {
    const root = mkdtempSync(join(tmpdir(), 'duskwatch-web-'));
    try {
      mkdirSync(join(root, 'assets'));
      writeFileSync(join(root, 'index.html'), '<p>Duskwatch</p>');
      writeFileSync(join(root, 'assets', 'a-1.js'), 'plain');
      writeFileSync(join(root, 'assets', 'a-1.js.gz'), gzipSync('plain'));
      const app = buildServer({ store: memoryStore(smallProgram()), webRoot: root });
      const small = await app.inject({ url: '/assets/a-1.js', headers: { 'accept-encoding': 'gzip' } });
      expect(small.headers).toMatchObject({ 'content-encoding': 'gzip', 'cache-control': expect.stringContaining('immutable') });
      expect(small.headers['content-type']).toContain('javascript');
      expect(gunzipSync(small.rawPayload).toString()).toBe('plain');
      expect((await app.inject('/assets/a-1.js')).body).toBe('plain');
    } finally {
      rmSync(root, { recursive: true });
    }
  });
});
