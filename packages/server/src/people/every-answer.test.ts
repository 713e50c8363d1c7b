/** What `every-route` asks for in vain: each of these succeeds here once, and answers as the API describes it. */
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { leftEmpty } from '@duskwatch/core';
import { uuidv7 } from '@duskwatch/store';
import { expect, it, onTestFinished } from 'vitest';
import { answersAreDescribed } from '../described.testing.ts';
import { buildServer } from '../server.ts';
import { memoryStore, smallProgram } from '../small-program.testing.ts';
import { device } from './device.testing.ts';
import { PASSWORD, served } from './served.testing.ts';

const READING = { kind: 'counts', traps: 1, checks: 1, insects: [], from: null, to: null, words: [], days: 1 } as const;
const JPEG = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.from('moths on a floor')]);

it('what a coordinator does in a day is answered as described', async () => {
  const program = smallProgram();
  const server = await served({ ...program, settings: { ...program.settings, invented: false } });
  onTestFinished(server.stop);
  const ida = await server.ida();
  const [check] = smallProgram().checks;
  const revision = (value: object | null, base: { recordId: string; revisionId: string } | null = null) => {
    const revisionId = uuidv7();
    const recordId = base?.recordId ?? revisionId;
    return { revisionId, recordId, kind: 'checks', baseRevisionId: base?.revisionId ?? null, at: '2026-07-15T05:00:00Z', value };
  };

  expect((await ida.get('/api/scouting.pdf?sheet=north%7Chelicoverpa-zea')).statusCode).toBe(200);
  const kept = await server.app.inject({
    method: 'POST',
    url: '/api/photos',
    payload: JPEG,
    headers: { host: 'localhost:80', origin: 'http://localhost:80', cookie: ida.cookie!, 'content-type': 'image/jpeg' },
  });
  const { photo } = kept.json();
  const first = revision({ ...check, checkedOn: '2026-07-15', targetCount: 3, photo });
  const written = await ida.post('/api/revisions', { revisions: [first] });
  expect(written.json()).toMatchObject({ added: [first.revisionId], refused: [] });
  expect((await ida.get(`/api/photos/${photo}`)).statusCode).toBe(200);

  const rivals = [4, 5].map((targetCount) => revision({ ...check, checkedOn: '2026-07-15', targetCount, photo }, first));
  await ida.post('/api/revisions', { revisions: rivals });
  const [conflict] = (await ida.get('/api/conflicts')).json();
  const decision = { kind: conflict.kind, key: conflict.key, keepRevisionId: conflict.held.revisionId };
  expect((await ida.post('/api/conflicts/settle', decision)).statusCode).toBe(200);
  expect((await ida.post(`/api/revisions/${first.revisionId}/restore`, {})).statusCode).toBe(200);

  const file = { importId: uuidv7(), file: 'counts.csv', reading: READING, match: null };
  const brought = { ...file, records: { checks: [{ ...check, checkedOn: '2026-07-13', targetCount: 2 }] } };
  expect((await ida.post('/api/imports', brought)).json()).toEqual({ added: 1, changed: 0, unchanged: 0 });
  expect((await ida.get('/api/imports')).json()).toMatchObject([{ file: 'counts.csv', authorName: 'Ida Brook', undone: null }]);
  expect((await ida.post(`/api/imports/${file.importId}/undo`, {})).json()).toEqual({ undone: 1 });

  expect((await ida.post('/api/renaming', { kind: 'traps', from: check!.trapId, to: 'gate' })).json().renamed).toBeGreaterThan(2);
  expect((await ida.post('/api/renaming', { kind: 'traps', from: 'gate', to: check!.trapId })).statusCode).toBe(200);

  const invited = (await ida.post('/api/invitations', { role: 'scout', farms: [] })).json();
  expect((await ida.get(`/api/invitations/by-token/${invited.token}`)).statusCode).toBe(200);
  expect((await ida.send('DELETE', `/api/invitations/${invited.id}`)).statusCode).toBe(204);
  const { id } = await server.join(ida, 'Sam Reed', 'scout');
  expect((await ida.send('PATCH', `/api/people/${id}`, { role: 'reader' })).statusCode).toBe(200);
  const { path } = (await ida.post('/api/calendar', {})).json();
  expect((await ida.get(path)).statusCode).toBe(200);
  expect((await server.browser().signIn('Ida Brook', PASSWORD)).statusCode).toBe(200);
  const phone = device('http://localhost');
  const made = phone.make((await ida.post('/api/pass-keys/options', { password: PASSWORD })).json());
  expect((await ida.post('/api/pass-keys', { name: 'Phone', response: made })).statusCode).toBe(201);
  const signed = phone.sign((await ida.post('/api/session/pass-key-options', {})).json());
  expect((await server.browser().post('/api/session/pass-key', signed)).statusCode).toBe(200);
  expect((await ida.send('DELETE', `/api/pass-keys?id=${phone.id}`)).statusCode).toBe(204);
  const changed = { password: PASSWORD, newPassword: 'gravel owls under seven ladders' };
  expect((await ida.post('/api/session/password', changed)).statusCode).toBe(204);

  const here = [
    'DELETE /api/invitations/:id',
    'DELETE /api/pass-keys',
    'GET /api/invitations/by-token/:token',
    'GET /api/photos/:photo',
    'GET /api/scouting.pdf',
    'GET /calendar/:file',
    'PATCH /api/people/:id',
    'POST /api/conflicts/settle',
    'POST /api/imports',
    'POST /api/imports/:importId/undo',
    'POST /api/pass-keys',
    'POST /api/photos',
    'POST /api/renaming',
    'POST /api/revisions/:revisionId/restore',
    'POST /api/session',
    'POST /api/session/pass-key',
    'POST /api/session/password',
  ];
  expect([...server.succeeded].filter((route) => here.includes(route)).sort()).toEqual(here);
});

it('the other program of this machine is answered as described', async () => {
  const other = { kind: 'demo', open: async () => 4181 } as const;
  const app = buildServer({ store: memoryStore(smallProgram()), other });
  const succeeded = answersAreDescribed(app);
  expect((await app.inject({ url: '/api/other-program' })).json()).toEqual({ kind: 'demo' });
  expect((await app.inject({ method: 'POST', url: '/api/other-program' })).json()).toEqual({ port: 4181 });
  expect(succeeded).toContain('POST /api/other-program');
});

it('what fetching weather did is answered as described', async () => {
  const yard = { ...leftEmpty('sources'), sourceId: 'yard', service: 'folder', address: 'yard', fetching: true } as const;
  const server = await served({ ...smallProgram({ invented: false }), sources: [yard] });
  onTestFinished(server.stop);
  const ida = await server.ida();
  expect((await ida.post('/api/weather-fetching/yard', {})).json()).toMatchObject({ sourceId: 'yard', trouble: null, days: 0 });
  expect((await ida.get('/api/weather-fetching')).json()).toMatchObject({ states: [{ sourceId: 'yard', failures: 0 }] });
  expect([...server.succeeded]).toContain('POST /api/weather-fetching/:sourceId');
});

it('driving times are answered as described', async () => {
  const answer = {
    code: 'Ok',
    durations: [
      [0, 90],
      [120, 0],
    ],
  };
  const router = createServer((_, response) => {
    response.setHeader('content-type', 'application/json').end(JSON.stringify(answer));
  }).listen(0, '127.0.0.1');
  onTestFinished(() => void router.close());
  await once(router, 'listening');
  const drivingTimes = `http://127.0.0.1:${(router.address() as AddressInfo).port}`;
  const app = buildServer({ store: memoryStore(smallProgram()), drivingTimes });
  const succeeded = answersAreDescribed(app);
  const places = ['A', 'B'].map((id, i) => ({ id, latitude: 45, longitude: -30 - i }));
  const asked = await app.inject({ method: 'POST', url: '/api/rounds/driving-times', payload: { places } });
  expect(asked.json()).toEqual({
    ids: ['A', 'B'],
    minutes: [
      [0, 1.5],
      [2, 0],
    ],
  });
  expect(succeeded).toContain('POST /api/rounds/driving-times');
});
