/** What each role does on a phone, tap by tap, and what is left of it without signal. */
import type { BrowserContext, Locator, Page } from '@playwright/test';
import { PASSWORD, startWithAccounts } from './accounts.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, test } from './page.ts';
import { keptOnPhone, type Stored } from './round.ts';

// One server for the file. Without a network the console complains of what does not come.
test.describe.configure({ mode: 'default' });
test.use({ mayComplain: true, locale: 'en-US' });

let server: Awaited<ReturnType<typeof startWithAccounts>>;
const FARM = 'Dunnoch End';
test.beforeAll(async ({ playwright }) => {
  server = await startWithAccounts();
  // It is printed a moment after the address.
  await expect.poll(() => server.code()).not.toBe('');
  const coordinator = await playwright.request.newContext();
  await server.first(coordinator, 'Ida Brook', server.code());
  await coordinator.dispose();
});
test.afterAll(() => server.stop());

/** Taps as a thumb does, and counts them. */
function thumb() {
  const taps = { count: 0 };
  const tap = async (what: Locator) => {
    taps.count += 1;
    await what.tap();
  };
  return { taps, tap };
}

const bar = (page: Page) => page.getByRole('navigation', { name: 'Pages', exact: true });
const place = (page: Page, name: string | RegExp) => bar(page).getByRole('link', { name });
const noSignal = (page: Page) => page.getByText(/^No signal\. This is as it was read here on /);

/** Waits until the phone holds the app's pages and these answers, as it does by itself a few seconds after it was opened. */
async function untilKept(page: Page, ...answers: readonly string[]) {
  const worker = await (await page.request.get(`${server.url}/service-worker.js`)).text();
  const { later } = JSON.parse(/__PRECACHE__=(\{.*?\});/.exec(worker)![1]!) as { later: string[] };
  const missing = () =>
    page.evaluate(
      async ([paths, pages]) => {
        const names = async (cache: string) => (await (await caches.open(cache)).keys()).map(({ url }) => new URL(url).pathname);
        const shells = (await caches.keys()).filter((name) => name.startsWith('duskwatch-shell-'));
        const files = (await Promise.all(shells.map(names))).flat();
        const kept = await names('duskwatch-answers');
        return [...pages.filter((file) => !files.includes(file)), ...paths.filter((path) => !kept.includes(path))];
      },
      [answers, later] as const,
    );
  await expect.poll(missing).toEqual([]);
}

async function invited(playwright: typeof import('@playwright/test'), role: 'scout' | 'grower', farms: readonly string[] = []) {
  const coordinator = await playwright.request.newContext();
  await server.signIn(coordinator, 'Ida Brook');
  const path = await server.invite(coordinator, role, farms);
  await coordinator.dispose();
  return `${server.url}${path}`;
}

async function join(page: Page, link: string, name: string) {
  await page.goto(link);
  await page.getByLabel('Name').fill(name);
  await page.getByLabel('Password of your choice').fill(PASSWORD);
}

const offline = async (context: BrowserContext, work: () => Promise<void>) => {
  await context.setOffline(true);
  await work();
  await context.setOffline(false);
};

test('a scout comes from the link to a first check on the server in five taps, and works on without signal', async ({
  page,
  context,
  playwright,
}) => {
  const { tap, taps } = thumb();
  await join(page, await invited(playwright as never, 'scout'), 'Tom Marsh');
  await tap(page.getByRole('button', { name: 'Join' }));
  await expect(page).toHaveURL(/\/round/);
  await tap(page.getByRole('button', { name: 'Start the round' }));
  await tap(page.getByRole('button', { name: /^Next:/ }));
  await tap(page.getByRole('button', { name: '7', exact: true }));
  const trap = new URL(page.url()).searchParams.get('trap')!;
  await tap(page.getByRole('button', { name: /^Save/ }));
  expect(taps.count).toBe(5);
  const mine = async () =>
    (
      (await (await page.request.get(`${server.url}/api/records/checks`)).json()) as Stored<{
        trapId: string;
        targetCount: number;
      }>[]
    )
      .map(({ value }) => value)
      .filter(({ trapId, targetCount }) => trapId === trap && targetCount === 7).length;
  await expect.poll(mine).toBeGreaterThan(0);

  await page.goto(`${server.url}/more`);
  await expect(page.getByText('All that you wrote on this phone has arrived.')).toBeVisible();
  await untilKept(page, '/api/week', '/api/traps', '/api/program');
  await offline(context, async () => {
    await page.goto(`${server.url}/start`);
    await expect(page).toHaveURL(/\/round/);
    await expect(page.getByRole('button', { name: /^Next:/ })).toBeVisible();
    await tap(place(page, 'Fields'));
    await expect(page.locator('.traps tbody tr, .trap-card').first()).toBeVisible();
    await expect(noSignal(page)).toBeVisible();
    await tap(place(page, 'Scout'));
    await expect(page.locator('main h1')).toBeVisible();
    await tap(place(page, 'More'));
    await expect(page.getByText('Tom Marsh')).toBeVisible();
    await expect(bar(page).getByRole('link')).toHaveText(['Round', 'Scout', 'Fields', 'More']);
  });
});

test('a grower reads what is most urgent in the first line, and writes what was done there without signal', async ({
  page,
  context,
  playwright,
}) => {
  const { tap, taps } = thumb();
  await join(page, await invited(playwright as never, 'grower', [FARM]), 'Lena Hollin');
  await tap(page.getByRole('button', { name: 'Join' }));
  await expect(page.locator('.own-list > li').first()).toBeVisible();
  const own = await (await page.request.get(`${server.url}/api/own-fields`)).json();
  const [first] = own.acting;
  expect(first.lead.verb).toBe('decide');
  const line = page.locator('.own-list > li').first();
  await expect(line).toContainText(first.name);
  await expect(line).toContainText(/Decide .*(by|late)/);
  await expect(line).toContainText('with a licensed adviser');
  expect(taps.count).toBe(1);
  // What is not theirs, and figures that say nothing, are not on the page.
  for (const { farm } of own.acting) expect(farm).toBe(FARM);
  await expect(page.locator('main')).not.toContainText(/\b0 (traps|fields|decisions)/);
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
  const field = `/api/fields/${first.fieldId}`;
  await untilKept(page, '/api/own-fields', '/api/traps', '/api/records/stages', '/api/records/fields', field);

  await offline(context, async () => {
    await page.goto(`${server.url}/start`);
    await expect(page.locator('.own-list > li').first()).toContainText(first.name);
    await expect(noSignal(page)).toBeVisible();
    await tap(page.locator('.own-list > li a').first());
    await expect(page.getByRole('heading', { level: 1, name: first.name })).toBeVisible();
    await expect(noSignal(page)).toBeVisible();
    await tap(place(page, 'Map'));
    await expect(page.getByRole('heading', { level: 1, name: 'Map' })).toBeVisible();
    await tap(place(page, 'Record'));
    await tap(page.getByRole('button', { name: /^A stage of the crop/ }));
    await tap(
      page.locator('dialog.panel .chips label, dialog.panel [data-name="stage"] label').filter({ hasText: 'silk' }).first(),
    );
    await tap(page.getByRole('button', { name: 'Save' }));
    await expect(place(page, /^Record/)).toContainText('1');
    await expect(place(page, /^Record ?, 1 record not sent yet$/)).toBeVisible();
    expect(await accessibilityProblems(page)).toEqual([]);
  });
  await expect(place(page, 'Record')).toHaveText('Record');
  const stages = (await (await page.request.get(`${server.url}/api/records/stages`)).json()) as Stored<{
    fieldId: string;
    observedOn: string;
    stage: string;
  }>[];
  expect(stages.map(({ value }) => value)).toContainEqual({ fieldId: first.fieldId, observedOn: own.on, stage: 'silk' });
});

test('a coordinator sees the week, the questions and the fields that are due without signal, and from when they are', async ({
  page,
  context,
}) => {
  const { tap, taps } = thumb();
  await server.signIn(page.request, 'Ida Brook');
  await page.goto(`${server.url}/start`);
  await expect(page.getByRole('heading', { level: 1, name: 'This week' })).toBeVisible();
  await expect(bar(page).locator('[aria-current]')).toHaveText('Week');
  const week = await (await page.request.get(`${server.url}/api/week`)).json();
  const due = week.due.decisions[0];
  await untilKept(page, '/api/week', '/api/questions', '/api/conflicts', `/api/fields/${due.fieldId}`);
  await expect.poll(() => keptOnPhone(page, 'view')).toBeDefined();
  await expect(noSignal(page)).toHaveCount(0);
  await offline(context, async () => {
    await page.goto(`${server.url}/start`);
    await expect(page.locator('.cell').first()).toBeVisible();
    await expect(noSignal(page)).toBeVisible();
    await tap(place(page, /^Questions/));
    await expect(page.getByRole('heading', { level: 1, name: 'Questions' })).toBeVisible();
    await expect(noSignal(page)).toBeVisible();
    await tap(place(page, 'Week'));
    await tap(page.getByRole('link', { name: due.name }).first());
    await expect(page.getByRole('heading', { level: 1, name: due.name })).toBeVisible();
    await expect(noSignal(page)).toBeVisible();
    await tap(place(page, 'Round'));
    await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
    expect(taps.count).toBe(4);

    // Of what is not kept it is said so, with what is: never that somebody should start a machine.
    await page.goto(`${server.url}/season`);
    await expect(page.getByRole('heading', { name: 'The server does not answer' })).toBeVisible();
    const holds = page.locator('.kept-pages');
    await expect(holds).toContainText(/This week, read .*\d/);
    await expect(page.locator('main')).not.toContainText(/[Ss]tart it|on its machine/);
    await tap(holds.getByRole('link', { name: 'This week' }));
    await expect(page.locator('.cell').first()).toBeVisible();
  });
  // With signal again the page says nothing of it.
  await page.reload();
  await expect(page.locator('.cell').first()).toBeVisible();
  await expect(noSignal(page)).toHaveCount(0);
});

test('who is signed out is told so, with signal and without what was kept for them', async ({ page, context }) => {
  await server.signIn(page.request, 'Ida Brook');
  await page.goto(server.url);
  await untilKept(page, '/api/week');
  await page.reload();
  await page.goto(`${server.url}/more`);
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Sign in' })).toBeVisible();
  await expect(bar(page)).toHaveCount(0);
  expect(await page.evaluate(() => caches.has('duskwatch-answers'))).toBe(false);
  await offline(context, async () => {
    await page.goto(server.url);
    await expect(page.getByText('Ida Brook')).toHaveCount(0);
    await expect(page.locator('.cell')).toHaveCount(0);
    await expect(page.getByRole('heading', { name: 'The server does not answer' })).toBeVisible();
  });
});
