import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from '@playwright/test';
import type { CheckRecord, TrapRecord } from '../packages/core/src/index.ts';
import { PASSWORD, startWithAccounts } from './accounts.ts';
import { freshTest as test } from './own-test.ts';
import { expect } from './page.ts';
import {
  allSent,
  count,
  keptOnPhone,
  next,
  openNext,
  passWarning,
  records,
  roundOf,
  saveAndGo,
  say,
  startRound,
  trapNow,
} from './round.ts';

interface Drafts {
  readonly byTrap: Readonly<Record<string, { readonly draft: { readonly target: string } }>>;
}

/** What goes wrong on the way, each on a program of its own. */
test.use({ mayComplain: true });

const countBox = (page: Page) => page.getByRole('textbox').first();

test('a browser that is killed in the middle of a count comes back with it, and with all that was saved', async ({
  server,
  request,
  launchOptions,
}) => {
  const profile = mkdtempSync(join(tmpdir(), 'duskwatch-e2e-profile-'));
  const start = () =>
    chromium.launchPersistentContext(profile, { ...launchOptions, baseURL: server.url, viewport: { width: 390, height: 844 } });
  let context = await start();
  try {
    let page = context.pages()[0]!;
    await startRound(page);
    await page.reload();
    await expect(next(page)).toBeVisible();
    await context.setOffline(true);
    await openNext(page);
    await count(page, '12');
    const saved = await saveAndGo(page);
    await passWarning(page);
    await count(page, '37');
    const half = trapNow(page)!;
    await expect(countBox(page)).toHaveValue('37');
    // A digit is on disk some milliseconds after it is in the box.
    await expect.poll(async () => (await keptOnPhone<Drafts>(page, 'drafts'))?.byTrap[half]?.draft.target).toBe('37');
    await killed(context);

    context = await start();
    await context.setOffline(true);
    page = context.pages()[0]!;
    await page.goto('/round');
    await expect(page.getByRole('button', { name: /1 kept here, not sent$/ })).toBeVisible();
    await openNext(page);
    expect(trapNow(page)).toBe(half);
    await expect(countBox(page)).toHaveValue('37');
    await count(page, '5');
    await saveAndGo(page);
    await context.setOffline(false);
    await allSent(page);
    const { on } = await roundOf(request);
    const checks = (await records<CheckRecord>(request, 'checks')).filter(({ value }) => value.checkedOn === on);
    const counts = (trap: string) => checks.filter(({ value }) => value.trapId === trap).map(({ value }) => value.targetCount);
    expect(counts(saved)).toContain(12);
    expect(counts(half)).toContain(375);
  } finally {
    await context.close().catch(() => undefined);
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
  }
});

/** Ends the browser as a dead battery does: without a word to it. */
async function killed(context: BrowserContext): Promise<void> {
  const session = await context.browser()!.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const closed = new Promise((resolve) => context.once('close', resolve));
  process.kill(processInfo.find(({ type }) => type === 'browser')!.id, 'SIGKILL');
  await closed;
}

test('the round begins at the station nearest to the phone, or wherever it is tapped when the phone may not say', async ({
  page,
  context,
  request,
}) => {
  const view = await roundOf(request);
  const due = view.stops.filter((stop) => stop.due && stop.latitude !== null);
  const here = due.at(-1)!;
  const first = page.locator('.stops > li').first();
  await page.goto('/round');
  await page.getByRole('button', { name: 'Nearest to me' }).click();
  await expect(page.getByText(/does not say where it is/)).toBeVisible();
  await page.getByRole('button', { name: new RegExp(`Start at ${due[1]!.station}\\b`) }).click();
  await expect(first).toContainText(due[1]!.station);

  await context.grantPermissions(['geolocation']);
  // A few metres beside the station.
  await context.setGeolocation({ latitude: here.latitude! + 0.0002, longitude: here.longitude! });
  await page.getByRole('button', { name: 'Nearest to me' }).click();
  await expect(first).toContainText(here.station);
  await page.getByRole('button', { name: 'Start the round' }).click();
  await expect(next(page)).toContainText(here.station);
});

test('a check that the server refuses can be sent again when the reason is gone, or given up', async ({
  page,
  context,
  request,
}) => {
  const view = await roundOf(request);
  await startRound(page);
  await context.setOffline(true);
  const traps: string[] = [];
  await openNext(page);
  for (const digits of ['12', '7']) {
    await count(page, digits);
    traps.push(await saveAndGo(page));
    await passWarning(page);
  }
  const before = new Date(Date.parse(view.on) - 86_400_000).toISOString().slice(0, 10);
  const hung = await Promise.all(
    traps.map(async (trap) => (await records<TrapRecord>(request, 'traps')).find(({ value }) => value.trapId === trap)!),
  );
  const taken: string[] = [];
  for (const trap of hung) taken.push(await say(request, trap, { ...trap.value, takenDownOn: before }));
  await context.setOffline(false);
  await page.getByRole('button', { name: /2 refused$/ }).click();

  await say(request, { ...hung[0]!, revisionId: taken[0]! }, hung[0]!.value);
  const item = (trap: string) => page.getByRole('listitem').filter({ hasText: trap });
  await item(traps[0]!).getByRole('button', { name: 'Send again' }).click();
  await expect(item(traps[0]!)).toHaveCount(0);
  await item(traps[1]!).getByRole('button', { name: 'Give it up' }).click();
  await allSent(page);
  const counts = (await records<CheckRecord>(request, 'checks'))
    .filter(({ value }) => value.checkedOn === view.on && traps.includes(value.trapId))
    .map(({ value }) => [value.trapId, value.targetCount]);
  expect(counts).toContainEqual([traps[0], 12]);
  expect(counts).not.toContainEqual([traps[1], 7]);
});

test('a phone that was a week without signal says how old its round is, and takes checks of that day', async ({
  page,
  context,
  request,
}) => {
  await page.clock.install({ time: new Date() });
  await page.goto('/round');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.reload();
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
  await context.setOffline(true);
  await page.clock.setFixedTime(new Date(Date.now() + 7 * 86_400_000));
  await page.reload();
  await expect(page.getByText(/7 days old/)).toBeVisible();
  await page.getByRole('button', { name: 'Start the round' }).click();
  await openNext(page);
  await count(page, '4');
  const trap = await saveAndGo(page);
  await context.setOffline(false);
  await page.clock.setFixedTime(new Date());
  await page.reload();
  await allSent(page);
  const checks = await records<CheckRecord>(request, 'checks');
  expect(checks.filter(({ value }) => value.trapId === trap).map(({ value }) => value.targetCount)).toContain(4);
});

test('of two people with one phone the second neither sees nor sends what the first has not sent', async ({
  page,
  context,
  playwright,
}) => {
  const server = await startWithAccounts();
  try {
    const coordinator = await playwright.request.newContext();
    await server.first(coordinator, 'Ida Brook', server.code());
    for (const name of ['Ann Alder', 'Ben Birch']) {
      const link = await server.invite(coordinator, 'scout');
      await server.join(await playwright.request.newContext(), link, name);
    }
    const signIn = async (name: string) => {
      await page.goto(`${server.url}/sign-in`);
      await page.getByLabel('Name').fill(name);
      await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
      await page.getByRole('button', { name: 'Sign in' }).click();
      // A scout's phone begins with the round.
      await expect(page).toHaveURL(/\/round$/);
    };
    const unsent = page.getByRole('button', { name: /kept here, not sent$/ });
    const written = async () =>
      (await (await coordinator.get(`${server.url}/api/records/checks`)).json()).filter(
        ({ value }: { value: CheckRecord }) => value.targetCount === 431,
      );

    await signIn('Ann Alder');
    await page.goto(`${server.url}/round`);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.getByRole('button', { name: 'Start the round' }).click();
    // Her checks do not get through, though all else does.
    await page.route('**/api/revisions', (route) => route.abort());
    await openNext(page);
    await count(page, '431');
    await saveAndGo(page);
    await expect(unsent).toBeVisible();
    await page.evaluate(() => fetch('/api/session', { method: 'DELETE' }).then(() => undefined));

    await signIn('Ben Birch');
    await page.unroute('**/api/revisions');
    await page.goto(`${server.url}/round`);
    await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
    await expect(unsent).toHaveCount(0);
    await page.getByRole('button', { name: /All sent$/ }).click();
    await expect(page.getByText(/1 record of another person/)).toBeVisible();
    await expect(page.getByText('431')).toHaveCount(0);
    await page.waitForTimeout(2_000);
    expect(await written()).toEqual([]);

    await page.evaluate(() => fetch('/api/session', { method: 'DELETE' }).then(() => undefined));
    await signIn('Ann Alder');
    await page.goto(`${server.url}/round`);
    // Until the server says who she is, the phone is still that of the one before.
    await expect.poll(async () => (await written()).length).toBe(1);
    await allSent(page);
    const [{ value }] = await written();
    const key = encodeURIComponent(`${value.trapId}|${value.checkedOn}|${value.visit}`);
    const history = await (await coordinator.get(`${server.url}/api/records/checks/${key}/history`)).json();
    expect(JSON.stringify(history)).toContain('Ann Alder');
    expect(JSON.stringify(history)).not.toContain('Ben Birch');
  } finally {
    await server.stop();
    await context.close();
  }
});
