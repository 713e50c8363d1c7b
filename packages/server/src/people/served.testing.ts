/** A server with accounts over a real database, and people with browsers before it. All invented. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Program, Role } from '@duskwatch/core';
import { openStore } from '@duskwatch/store';
import type { FastifyInstance } from 'fastify';
import { answersAreDescribed } from '../described.testing.ts';
import { buildServer } from '../server.ts';

export const CODE = 'K7QM-2XWD-HF4T-9BNR';
export const PASSWORD = 'three herons over wet clover';
export const ORIGIN = 'http://localhost:80';

type Method = 'GET' | 'POST' | 'PATCH' | 'DELETE';

interface Clock {
  /** Milliseconds since 1970 that the server reads. */
  wallMs: number;
  elapsedS: number;
}

/** Keeps cookies as a browser does, and names its page's origin with each request. */
export class Browser {
  cookie: string | undefined;
  readonly #app: FastifyInstance;
  readonly #address: string;

  constructor(app: FastifyInstance, address = '10.0.0.1') {
    this.#app = app;
    this.#address = address;
  }

  async send(method: Method, url: string, payload?: object, headers: Record<string, string> = {}) {
    const answer = await this.#app.inject({
      method,
      url,
      remoteAddress: this.#address,
      headers: { host: 'localhost:80', origin: ORIGIN, ...(this.cookie && { cookie: this.cookie }), ...headers },
      ...(payload && { payload }),
    });
    for (const set of [answer.headers['set-cookie'] ?? []].flat()) {
      const pair = set.split(';')[0]!;
      this.cookie = pair.endsWith('=') ? undefined : pair;
    }
    return answer;
  }

  get = (url: string) => this.send('GET', url);
  post = (url: string, payload: object, headers?: Record<string, string>) => this.send('POST', url, payload, headers);
  signIn = (name: string, password = PASSWORD) => this.post('/api/session', { name, password });
}

/** Until `stop` is called. */
export async function served(program: Partial<Program> = {}, publicOrigin?: string) {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-people-'));
  const store = await openStore(join(folder, 'data.sqlite'));
  const imported = await store.importProgram(program, { author: 'test', at: '2026-07-14T12:00:00Z' });
  if (!imported.ok) throw new Error(JSON.stringify(imported.problems));
  const clock: Clock = { wallMs: Date.parse('2026-07-15T06:00:00Z'), elapsedS: 0 };
  const accounts = {
    store: store.accounts,
    firstPersonCode: CODE,
    publicOrigin,
    now: () => new Date(clock.wallMs),
    elapsedS: () => clock.elapsedS,
  };
  const records = { store, photoFolder: join(folder, 'photos'), now: () => clock.wallMs };
  const app = buildServer({ store, accounts, records });
  const succeeded = answersAreDescribed(app);
  const stop = async () => {
    await app.close();
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  };

  return {
    app,
    /** Operations that gave an answer as described, so far. */
    succeeded,
    store,
    clock,
    stop,
    browser: (address?: string) => new Browser(app, address),
    /** The first coordinator, signed in. */
    async ida() {
      const browser = new Browser(app);
      const joined = await browser.post('/api/first-person', { code: CODE, name: 'Ida Brook', password: PASSWORD });
      if (joined.statusCode !== 200) throw new Error(joined.body);
      return browser;
    },
    /** Somebody whom a coordinator invited, signed in. */
    async join(coordinator: Browser, name: string, role: Role, ...farms: string[]) {
      const invited = await coordinator.post('/api/invitations', { role, farms });
      const browser = new Browser(app);
      const joined = await browser.post('/api/invitations/accept', { token: invited.json().token, name, password: PASSWORD });
      if (joined.statusCode !== 200) throw new Error(joined.body);
      return { browser, id: joined.json().person.id as string };
    },
  };
}
