import type { Role } from '@duskwatch/core';
import { uuidv7 } from '@duskwatch/store';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildServer } from '../server.ts';
import { memoryStore } from '../small-program.testing.ts';
import { type Browser, CODE, PASSWORD, served } from './served.testing.ts';
import { tokenHash } from './tokens.ts';
import { OTHER, OWN, PLACES, PRICES, SECRETS, twoFarms } from './two-farms.testing.ts';

const WHO = ['coordinator', 'scout', 'grower', 'reader', 'nobody'] as const;
type Who = (typeof WHO)[number];

/** A record of the other farm, as a revision that is there. */
interface Other {
  readonly revisionId: string;
  readonly recordId: string;
}

interface Asked {
  readonly url: string;
  readonly body?: object;
}

const PLACE = { id: 'a', latitude: 44, longitude: -62 };
const LABELS = { grid: 'a4-3x7', startAt: 1, trapIds: null, language: 'en', length: 'm', contact: '', outlines: false };

const KEY_MADE = { clientDataJSON: 'AAAA', attestationObject: 'AAAA' };
/** Of a key that nobody has. */
const KEY_ANSWER = {
  id: 'AAAA',
  rawId: 'AAAA',
  type: 'public-key',
  clientExtensionResults: {},
  response: { clientDataJSON: 'AAAA', authenticatorData: 'AAAA', signature: 'AAAA' },
};

/** A check of a trap that nobody has. */
const IMPORT = {
  importId: uuidv7(),
  file: 'counts.csv',
  reading: { kind: 'counts', traps: 1, checks: 1, insects: [], from: null, to: null, words: [], days: 0 },
  match: null,
  records: {
    checks: [
      {
        trapId: 'nobodys',
        checkedOn: '2026-07-14',
        visit: 1,
        targetCount: 3,
        otherCount: null,
        condition: 'fit',
        emptied: true,
        note: null,
      },
    ],
  },
};

/**
 * Every route: what each of WHO is answered, and requests that aim at what they should not get. A route that is
 * not here fails the first test.
 */
const ROUTES: Readonly<Record<string, readonly [statuses: string, ...requests: ((other: Other) => Asked)[]]>> = {
  'GET /api/health': ['200 200 200 200 200', () => ({ url: '/api/health' })],
  'GET /api/weather-fetching': ['200 403 403 403 401', () => ({ url: '/api/weather-fetching' })],
  'POST /api/weather-fetching/:sourceId': ['409 403 403 403 401', () => ({ url: '/api/weather-fetching/nobodys' })],
  'GET /api/first-steps': ['200 403 403 403 401', () => ({ url: '/api/first-steps' })],
  'POST /api/renaming': [
    '409 403 403 403 401',
    () => ({ url: '/api/renaming', body: { kind: 'fields', from: 'nobodys', to: 'mine' } }),
  ],
  'POST /api/restoring': ['409 403 403 403 401', () => ({ url: '/api/restoring' })],
  'POST /api/restoring/:restoreId': ['409 403 403 403 401', () => ({ url: '/api/restoring/nobodys' })],
  'DELETE /api/restoring/:restoreId': ['204 403 403 403 401', () => ({ url: '/api/restoring/nobodys' })],
  'GET /api/other-program': ['200 200 200 200 401', () => ({ url: '/api/other-program' })],
  'POST /api/other-program': ['404 403 403 403 401', () => ({ url: '/api/other-program' })],
  'GET /api/openapi.json': ['200 200 200 200 200', () => ({ url: '/api/openapi.json' })],
  'GET /api/program.zip': ['200 200 200 403 401', () => ({ url: '/api/program.zip' })],
  'GET /api/program.xlsx': ['200 200 200 403 401', () => ({ url: '/api/program.xlsx' })],
  'GET /api/backup.zip': ['200 403 403 403 401', () => ({ url: '/api/backup.zip' })],
  'GET /api/rules': ['200 200 200 200 401', () => ({ url: '/api/rules' })],
  'GET /api/program': ['200 200 200 200 401', () => ({ url: '/api/program' })],
  'GET /api/week/sheet': ['200 200 200 200 401', () => ({ url: '/api/week/sheet' })],
  'GET /api/week': ['200 200 200 200 401', () => ({ url: '/api/week' }), () => ({ url: '/api/week?on=2026-07-14' })],
  'GET /api/bulletin': ['200 200 403 403 401', () => ({ url: '/api/bulletin' })],
  'GET /api/advice': ['200 200 200 403 401', () => ({ url: '/api/advice' })],
  'GET /api/advice/:fieldId/:insect': ['200 200 404 403 401', () => ({ url: '/api/advice/birch-1/helicoverpa-zea' })],
  'GET /api/flights': ['200 200 200 403 401', () => ({ url: '/api/flights' })],
  'GET /api/own-fields': ['200 200 200 403 401', () => ({ url: '/api/own-fields' })],
  'GET /api/fields/:fieldId/flights': ['200 200 404 403 401', () => ({ url: '/api/fields/birch-1/flights' })],
  'GET /api/fields/:fieldId': ['200 200 404 403 401', () => ({ url: '/api/fields/birch-1' })],
  'GET /api/review/lessons': ['200 403 403 403 401', () => ({ url: '/api/review/lessons' })],
  'GET /api/review': ['200 200 200 403 401', () => ({ url: '/api/review' })],
  'GET /api/review/years': [
    '200 200 200 403 401',
    () => ({ url: '/api/review/years?insect=helicoverpa-zea' }),
    () => ({ url: '/api/review/years?insect=helicoverpa-zea&farm=Birch+farm' }),
  ],
  'GET /api/questions': ['200 200 403 403 401', () => ({ url: '/api/questions' })],
  'GET /api/questions/open': ['200 200 403 403 401', () => ({ url: '/api/questions/open' })],
  'GET /api/round': ['200 200 403 403 401', () => ({ url: '/api/round' })],
  'GET /api/season': ['200 200 403 403 401', () => ({ url: '/api/season' }), () => ({ url: '/api/season?year=2026' })],
  'GET /api/season/truth': ['200 200 403 403 401', () => ({ url: '/api/season/truth' })],
  'GET /api/scouting': ['200 200 200 403 401', () => ({ url: '/api/scouting' })],
  'GET /api/scouting.pdf': [
    '400 400 400 403 401',
    () => ({ url: '/api/scouting.pdf?sheet=birch-1%7Chelicoverpa-zea%7Cno-rule' }),
    () => ({ url: '/api/scouting.pdf?sheet=birch-1%7Cno-insect' }),
  ],
  'GET /api/rounds': ['200 200 403 403 401', () => ({ url: '/api/rounds?until=2026-07-20' })],
  'POST /api/rounds/driving-times': [
    '404 404 403 403 401',
    () => ({ url: '/api/rounds/driving-times', body: { places: [PLACE, { ...PLACE, id: 'b' }] } }),
  ],
  'GET /api/checklists.pdf': ['200 200 403 403 401', () => ({ url: '/api/checklists.pdf?language=en&length=m&paper=A4' })],
  'GET /api/traps': ['200 200 200 403 401', () => ({ url: '/api/traps' })],
  'GET /api/traps/:trapId': ['200 200 404 403 401', () => ({ url: '/api/traps/TB' })],
  'GET /api/weather-comparison': ['200 200 200 403 401', () => ({ url: '/api/weather-comparison?first=alder&second=alder' })],
  'GET /api/weather-sources': ['200 200 200 403 401', () => ({ url: '/api/weather-sources' })],
  'GET /api/search': [
    '200 200 200 403 401',
    ...['a', 'birch', 'farm', 'T', 'mixture', 'key', 'reason', 'corn'].map((q) => () => ({ url: `/api/search?q=${q}` })),
  ],
  'POST /api/labels': ['200 200 403 403 401', () => ({ url: '/api/labels', body: { ...LABELS, trapIds: ['TA'] } })],
  'POST /api/labels.pdf': ['200 200 403 403 401', () => ({ url: '/api/labels.pdf', body: LABELS })],
  'GET /calendar/:file': ['404 404 404 404 404', () => ({ url: '/calendar/none.ics' })],
  'GET /api/calendar': ['200 200 200 403 401', () => ({ url: '/api/calendar' })],
  'POST /api/calendar': ['201 201 201 403 401', () => ({ url: '/api/calendar' })],
  'DELETE /api/calendar': ['204 204 204 403 401', () => ({ url: '/api/calendar' })],
  'GET /api/records/:kind': [
    '200 200 200 403 401',
    ...[
      'fields',
      'stages',
      'traps',
      'lures',
      'checks',
      'skips',
      'weather',
      'samples',
      'treatments',
      'decisions',
      'rules',
      'answers',
      'settings',
    ].map((kind) => () => ({ url: `/api/records/${kind}` })),
    ...['seasons', 'plans', 'prices', 'stock'].map((kind) => () => ({ url: `/api/records/${kind}` })),
  ],
  'GET /api/records/:kind/:key/history': [
    '200 200 200 403 401',
    () => ({ url: '/api/records/fields/alder-1/history' }),
    () => ({ url: '/api/records/traps/TM/history' }),
    ...[
      'fields/birch-1',
      'traps/TB',
      'checks/TB%7C2026-07-14%7C1',
      'weather/birch-yard%7C2026-07-14',
      'prices/lure%7Chelicoverpa-zea',
      'plans/2027%7Chelicoverpa-zea%7Cbirch-1',
    ].map((path) => () => ({ url: `/api/records/${path}/history` })),
  ],
  'GET /api/changes': ['200 200 200 403 401', () => ({ url: '/api/changes?since=0' })],
  'GET /api/conflicts': ['200 200 200 403 401', () => ({ url: '/api/conflicts' })],
  'POST /api/conflicts/settle': [
    '404 404 404 403 401',
    ({ revisionId }) => ({
      url: '/api/conflicts/settle',
      body: { kind: 'fields', key: 'birch-1', keepRevisionId: revisionId },
    }),
  ],
  'POST /api/revisions': [
    '200 200 200 200 401',
    ({ revisionId, recordId }) => ({
      url: '/api/revisions',
      body: {
        revisions: ['fields', 'treatments', 'stages'].map((kind) => ({
          revisionId: uuidv7(),
          recordId,
          kind,
          baseRevisionId: revisionId,
          at: '2026-07-15T05:00:00Z',
          value: null,
        })),
      },
    }),
  ],
  'POST /api/revisions/:revisionId/restore': ['404 404 404 403 401', () => ({ url: `/api/revisions/${uuidv7()}/restore` })],
  'GET /api/imports': ['200 403 403 403 401', () => ({ url: '/api/imports' })],
  'POST /api/imports': ['409 403 403 403 401', () => ({ url: '/api/imports', body: IMPORT })],
  'POST /api/imports/:importId/undo': ['404 403 403 403 401', () => ({ url: '/api/imports/none/undo' })],
  'GET /api/photos/:photo': ['404 404 404 403 401', () => ({ url: `/api/photos/${'0'.repeat(64)}` })],
  'POST /api/photos': ['400 400 400 403 401', () => ({ url: '/api/photos' })],
  'GET /api/session': ['200 200 200 200 200', () => ({ url: '/api/session' })],
  'POST /api/session': ['401 401 401 401 401', () => ({ url: '/api/session', body: { name: 'somebody', password: PASSWORD } })],
  'POST /api/session/pass-key-options': ['200 200 200 200 200', () => ({ url: '/api/session/pass-key-options' })],
  'POST /api/session/pass-key': ['401 401 401 401 401', () => ({ url: '/api/session/pass-key', body: KEY_ANSWER })],
  'GET /api/pass-keys': ['200 200 200 200 401', () => ({ url: '/api/pass-keys' })],
  'POST /api/pass-keys/options': ['200 200 200 200 401', () => ({ url: '/api/pass-keys/options', body: { password: PASSWORD } })],
  'POST /api/pass-keys': [
    '400 400 400 400 401',
    () => ({ url: '/api/pass-keys', body: { name: 'Phone', response: { ...KEY_ANSWER, response: KEY_MADE } } }),
  ],
  'DELETE /api/pass-keys': ['404 404 404 404 401', () => ({ url: '/api/pass-keys?id=AAAA' })],
  'PATCH /api/session': ['204 204 204 204 401', () => ({ url: '/api/session', body: { language: 'es' } })],
  'DELETE /api/session': ['204 204 204 204 204', () => ({ url: '/api/session' })],
  'GET /api/sessions': ['200 200 200 200 401', () => ({ url: '/api/sessions' })],
  'POST /api/session/password': [
    '400 400 400 400 401',
    () => ({ url: '/api/session/password', body: { password: PASSWORD, newPassword: 'short' } }),
  ],
  'DELETE /api/sessions': ['204 204 204 204 401', () => ({ url: '/api/sessions' })],
  'POST /api/first-person': [
    '409 409 409 409 409',
    () => ({ url: '/api/first-person', body: { code: CODE, name: 'Eve', password: PASSWORD } }),
  ],
  'GET /api/invitations': ['200 403 403 403 401', () => ({ url: '/api/invitations' })],
  'POST /api/invitations': ['201 403 403 403 401', () => ({ url: '/api/invitations', body: { role: 'grower', farms: [OTHER] } })],
  'DELETE /api/invitations/:id': ['404 403 403 403 401', () => ({ url: '/api/invitations/none' })],
  'GET /api/invitations/by-token/:token': ['404 404 404 404 404', () => ({ url: '/api/invitations/by-token/none' })],
  'POST /api/invitations/accept': [
    '404 404 404 404 404',
    () => ({ url: '/api/invitations/accept', body: { token: 'none', name: 'Eve', password: PASSWORD } }),
  ],
  'GET /api/people': ['200 403 403 403 401', () => ({ url: '/api/people' })],
  'GET /api/people/log': ['200 403 403 403 401', () => ({ url: '/api/people/log' })],
  'PATCH /api/people/:id': ['404 403 403 403 401', () => ({ url: '/api/people/none', body: { role: 'coordinator' } })],
};

/** Those that here only refuse: `every-answer` has them succeed. */
const SUCCEED_ELSEWHERE = [
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
  'POST /api/other-program',
  'POST /api/pass-keys',
  'POST /api/photos',
  'POST /api/renaming',
  'POST /api/restoring',
  'POST /api/restoring/:restoreId',
  'POST /api/revisions/:revisionId/restore',
  'POST /api/rounds/driving-times',
  'POST /api/session',
  'POST /api/session/pass-key',
  'POST /api/session/password',
  'POST /api/weather-fetching/:sourceId',
];

describe('every route', () => {
  let server: Awaited<ReturnType<typeof served>>;
  let other: Other;
  const ids = new Map<Who, string>();

  beforeAll(async () => {
    server = await served(twoFarms);
    const coordinator = await server.ida();
    ids.set('coordinator', (await coordinator.get('/api/session')).json().person.id);
    for (const role of ['scout', 'reader'] as const) ids.set(role, (await server.join(coordinator, `A ${role}`, role)).id);
    ids.set('grower', (await server.join(coordinator, 'A grower', 'grower', OWN)).id);
    other = (await server.store.current('fields')).find(({ key }) => key === 'birch-1')!;
    return server.stop;
  });

  /** Somebody with a session of their own, whatever earlier requests did to others. */
  async function browserOf(who: Who): Promise<Browser> {
    const browser = server.browser(`10.3.0.${WHO.indexOf(who)}`);
    const personId = ids.get(who);
    if (personId === undefined) return browser;
    const token = uuidv7();
    const at = new Date(server.clock.wallMs).toISOString();
    const session = { tokenHash: tokenHash(token), personId, startedAt: at, seenAt: at };
    await server.store.accounts.startSession(session, { startedBefore: '2000', seenBefore: '2000' });
    browser.cookie = `duskwatch=${token}`;
    return browser;
  }

  async function ask(who: Who, route: string) {
    const [, ...requests] = ROUTES[route]!;
    const method = route.split(' ')[0] as 'GET';
    const answers = [];
    for (const request of requests) {
      const { url, body } = request(other);
      answers.push(await (await browserOf(who)).send(method, url, body));
    }
    return answers;
  }

  it('is in this table', () => {
    const served = server.app.allowed.map(({ route }) => route).filter((route) => !route.startsWith('HEAD '));
    expect(served.sort()).toEqual(Object.keys(ROUTES).sort());
  });

  it.each(WHO)('answers or refuses a %s as it says', async (who) => {
    const found: Record<string, number[]> = {};
    const said: Record<string, number[]> = {};
    for (const [route, [statuses, ...requests]] of Object.entries(ROUTES)) {
      server.clock.elapsedS += 90_000;
      found[route] = (await ask(who, route)).map((answer) => answer.statusCode);
      said[route] = requests.map(() => Number(statuses.split(' ')[WHO.indexOf(who)]));
    }
    expect(found).toEqual(said);
  });

  it('has answered just as the API describes it', () => {
    const [document, ...elsewhere] = ['GET /api/openapi.json', ...SUCCEED_ELSEWHERE];
    const missing = Object.keys(ROUTES).filter((route) => route !== document && !server.succeeded.has(route));
    expect(missing.sort()).toEqual(elsewhere);
  });

  it('tells a grower nothing of another farm', async () => {
    for (const route of Object.keys(ROUTES)) {
      for (const answer of await ask('grower', route)) {
        const asked = `${answer.raw.req.url}`;
        // What was asked for comes back in a refusal, and tells nothing.
        const body = answer.statusCode < 400 ? answer.body : answer.body.replace(/"got":"[^"]*"/g, '');
        expect(SECRETS.exec(body)?.[0], `${route} (${asked})`).toBeUndefined();
      }
    }
  });

  it('tells a grower of the own farm, and a coordinator of both: the words looked for are there to be found', async () => {
    const seen = async (who: Who, route: string) => (await ask(who, route)).map((answer) => answer.body).join('\n');
    for (const route of ['GET /api/week', 'GET /api/traps', 'GET /api/changes', 'GET /api/records/:kind']) {
      expect(await seen('grower', route), route).toMatch(/alder/i);
      expect(await seen('coordinator', route), route).toMatch(SECRETS);
    }
  });

  it('tells nobody but a coordinator what things cost', async () => {
    for (const who of WHO) {
      const bodies: string[] = [];
      for (const route of Object.keys(ROUTES)) bodies.push(...(await ask(who, route)).map((answer) => answer.body));
      expect(
        bodies.some((body) => PRICES.test(body)),
        who,
      ).toBe(who === 'coordinator');
    }
  });

  it('tells a reader of no farm, field, place or note', async () => {
    for (const route of Object.keys(ROUTES)) {
      for (const answer of await ask('reader', route)) {
        const body = answer.statusCode < 400 ? answer.body : answer.body.replace(/"got":"[^"]*"/g, '');
        expect(PLACES.exec(body)?.[0], route).toBeUndefined();
      }
    }
  });

  it('allows who its statement says, and refuses all others before it looks at the request', async () => {
    for (const { route, allow } of server.app.allowed) {
      const [method, path] = route.split(' ') as ['GET', string];
      for (const who of WHO) {
        const mayAsk = allow === 'anyone' || (who !== 'nobody' && allow.includes(who as Role));
        if (mayAsk) continue;
        const answer = await (await browserOf(who)).send(method, path.replace(/:\w+/g, 'x'));
        expect(answer.statusCode, `${who}: ${route}`).toBe(who === 'nobody' ? 401 : 403);
      }
    }
  });
});

describe('without accounts', () => {
  it('whoever sits at the machine is the coordinator, and there are no people to manage', async () => {
    const app = buildServer({ store: memoryStore(twoFarms) });
    expect((await app.inject('/api/session')).json()).toMatchObject({
      mode: 'single-user',
      person: { id: 'this-machine', role: 'coordinator' },
      needsFirstPerson: false,
    });
    expect((await app.inject('/api/people')).json()).toEqual([]);
    for (const url of ['/api/session', '/api/first-person', '/api/invitations']) {
      const payload = { code: CODE, name: 'Ida', password: PASSWORD, role: 'scout' };
      expect((await app.inject({ method: 'POST', url, payload })).statusCode, url).toBe(409);
    }
  });

  it('a page elsewhere in the same browser cannot write', async () => {
    const app = buildServer({ store: memoryStore(twoFarms) });
    const write = (headers: Record<string, string>) => app.inject({ method: 'DELETE', url: '/api/session', headers });
    expect((await write({ origin: 'https://elsewhere.example' })).statusCode).toBe(403);
    expect((await write({ 'sec-fetch-site': 'cross-site' })).statusCode).toBe(403);
    expect((await write({})).statusCode).toBe(204);
  });
});
