import { StoreError } from '@duskwatch/store';
import { describe, expect, it } from 'vitest';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';

describe('GET /api/health', () => {
  it('is ok while the program can be read', async () => {
    const answer = await buildServer({ store: memoryStore(smallProgram()) }).inject('/api/health');
    expect(answer.json()).toEqual({ status: 'ok' });
  });

  it('fails when it cannot, and tells the reader nothing of the inside', async () => {
    const store = { ...memoryStore(smallProgram()), loadProgram: () => Promise.reject(new Error('disk /secret/path broke')) };
    const answer = await buildServer({ store }).inject('/api/health');
    expect(answer.statusCode).toBe(500);
    expect(answer.json().problems).toHaveLength(1);
    expect(answer.body).not.toContain('secret');
  });

  it.each(['busy', 'away'] as const)('says 503 and when to come again while the database is %s', async (code) => {
    const store = { ...memoryStore(smallProgram()), loadProgram: () => Promise.reject(new StoreError(code, 'at /secret/path')) };
    const answer = await buildServer({ store }).inject('/api/health');
    expect([answer.statusCode, answer.headers['retry-after']]).toEqual([503, '2']);
    expect(answer.json().problems[0].fix).toContain('again');
    expect(answer.body).not.toContain('secret');
  });

  it.each([
    ['disk-full', 507],
    ['disk-fault', 500],
    ['read-only', 500],
    ['damaged', 500],
  ] as const)('says by its own code that the storage is %s, what to do, and no fault of Duskwatch', async (trouble, status) => {
    const store = {
      ...memoryStore(smallProgram()),
      loadProgram: () => Promise.reject(new StoreError(trouble, 'at /secret/path')),
    };
    const answer = await buildServer({ store }).inject('/api/health');
    expect(answer.statusCode).toBe(status);
    expect(answer.json().problems[0].fault).toEqual({ kind: 'storage', trouble });
    expect(answer.json().problems[0].fix).toContain('whoever runs the server');
    expect(answer.body).not.toMatch(/secret|fault in Duskwatch/);
  });

  it.each([
    ['ENOSPC', 507],
    ['EACCES', 500],
  ])('takes %s of the system for what it is', async (code, status) => {
    const error = Object.assign(new Error('at /secret/path'), { code, syscall: 'write' });
    const store = { ...memoryStore(smallProgram()), loadProgram: () => Promise.reject(error) };
    const answer = await buildServer({ store }).inject('/api/health');
    expect(answer.statusCode).toBe(status);
    expect(answer.body).not.toContain('secret');
  });

  it('recovers once the program can be read again', async () => {
    const store = memoryStore(smallProgram());
    const read = store.loadProgram.bind(store);
    store.loadProgram = () => Promise.reject(new Error('busy'));
    const app = buildServer({ store });
    expect((await app.inject('/api/health')).statusCode).toBe(500);
    store.loadProgram = read;
    expect((await app.inject('/api/health')).statusCode).toBe(200);
  });
});
