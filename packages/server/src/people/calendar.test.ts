import ICAL from 'ical.js';
import { describe, expect, it, onTestFinished } from 'vitest';
import { calendarFaults } from '../documents/strict-calendar.testing.ts';
import { buildServer } from '../server.ts';
import { type Browser, served } from './served.testing.ts';
import { OWN, SECRETS, twoFarms } from './two-farms.testing.ts';

async function started() {
  const server = await served(twoFarms, 'https://moths.example');
  onTestFinished(server.stop);
  const origin = { origin: 'https://moths.example' };
  const ida = server.browser();
  await ida.send('POST', '/api/first-person', { code: 'K7QM-2XWD-HF4T-9BNR', name: 'Ida Brook', password: PASSWORD }, origin);
  const join = async (name: string, role: string, ...farms: string[]) => {
    const invited = await ida.send('POST', '/api/invitations', { role, farms }, origin);
    const browser = server.browser();
    const body = { token: invited.json().token, name, password: PASSWORD };
    return { browser, id: (await browser.send('POST', '/api/invitations/accept', body, origin)).json().person.id as string };
  };
  const make = async (browser: Browser): Promise<string> => (await browser.send('POST', '/api/calendar', {}, origin)).json().path;
  /** As a calendar program does: no cookie, no origin. */
  const fetch = (path: string, headers: Record<string, string> = {}) => server.app.inject({ url: path, headers });
  return { ...server, ida, join, make, fetch, origin };
}

const PASSWORD = 'three herons over wet clover';
const uidsOf = (text: string) =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((event) => String(event.getFirstPropertyValue('uid')));

describe('a calendar address', () => {
  it('is fetched without a session, is valid, and keeps its uids when something moves', async () => {
    const { ida, make, fetch, store } = await started();
    const path = await make(ida);
    expect(path).toMatch(/^\/calendar\/[\w-]{43}\.ics$/);
    const first = await fetch(path);
    expect(first.statusCode).toBe(200);
    expect(first.headers['content-type']).toBe('text/calendar; charset=utf-8');
    expect(calendarFaults(first.body)).toEqual([]);
    expect(uidsOf(first.body).length).toBeGreaterThan(3);
    const again = await fetch(path, { 'if-none-match': `W/${first.headers.etag}` });
    expect([again.statusCode, again.body, again.headers.etag]).toEqual([304, '', first.headers.etag]);

    // A lure with a longer life moves its change.
    await store.importProgram(
      { lures: [{ trapId: 'TA', placedOn: '2026-07-01', lifeDays: 42 }] },
      { author: 'test', at: '2026-07-15T05:00:00Z' },
    );
    const moved = await fetch(path, { 'if-none-match': first.headers.etag as string });
    expect(moved.statusCode).toBe(200);
    expect(uidsOf(moved.body).sort()).toEqual(uidsOf(first.body).sort());
    expect(moved.body).toContain('SEQUENCE:1');
  });

  it('is kept as a hash alone, and the one before it ends when another is made or it is taken back', async () => {
    const { ida, make, fetch, store, origin } = await started();
    const [old, path] = [await make(ida), await make(ida)];
    expect([(await fetch(old)).statusCode, (await fetch(path)).statusCode]).toEqual([404, 200]);
    const secret = path.slice('/calendar/'.length, -'.ics'.length);
    const me = (await ida.get('/api/session')).json().person.id;
    expect(JSON.stringify(await store.calendars.feedOf(me))).not.toContain(secret);
    expect((await ida.get('/api/calendar')).json().madeAt).not.toBeNull();
    await ida.send('DELETE', '/api/calendar', undefined, origin);
    expect((await fetch(path)).statusCode).toBe(404);
    expect((await ida.get('/api/calendar')).json()).toEqual({ madeAt: null });
  });

  it('of a grower holds the own farm alone', async () => {
    const { ida, join, make, fetch } = await started();
    const { browser } = await join('Gro Wer', 'grower', OWN);
    const own = (await fetch(await make(browser))).body.replace(/\r\n /g, '');
    expect(own).toMatch(/alder/i);
    expect(SECRETS.exec(own)?.[0]).toBeUndefined();
    expect((await fetch(await make(ida))).body.replace(/\r\n /g, '')).toMatch(SECRETS);
  });

  it('stops when its person is disabled or becomes a reader', async () => {
    const { ida, join, make, fetch, origin } = await started();
    for (const change of [{ disabled: true }, { role: 'reader' }]) {
      const { browser, id } = await join(`Scout ${JSON.stringify(change).replace(/\W/g, '')}`, 'scout');
      const path = await make(browser);
      expect((await fetch(path)).statusCode).toBe(200);
      expect((await ida.send('PATCH', `/api/people/${id}`, change, origin)).statusCode).toBeLessThan(300);
      expect((await fetch(path)).statusCode).toBe(404);
    }
  });

  it('is asked for so often and no more', async () => {
    const { fetch } = await started();
    const answers = [];
    for (let n = 0; n < 61; n++) answers.push((await fetch('/calendar/guess.ics')).statusCode);
    expect([answers[0], answers.at(-1)]).toEqual([404, 429]);
  });

  it('is there without accounts too, for this machine, and ends when accounts begin', async () => {
    const { store, fetch, stop: _ } = await started();
    const alone = buildServer({ store, records: { store, photoFolder: '/nowhere' } });
    const { path } = (await alone.inject({ method: 'POST', url: '/api/calendar' })).json();
    expect(calendarFaults((await alone.inject(path)).body)).toEqual([]);
    expect((await fetch(path)).statusCode).toBe(404);
    expect((await alone.inject('/calendar/none.ics')).statusCode).toBe(404);
  });
});
