import { verify } from '@node-rs/argon2';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { smallProgram } from '../small-program.testing.ts';
import { hashPassword } from './passwords.ts';
import { CODE, ORIGIN, PASSWORD, served as start } from './served.testing.ts';
import { ABSOLUTE_MS, IDLE_MS } from './sessions.ts';

vi.mock('@node-rs/argon2', { spy: true });

const DAY_MS = 86_400_000;

const served: typeof start = async (...options) => {
  const server = await start(...options);
  onTestFinished(server.stop);
  return server;
};

describe('the first person', () => {
  it('is whoever has the code from the terminal, once', async () => {
    const { browser } = await served();
    const ida = browser();
    expect((await ida.get('/api/session')).json()).toEqual({ mode: 'accounts', person: null, needsFirstPerson: true });
    const wrong = await ida.post('/api/first-person', { code: CODE.replace('K', 'L'), name: 'Ida', password: PASSWORD });
    expect(wrong.statusCode).toBe(401);

    const introduction = { code: CODE.toLowerCase().replaceAll('-', ' '), name: ' Ida  Brook ', password: PASSWORD };
    expect((await ida.post('/api/first-person', introduction)).json().person).toMatchObject({
      name: 'Ida Brook',
      role: 'coordinator',
    });
    expect((await ida.get('/api/session')).json()).toMatchObject({ person: { name: 'Ida Brook' }, needsFirstPerson: false });
    expect((await browser().post('/api/first-person', { ...introduction, name: 'Eve' })).statusCode).toBe(409);
  });

  it.each([
    ['Ida Brook', 'short', 'password'],
    ['Ida Brook', 'ida brook ida brook', 'password'],
    ['Id\u0430 Brook', PASSWORD, 'name'],
    [' ', PASSWORD, 'name'],
  ])('named %j with password %j is told what to mend', async (name, password, parameter) => {
    const { browser } = await served();
    const answer = await browser().post('/api/first-person', { code: CODE, name, password });
    expect(answer.statusCode).toBe(400);
    expect(answer.json().problems).toMatchObject([{ where: { parameter } }]);
    if (parameter === 'password') expect(answer.body).not.toContain(password);
  });
});

describe('signing in', () => {
  it('gives a cookie that scripts cannot read and other sites cannot send, of which only a hash is kept', async () => {
    const { ida, browser, store } = await served();
    await ida();
    const answer = await browser().signIn('ＩＤＡ  brook');
    expect(answer.statusCode).toBe(200);
    const cookie = String(answer.headers['set-cookie']);
    for (const part of ['HttpOnly', 'SameSite=Lax', 'Path=/', 'Max-Age=7776000']) expect(cookie).toContain(part);
    expect(cookie).not.toContain('Secure');
    expect(answer.headers['cache-control']).toBe('no-store');
    const token = /duskwatch=([^;]+)/.exec(cookie)![1]!;
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    expect(await store.accounts.session(token)).toBeNull();
  });

  it('over https the cookie is for https and this host alone', async () => {
    const { browser } = await served({}, 'https://moths.example');
    const joined = await browser().post(
      '/api/first-person',
      { code: CODE, name: 'Ida', password: PASSWORD },
      { origin: 'https://moths.example' },
    );
    expect(String(joined.headers['set-cookie'])).toMatch(/^__Host-duskwatch=.*; Secure/);
  });

  it('answers an unknown name, a wrong password and somebody disabled alike', async () => {
    const { ida, join, browser } = await served();
    const coordinator = await ida();
    const bo = await join(coordinator, 'Bo', 'scout');
    await coordinator.send('PATCH', `/api/people/${bo.id}`, { disabled: true });
    const answers = [
      await browser().signIn('Nobody Here'),
      await browser().signIn('Ida Brook', 'not the password at all'),
      await browser().signIn('Bo'),
      await browser().signIn(`' or '1'='1' --`),
      await browser().signIn('Id\u0430 Brook'),
    ];
    for (const answer of answers) {
      expect(answer.statusCode).toBe(401);
      expect(answer.body).toBe(answers[0]!.body);
      expect(answer.headers['set-cookie']).toBeUndefined();
    }
  });

  it('checks a password as dear for a name that nobody has, so that the time does not tell', async () => {
    const { ida, browser } = await served();
    await ida();
    const checked = vi.mocked(verify);
    for (const name of ['Ida Brook', 'Nobody Here']) {
      checked.mockClear();
      await browser().signIn(name, 'not the password at all');
      expect(checked, name).toHaveBeenCalledOnce();
      expect(checked.mock.calls[0]![0], name).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    }
  });

  it('keeps passwords as Argon2id with the parameters that OWASP asks for at least', async () => {
    expect(await hashPassword(PASSWORD)).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
  });
});

describe('whoever guesses passwords', () => {
  it('waits longer each time, at one name, from however many addresses, whether or not it exists', async () => {
    for (const name of ['Ida Brook', 'Nobody Here']) {
      const { ida, browser, clock } = await served();
      await ida();
      const guess = (n: number) => browser(`10.1.0.${n}`).signIn(name, 'guess after guess after');
      for (let n = 0; n < 5; n++) expect((await guess(n)).statusCode).toBe(401);
      const waits: number[] = [];
      for (let n = 5; n < 9; n++) {
        clock.elapsedS += waits.at(-1) ?? 1;
        await guess(n);
        const early = await guess(n);
        expect(early.statusCode).toBe(429);
        waits.push(Number(early.headers['retry-after']));
      }
      expect(waits).toEqual([2, 4, 8, 16]);
      expect((await browser().signIn(name)).statusCode).toBe(429);
      clock.elapsedS += 16;
      expect((await browser().signIn(name)).statusCode).toBe(name === 'Ida Brook' ? 200 : 401);
    }
  });

  it('gets no more through by trying all at once', async () => {
    const { ida, browser } = await served();
    await ida();
    const answers = await Promise.all(Array.from({ length: 20 }, () => browser().signIn('Ida Brook', 'many guesses at once')));
    expect(answers.filter((answer) => answer.statusCode === 401)).toHaveLength(5);
    expect(answers.filter((answer) => answer.statusCode === 429)).toHaveLength(15);
  });

  it('waits at an address, though trying another name each time and signing in as oneself between', async () => {
    const { ida, browser } = await served();
    await ida();
    const statuses: number[] = [];
    for (let n = 0; n < 32; n++) {
      statuses.push((await browser('10.2.0.1').signIn(`name ${n}`, 'one password for all')).statusCode);
      if (n === 10) expect((await browser('10.2.0.1').signIn('Ida Brook')).statusCode).toBe(200);
    }
    expect(statuses.slice(0, 30)).toEqual(Array(30).fill(401));
    expect(statuses.at(-1)).toBe(429);
    expect((await browser('10.2.0.2').signIn('Ida Brook')).statusCode).toBe(200);
  });
});

it('links cannot be tried in bulk from one address', async () => {
  const { browser } = await served();
  const statuses: number[] = [];
  for (let n = 0; n < 61; n++) statuses.push((await browser().get(`/api/invitations/by-token/${n}`)).statusCode);
  expect(statuses.slice(0, 60)).toEqual(Array(60).fill(404));
  const refused = await browser().get('/api/invitations/by-token/last');
  expect(refused.statusCode).toBe(429);
  expect(refused.json().problems).toHaveLength(1);
  expect((await browser('10.9.9.9').get('/api/invitations/by-token/last')).statusCode).toBe(404);
});

describe('sessions', () => {
  it('a cookie copied before signing out opens nothing after', async () => {
    const { ida, browser } = await served(smallProgram());
    const coordinator = await ida();
    const stolen = coordinator.cookie!;
    expect((await coordinator.send('DELETE', '/api/session')).statusCode).toBe(204);
    expect(coordinator.cookie).toBeUndefined();
    const thief = browser();
    thief.cookie = stolen;
    expect((await thief.get('/api/week')).statusCode).toBe(401);
  });

  it('signing in again ends the session there was, and nobody can choose the id of the next', async () => {
    const { ida, browser } = await served(smallProgram());
    const coordinator = await ida();
    const before = coordinator.cookie!;
    await coordinator.signIn('Ida Brook');
    expect(coordinator.cookie).not.toBe(before);
    const old = browser();
    old.cookie = before;
    expect((await old.get('/api/week')).statusCode).toBe(401);
    const planted = browser();
    planted.cookie = `duskwatch=${'A'.repeat(43)}`;
    await planted.signIn('Ida Brook');
    expect(planted.cookie).not.toContain('AAAA');
  });

  it('a password changed by its owner, who types the old one, ends all sessions but the one it was changed in', async () => {
    const { ida, browser, join } = await served();
    const here = await ida();
    const there = browser();
    await there.signIn('Ida Brook');
    const { browser: bo } = await join(here, 'Bo Fell', 'scout');
    const lists = async () => (await here.get('/api/sessions')).json<{ here: boolean }[]>().map((each) => each.here);
    expect((await lists()).sort()).toEqual([false, true]);
    const next = 'gravel owls under seven ladders';
    const change = async (password: string, newPassword: string) =>
      (await here.post('/api/session/password', { password, newPassword })).statusCode;
    expect([await change('not the old one at all', next), await change(PASSWORD, 'short')]).toEqual([401, 400]);
    expect(await change(PASSWORD, 'Ida Brook Ida Brook')).toBe(400);
    expect(await change(PASSWORD, next)).toBe(204);
    expect(await lists()).toEqual([true]);
    expect((await there.get('/api/session')).json().person).toBeNull();
    expect((await bo.get('/api/session')).json().person.name).toBe('Bo Fell');
    expect((await browser().signIn('Ida Brook')).statusCode).toBe(401);
    expect((await browser().signIn('Ida Brook', next)).statusCode).toBe(200);
  });

  it('sign-out everywhere ends all of that person and of nobody else', async () => {
    const { ida, join, browser } = await served(smallProgram());
    const coordinator = await ida();
    const bo = await join(coordinator, 'Bo', 'scout');
    const phone = browser();
    await phone.signIn('Bo');
    await bo.browser.send('DELETE', '/api/sessions');
    expect((await phone.get('/api/week')).statusCode).toBe(401);
    expect((await coordinator.get('/api/week')).statusCode).toBe(200);
  });

  it.each([{ disabled: true }, { role: 'reader' }, { role: 'grower', farms: ['Hill farm'] }])(
    'end at once for somebody who becomes %j',
    async (change) => {
      const { ida, join } = await served(smallProgram());
      const coordinator = await ida();
      const bo = await join(coordinator, 'Bo', 'scout');
      expect((await coordinator.send('PATCH', `/api/people/${bo.id}`, change)).statusCode).toBe(200);
      expect((await bo.browser.get('/api/week')).statusCode).toBe(401);
    },
  );

  it('end after 14 days without use, and after 90 days of use', async () => {
    const { ida, clock } = await served(smallProgram());
    const coordinator = await ida();
    const begun = clock.wallMs;
    while (clock.wallMs + 10 * DAY_MS < begun + ABSOLUTE_MS) {
      clock.wallMs += 10 * DAY_MS;
      expect((await coordinator.get('/api/week')).statusCode).toBe(200);
    }
    clock.wallMs = begun + ABSOLUTE_MS;
    expect((await coordinator.get('/api/week')).statusCode).toBe(401);
    await coordinator.signIn('Ida Brook');
    clock.wallMs += IDLE_MS;
    expect((await coordinator.get('/api/week')).statusCode).toBe(401);
  });

  it('a clock set back makes no session, invitation or lock last longer', async () => {
    const { ida, browser, clock } = await served(smallProgram());
    const coordinator = await ida();
    const { token } = (await coordinator.post('/api/invitations', { role: 'scout' })).json();
    clock.wallMs -= 60_000;
    expect((await coordinator.get('/api/week')).statusCode).toBe(200);
    clock.wallMs -= 365 * DAY_MS;
    expect((await coordinator.get('/api/week')).statusCode).toBe(401);
    expect((await browser().get(`/api/invitations/by-token/${token}`)).statusCode).toBe(404);
    expect((await browser().signIn('Ida Brook')).statusCode).toBe(200);
  });
});

describe('writes from elsewhere', () => {
  it.each([
    ['another site', { origin: 'https://elsewhere.example' }],
    ['another port of this machine', { origin: 'http://localhost:81' }],
    ['this host over another scheme', { origin: 'https://localhost:80' }],
    ['a page that hides where it is', { origin: 'null' }],
  ])('%s cannot use the session that a browser has here', async (_who, headers) => {
    const { ida } = await served(smallProgram());
    const coordinator = await ida();
    const writes = [
      coordinator.post('/api/invitations', { role: 'coordinator' }, headers),
      coordinator.send('DELETE', '/api/sessions', undefined, headers),
      coordinator.post('/api/session', { name: 'Ida Brook', password: PASSWORD }, headers),
    ];
    for (const write of writes) expect((await write).statusCode).toBe(403);
    expect((await coordinator.get('/api/invitations')).json()).toEqual([]);
  });

  it('a cookie without the name of a page is not enough', async () => {
    const { ida, app } = await served();
    const { cookie } = await ida();
    const answer = await app.inject({
      method: 'DELETE',
      url: '/api/sessions',
      headers: { host: 'localhost:80', cookie: cookie! },
    });
    expect(answer.statusCode).toBe(403);
  });

  it('behind a proxy the public address is the only own one', async () => {
    const { browser } = await served({}, 'https://moths.example');
    const attempt = (origin: string) => browser('127.0.0.1').post('/api/session', { name: 'a', password: 'b' }, { origin });
    expect((await attempt(ORIGIN)).statusCode).toBe(403);
    expect((await attempt('https://moths.example')).statusCode).toBe(401);
  });

  it.each(['/api/session', '/api/first-person', '/api/invitations/accept'])('%s reads no large body', async (url) => {
    const { browser } = await served();
    const answer = await browser().post(url, { name: 'x'.repeat(100_000), password: PASSWORD });
    expect(answer.statusCode).toBe(413);
  });
});
