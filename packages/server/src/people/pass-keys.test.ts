import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { device } from './device.testing.ts';
import { type Browser, ORIGIN, PASSWORD, served } from './served.testing.ts';

const PAGE = new URL(ORIGIN).origin;

describe('a pass-key', () => {
  let server: Awaited<ReturnType<typeof served>>;
  let ida: Browser;
  beforeAll(async () => {
    server = await served();
    ida = await server.ida();
  });
  afterAll(() => server.stop());
  beforeEach(() => {
    server.clock.elapsedS += 86_400;
  });

  const offered = async (browser: Browser) =>
    (await browser.post('/api/pass-keys/options', { password: PASSWORD })).json<{ challenge: string }>();
  const asked = async (browser: Browser) =>
    (await browser.post('/api/session/pass-key-options', {})).json<{ challenge: string }>();
  /** A device whose key is known here as its owner's. */
  async function added(browser: Browser, options = {}) {
    const phone = device(PAGE, options);
    const answer = await browser.post('/api/pass-keys', { name: 'Phone', response: phone.make(await offered(browser)) });
    expect(answer.statusCode).toBe(201);
    return phone;
  }

  it('signs its owner in on another browser, without name and password, each time anew', async () => {
    for (const counts of [true, false]) {
      const phone = await added(ida, { counts });
      for (const _ of [1, 2]) {
        const browser = server.browser();
        const answer = await browser.post('/api/session/pass-key', phone.sign(await asked(browser)));
        expect([answer.statusCode, answer.json().person?.name]).toEqual([200, 'Ida Brook']);
        expect((await browser.get('/api/session')).json().person.name).toBe('Ida Brook');
      }
    }
  });

  it('is added only by who types the password again', async () => {
    const wrong = await ida.post('/api/pass-keys/options', { password: 'herons over wet clovers, three' });
    expect([wrong.statusCode, wrong.json().problems[0].where.parameter]).toEqual([401, 'password']);
    expect((await server.browser().post('/api/pass-keys/options', { password: PASSWORD })).statusCode).toBe(401);
  });

  it('is not taken of another page, for another challenge, a second time or too late', async () => {
    const phone = device(PAGE);
    const add = async (response: object) => (await ida.post('/api/pass-keys', { name: 'Phone', response })).statusCode;
    expect(await add(device('http://elsewhere.example').make(await offered(ida)))).toBe(400);
    expect(await add(phone.make({ challenge: 'AAAA' }))).toBe(400);
    // What somebody else was offered is not mine to use.
    const { browser: bo } = await server.join(ida, `Bo ${Math.random()}`, 'scout');
    expect(await add(phone.make(await offered(bo)))).toBe(400);
    const late = phone.make(await offered(ida));
    server.clock.wallMs += 301_000;
    expect(await add(late)).toBe(400);
    const right = phone.make(await offered(ida));
    expect([await add(right), await add(right)]).toEqual([201, 400]);
  });

  it('signs nobody in by a signature that was used, is another’s, unverified, too late, or of a copy', async () => {
    const phone = await added(ida);
    const attempt = async (response: object) => (await server.browser().post('/api/session/pass-key', response)).statusCode;
    const options = () => asked(server.browser());
    const once = phone.sign(await options());
    expect([await attempt(once), await attempt(once)]).toEqual([200, 401]);
    expect(await attempt({ ...device(PAGE).sign(await options()), id: phone.id, rawId: phone.id })).toBe(401);
    expect(await attempt(device(PAGE).sign(await options()))).toBe(401);
    expect(await attempt(phone.sign(await options(), { verified: false }))).toBe(401);
    const late = phone.sign(await options());
    server.clock.wallMs += 301_000;
    expect(await attempt(late)).toBe(401);
    // What was given out to make a key with is not to sign in with.
    expect(await attempt(phone.sign(await offered(ida)))).toBe(401);
    expect(await attempt(phone.sign(await options()))).toBe(200);
    phone.rewind();
    expect(await attempt(phone.sign(await options()))).toBe(401);
  });

  it('is listed to its owner and to nobody else, can be taken away, and then signs nobody in', async () => {
    const { browser: cy } = await server.join(ida, 'Cy Marl', 'scout');
    const phone = await added(cy);
    expect((await cy.get('/api/pass-keys')).json()).toMatchObject([{ id: phone.id, name: 'Phone', usedAt: null }]);
    expect((await ida.get('/api/pass-keys')).body).not.toContain(phone.id);
    const remove = async (browser: Browser) => (await browser.send('DELETE', `/api/pass-keys?id=${phone.id}`)).statusCode;
    expect([await remove(ida), await remove(cy), await remove(cy)]).toEqual([404, 204, 404]);
    const browser = server.browser();
    expect((await browser.post('/api/session/pass-key', phone.sign(await asked(browser)))).statusCode).toBe(401);
  });

  it('opens nothing for somebody who is disabled, and ends with a new password', async () => {
    const { browser: di, id } = await server.join(ida, 'Di Fell', 'scout');
    const phone = await added(di);
    const attempt = async () => {
      const browser = server.browser();
      return (await browser.post('/api/session/pass-key', phone.sign(await asked(browser)))).statusCode;
    };
    await ida.send('PATCH', `/api/people/${id}`, { disabled: true });
    expect(await attempt()).toBe(401);
    await ida.send('PATCH', `/api/people/${id}`, { disabled: false });
    expect(await attempt()).toBe(200);
    const link = await ida.post('/api/invitations', { personId: id });
    const renewed = { token: link.json().token, name: 'Di Fell', password: `${PASSWORD} again` };
    expect((await server.browser().post('/api/invitations/accept', renewed)).statusCode).toBe(200);
    expect(await attempt()).toBe(401);
  });

  it('is kept out of the log but for its name', async () => {
    const phone = await added(ida);
    const log = (await ida.get('/api/people/log')).body;
    expect(log).toContain('pass-key-added');
    expect(log).not.toContain(phone.id);
  });
});
