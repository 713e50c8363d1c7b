import { expect, it, onTestFinished } from 'vitest';
import { PASSWORD, served as start } from './served.testing.ts';
import { OTHER, OWN, twoFarms } from './two-farms.testing.ts';

const DAY_MS = 86_400_000;

const served = async () => {
  const server = await start(twoFarms);
  onTestFinished(server.stop);
  return { ...server, coordinator: await server.ida() };
};

it('a link gives the role and farms that the coordinator fixed, whatever is sent with it', async () => {
  const { coordinator, browser } = await served();
  const invited = await coordinator.post('/api/invitations', { role: 'grower', farms: [OWN] });
  expect(invited.json().path).toBe(`/join/${invited.json().token}`);
  const { token } = invited.json();
  const bo = browser();
  expect((await bo.get(`/api/invitations/by-token/${token}`)).json()).toMatchObject({
    program: 'Vale',
    role: 'grower',
    farms: [OWN],
    name: null,
  });
  const grab = { token, name: 'Bo', password: PASSWORD, role: 'coordinator', farms: [OTHER], language: 'es' };
  const joined = await bo.post('/api/invitations/accept', grab);
  expect(joined.json().person).toMatchObject({ name: 'Bo', role: 'grower', farms: [OWN], language: 'es' });
  expect((await bo.get('/api/program')).json().farms).toEqual([OWN]);
});

it('a link is good once, also for two at the same time', async () => {
  const { coordinator, browser } = await served();
  const { token } = (await coordinator.post('/api/invitations', { role: 'scout' })).json();
  const accept = (name: string) => browser().post('/api/invitations/accept', { token, name, password: PASSWORD });
  const both = await Promise.all([accept('Bo'), accept('Cy')]);
  expect(both.map((answer) => answer.statusCode).sort()).toEqual([200, 404]);
  expect((await accept('Di')).statusCode).toBe(404);
  expect((await coordinator.get('/api/people')).json()).toHaveLength(2);
});

it('a link is good for seven days, until withdrawn, and only as long as who made it is a coordinator', async () => {
  const { coordinator, browser, clock, join } = await served();
  const bo = await join(coordinator, 'Bo', 'coordinator');
  const open = async (token: string) => (await browser().get(`/api/invitations/by-token/${token}`)).statusCode;
  const withdrawn = (await coordinator.post('/api/invitations', { role: 'scout' })).json();
  const byBo = (await bo.browser.post('/api/invitations', { role: 'coordinator' })).json();
  const kept = (await coordinator.post('/api/invitations', { role: 'scout' })).json();
  expect(await coordinator.send('DELETE', `/api/invitations/${withdrawn.id}`)).toMatchObject({ statusCode: 204 });
  await coordinator.send('PATCH', `/api/people/${bo.id}`, { role: 'scout' });
  expect([await open(withdrawn.token), await open(byBo.token), await open(kept.token)]).toEqual([404, 404, 200]);

  clock.wallMs += 7 * DAY_MS - 1;
  expect(await open(kept.token)).toBe(200);
  clock.wallMs += 1;
  expect(await open(kept.token)).toBe(404);
  const late = await browser().post('/api/invitations/accept', { token: kept.token, name: 'Cy', password: PASSWORD });
  expect(late.statusCode).toBe(404);
  expect((await coordinator.get('/api/invitations')).json()).toEqual([]);
});

it('whoever reads the database, or a list of invitations, has no link', async () => {
  const { coordinator, store } = await served();
  const { token } = (await coordinator.post('/api/invitations', { role: 'scout' })).json();
  expect(JSON.stringify(await store.accounts.invitations())).not.toContain(token);
  const list = await coordinator.get('/api/invitations');
  expect(list.json()).toMatchObject([{ role: 'scout', person: null, createdBy: 'Ida Brook' }]);
  expect(list.body).not.toMatch(/token/i);
});

it.each([
  { role: 'grower', farms: [] },
  { role: 'grower', farms: ['Birch  farm'] },
  { role: 'scout', farms: [OWN] },
])('an invitation as %j is refused', async (grant) => {
  const { coordinator } = await served();
  const refused = await coordinator.post('/api/invitations', grant);
  expect(refused.statusCode).toBe(400);
  expect(refused.json().problems[0].where).toEqual({ parameter: 'farms' });
});

it('nobody joins under a name that looks like another in this program', async () => {
  const { coordinator, browser } = await served();
  const { token } = (await coordinator.post('/api/invitations', { role: 'scout' })).json();
  const as = async (name: string) =>
    (await browser().post('/api/invitations/accept', { token, name, password: PASSWORD })).statusCode;
  expect(await as('ＩＤＡ\u00a0BROOK')).toBe(409);
  expect(await as('Ida\u200b Brook')).toBe(400);
  expect(await as('Id\u0430 Brook')).toBe(400);
  expect(await as(`'); drop table people; --`)).toBe(200);
  expect((await coordinator.get('/api/people')).json()).toHaveLength(2);
});

it('a lost password is a new link: the person stays who they are, and their open sessions end', async () => {
  const { coordinator, browser, join } = await served();
  const bo = await join(coordinator, 'Bo', 'grower', OWN);
  const { token } = (await coordinator.post('/api/invitations', { personId: bo.id })).json();
  const again = browser();
  expect((await again.get(`/api/invitations/by-token/${token}`)).json().name).toBe('Bo');
  expect((await again.post('/api/invitations/accept', { token, password: 'bo bo bo bo bo bo' })).statusCode).toBe(400);
  const joined = await again.post('/api/invitations/accept', { token, password: 'wet gravel under the owls' });
  expect(joined.json().person).toMatchObject({ id: bo.id, name: 'Bo', role: 'grower', farms: [OWN] });
  expect((await bo.browser.get('/api/week')).statusCode).toBe(401);
  expect((await browser().signIn('Bo')).statusCode).toBe(401);
  expect((await browser().signIn('bo', 'wet gravel under the owls')).statusCode).toBe(200);
});

it('the last coordinator stays one', async () => {
  const { coordinator } = await served();
  const { id } = (await coordinator.get('/api/session')).json().person;
  for (const change of [{ disabled: true }, { role: 'scout' }])
    expect((await coordinator.send('PATCH', `/api/people/${id}`, change)).statusCode).toBe(409);
  expect((await coordinator.get('/api/people')).statusCode).toBe(200);
});

it('farms go with the role of a grower', async () => {
  const { coordinator, join } = await served();
  const bo = await join(coordinator, 'Bo', 'scout');
  const change = (body: object) => coordinator.send('PATCH', `/api/people/${bo.id}`, body);
  expect((await change({ role: 'grower' })).statusCode).toBe(400);
  expect((await change({ role: 'grower', farms: [OWN] })).json()).toMatchObject({ role: 'grower', farms: [OWN] });
  expect((await change({ role: 'reader' })).json()).toMatchObject({ role: 'reader', farms: [] });
  expect((await coordinator.get('/api/people')).json()).toMatchObject([{ name: 'Bo', role: 'reader', farms: [] }, {}]);
});

it('the log names who changed whom', async () => {
  const { coordinator, join } = await served();
  const bo = await join(coordinator, 'Bo', 'scout');
  await coordinator.send('PATCH', `/api/people/${bo.id}`, { disabled: true });
  expect((await coordinator.get('/api/people/log')).json()).toMatchObject([
    { actor: 'Ida Brook', action: 'disabled', subject: 'Bo' },
    { actor: 'Bo', action: 'joined', subject: 'Bo', detail: 'scout' },
    { actor: 'Ida Brook', action: 'invited', subject: null, detail: 'scout' },
    { actor: 'Ida Brook', action: 'first-person', subject: 'Ida Brook', detail: 'coordinator' },
  ]);
});

it('a grower restores nothing of another farm, and learns nothing by trying', async () => {
  const { coordinator, store, join } = await served();
  const bo = await join(coordinator, 'Bo', 'grower', OWN);
  const others = (await store.current('treatments')).find(({ key }) => key.startsWith('birch-1'))!;
  const tried = await bo.browser.post(`/api/revisions/${others.revisionId}/restore`, {});
  expect(tried.statusCode).toBeGreaterThanOrEqual(400);
  expect(tried.body).not.toMatch(/birch/i);
});
