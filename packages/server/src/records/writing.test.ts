import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  day,
  leftEmpty,
  type Person,
  type Program,
  prepare,
  RECORD_KINDS,
  roundSchema,
  roundView,
  stationsSchema,
  trapsView,
  trapView,
  trapViewSchema,
} from '@duskwatch/core';
import { openStore, uuidv7 } from '@duskwatch/store';
import { describe, expect, it, onTestFinished } from 'vitest';
import { answersAreDescribed } from '../described.testing.ts';
import { THIS_MACHINE } from '../people/guard.ts';
import { buildServer } from '../server.ts';
import { smallProgram } from '../small-program.testing.ts';
import { acceptRevisions } from './accept.ts';

async function served(program: Program = smallProgram()) {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-writing-'));
  const store = await openStore(join(folder, 'data.sqlite'));
  await store.importProgram(program, { author: 'importer', at: '2026-07-01T00:00:00Z' });
  const app = buildServer({ store, records: { store, photoFolder: join(folder, 'photos') } });
  answersAreDescribed(app);
  onTestFinished(async () => {
    await app.close();
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const post = async (url: string, payload: object) => {
    const answer = await app.inject({ method: 'POST', url, payload });
    return { status: answer.statusCode, body: answer.json() };
  };
  const get = async (url: string) => (await app.inject(url)).json();
  return { store, app, post, get, folder };
}

const revision = (kind: string, value: object | null, base: { revisionId: string; recordId: string } | null = null) => {
  const revisionId = uuidv7();
  return {
    revisionId,
    recordId: base?.recordId ?? revisionId,
    kind,
    baseRevisionId: base?.revisionId ?? null,
    at: '2026-07-15T08:00:00.000Z',
    value,
  };
};

const program = smallProgram();
const newCheck = { ...program.checks[0]!, checkedOn: '2026-07-15', targetCount: 3 };
const sample = {
  fieldId: 'north',
  insect: 'helicoverpa-zea',
  sampledOn: '2026-07-14',
  kind: 'ears',
  unitsExamined: 100,
  unitsInfested: 4,
  totalCount: null,
};
const treatment = {
  fieldId: 'north',
  insect: 'helicoverpa-zea',
  appliedOn: '2026-07-14',
  product: 'Product A (invented)',
  protectsDays: 3,
  reentryHours: 12,
  preharvestDays: 1,
};
const oneOfEach: Record<string, object> = {
  fields: { ...program.fields[0]!, fieldId: 'south' },
  stages: { fieldId: 'north', observedOn: '2026-07-14', stage: 'silk' },
  traps: { ...program.traps[0]!, trapId: 'T2' },
  lures: { trapId: 'T1', placedOn: '2026-07-14', lifeDays: 28 },
  checks: newCheck,
  skips: { trapId: newCheck.trapId, skippedOn: '2026-07-14', reason: 'locked', note: null },
  sources: {
    sourceId: 'yard',
    name: null,
    kind: 'station',
    latitude: 44.1,
    longitude: -62.9,
    elevationM: 40,
    timeZone: 'America/Halifax',
    fillFrom: null,
    service: null,
    stationId: null,
    address: null,
    fetching: false,
    termsSeenOn: null,
  },
  weather: { sourceId: 'yard', date: '2026-07-14', tminC: 12, tmaxC: 25, precipitationMm: 0 },
  normals: { sourceId: 'yard', month: 7, tminC: 15, tmaxC: 27 },
  samples: sample,
  treatments: treatment,
  decisions: {
    fieldId: 'north',
    insect: 'helicoverpa-zea',
    decidedOn: '2026-07-14',
    decision: 'not-treated',
    reason: 'harvest-near',
    note: null,
  },
  rules: {
    ruleId: 'own',
    crop: 'sweet-corn',
    insect: 'helicoverpa-zea',
    design: null,
    stages: [],
    threshold: 1,
    per: 'night',
    intervalDays: null,
    validFrom: null,
    validTo: null,
    source: null,
  },
  seasons: {
    ...leftEmpty('seasons'),
    season: 2027,
    insects: [],
    crops: [],
    fields: [],
    checkWeekdays: ['mon'],
  },
  plans: {
    ...leftEmpty('plans'),
    season: 2027,
    insect: 'helicoverpa-zea',
    area: 'all',
    traps: 3,
  },
  prices: { item: 'lure', of: 'helicoverpa-zea', price: 6.5, currency: 'USD', note: null },
  stock: {
    stockId: 'shelf',
    item: 'trap',
    of: 'mesh-cone',
    onHand: 4,
    countedOn: '2026-07-01',
    wornOut: 1,
    openedOn: null,
    expiresOn: null,
    storage: null,
  },
  answers: { question: 'unlikely-count T1 2026-07-08 14', answer: 'right', answeredOn: '2026-07-15', note: null },
};

const person = (role: Person['role'], farms: string[] = []): Person => ({ ...THIS_MACHINE, id: role, role, farms });

describe('who may write what', () => {
  it.each([
    ['coordinator', [], [...RECORD_KINDS]],
    ['scout', [], ['stages', 'lures', 'checks', 'skips', 'samples', 'answers']],
    ['grower', ['Hill farm'], ['stages', 'samples', 'treatments', 'decisions']],
    ['grower', ['Other farm'], []],
    ['reader', [], []],
  ] as const)('a %s of %s writes %s', async (role, farms, kinds) => {
    const { store } = await served();
    const sent = RECORD_KINDS.map((kind) => revision(kind, oneOfEach[kind]!));
    const arrival = { receivedAt: '2026-07-15T09:00:00.000Z', skewMs: null };
    const answer = await acceptRevisions(store, await store.loadProgram(), person(role, [...farms]), sent, arrival);
    const kindOf = new Map(sent.map((each) => [each.revisionId, each.kind]));
    expect(answer.added.map((id) => kindOf.get(id))).toEqual(kinds);
    expect(answer.refused).toHaveLength(RECORD_KINDS.length - kinds.length);
    expect((await store.revisions(answer.added)).every((stored) => stored.author === role)).toBe(true);
  });

  it('a grower cannot take over another farm’s record by naming it as their own', async () => {
    const { store } = await served({
      ...program,
      fields: [...program.fields, { ...program.fields[0]!, fieldId: 'theirs', farm: 'Other farm' }],
      treatments: [{ ...treatment, fieldId: 'theirs' }],
    });
    const [theirs] = await store.current('treatments');
    const arrival = { receivedAt: '2026-07-15T09:00:00.000Z', skewMs: null };
    const grower = person('grower', ['Hill farm']);
    const taken = [revision('treatments', treatment, theirs), revision('treatments', null, theirs)];
    const withoutBase = { ...revision('treatments', treatment), recordId: theirs!.recordId };
    const answer = await acceptRevisions(store, await store.loadProgram(), grower, [...taken, withoutBase], arrival);
    expect(answer.refused).toHaveLength(3);
    expect(await store.history(theirs!.recordId)).toHaveLength(1);
  });

  it('who lost the right half-way still learns what had arrived', async () => {
    const { store } = await served();
    const sent = [revision('checks', newCheck), revision('checks', { ...newCheck, checkedOn: '2026-07-13' })];
    const arrival = { receivedAt: '2026-07-15T09:00:00.000Z', skewMs: null };
    const before = person('scout');
    await acceptRevisions(store, await store.loadProgram(), before, sent.slice(0, 1), arrival);
    const answer = await acceptRevisions(store, await store.loadProgram(), { ...before, role: 'reader' }, sent, arrival);
    expect(answer).toMatchObject({
      added: [],
      alreadyThere: [sent[0]!.revisionId],
      refused: [{ revisionId: sent[1]!.revisionId }],
    });
  });
});

describe('history and undo', () => {
  it('shows who, when and what was before, and brings it back in one step', async () => {
    const { post, get } = await served();
    const [seen] = await get('/api/records/checks');
    expect(seen).toMatchObject({ author: 'importer', authorName: 'importer', standing: 'current', value: { targetCount: 14 } });
    await post('/api/revisions', { revisions: [revision('checks', { ...seen.value, targetCount: 41 }, seen)] });
    const path = `/api/records/checks/${encodeURIComponent(seen.key)}/history`;
    const [old, wrong] = await get(path);
    expect(wrong).toMatchObject({ authorName: 'This machine', value: { targetCount: 41 }, standing: 'current' });
    expect((await post(`/api/revisions/${old.revisionId}/restore`, {})).status).toBe(200);
    expect((await get('/api/records/checks'))[0]).toMatchObject({ value: { targetCount: 14 } });
    expect(await get(path)).toHaveLength(3);
  });

  it('brings a removed record back, but not to where it would be wrong by now', async () => {
    const { post, get, store } = await served();
    const [seen] = await get('/api/records/checks');
    await post('/api/revisions', { revisions: [revision('checks', null, seen)] });
    expect(await get('/api/records/checks')).toHaveLength(1);
    const [trap] = await store.current('traps');
    await post('/api/revisions', { revisions: [revision('traps', { ...trap!.value, hungOn: '2026-07-10' }, trap)] });
    const refused = await post(`/api/revisions/${seen.revisionId}/restore`, {});
    expect(refused).toMatchObject({ status: 400, body: { problems: [{ got: '2026-07-08' }] } });
    expect((await post(`/api/revisions/${uuidv7()}/restore`, {})).status).toBe(404);
  });

  it('tells what arrived after a number, page by page, and where to go on', async () => {
    const { get, store } = await served();
    const all = await get('/api/changes');
    expect(all).toMatchObject({ epoch: await store.epoch(), more: false, last: all.revisions.length });
    const page = await get('/api/changes?since=2&limit=2');
    expect(page).toMatchObject({ last: 4, more: true });
    expect(page.revisions).toEqual(all.revisions.slice(2, 4));
  });
});

describe('a photo of a check', () => {
  const jpeg = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.from('moths on a floor')]);
  const send = (app: Awaited<ReturnType<typeof served>>['app'], payload: Buffer, type = 'image/jpeg') =>
    app.inject({ method: 'POST', url: '/api/photos', payload, headers: { 'content-type': type } });

  it('is kept once, under the hash of its bytes, and shown where a check names it', async () => {
    const { app, post, folder } = await served();
    const { photo } = (await send(app, jpeg)).json();
    expect((await send(app, jpeg)).json()).toEqual({ photo });
    expect(readdirSync(join(folder, 'photos', photo.slice(0, 2)))).toEqual([photo]);
    // Nobody may find photos by guessing: a check must name it first.
    expect((await app.inject(`/api/photos/${photo}`)).statusCode).toBe(404);
    await post('/api/revisions', { revisions: [revision('checks', { ...newCheck, photo })] });
    const shown = await app.inject(`/api/photos/${photo}`);
    expect(shown.rawPayload).toEqual(jpeg);
    expect(shown.headers['content-type']).toBe('image/jpeg');
    expect(shown.headers['content-security-policy']).toContain('sandbox');
  });

  it('is one by its first bytes, not by what it calls itself, and at most 4 MB', async () => {
    const { app } = await served();
    expect((await send(app, Buffer.from('<svg onload="x"/>'), 'image/svg+xml')).statusCode).toBe(400);
    expect((await send(app, Buffer.from('<html>'), 'image/jpeg')).statusCode).toBe(400);
    expect((await send(app, Buffer.concat([jpeg, Buffer.alloc(4 * 1024 * 1024)]))).statusCode).toBe(413);
    expect((await send(app, jpeg, 'text/plain')).statusCode).toBe(415);
    expect((await app.inject('/api/photos/..%2f..%2fdata.sqlite')).statusCode).toBe(404);
  });
});

it('the round and the traps are the core’s own, just as their schemas describe', async () => {
  const { get } = await served();
  const prepared = prepare(smallProgram(), { on: day('2026-07-15') });
  const plain = (value: unknown) => JSON.parse(JSON.stringify(value));
  const [round, traps, trap] = [await get('/api/round'), await get('/api/traps'), await get('/api/traps/T1')];
  expect(roundSchema.parse(round)).toEqual(round);
  expect(round).toEqual(plain(roundView(prepared)));
  expect(stationsSchema.parse(traps)).toEqual(traps);
  expect(traps).toEqual(plain(trapsView(prepared)));
  expect(trapViewSchema.parse(trap)).toEqual(trap);
  expect(trap).toEqual(plain(trapView(prepared, 'T1')));
});
