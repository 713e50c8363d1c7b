import type { Page } from '@playwright/test';
import { type OwnServer, startServer, startVersions } from './own-server.ts';
import { test as base, expect } from './page.ts';
import { count, next, openNext, saveAndGo } from './round.ts';

interface Served {
  readonly server: OwnServer;
  readonly versions: Awaited<ReturnType<typeof startVersions>>;
}

/** The program in front of which versions of the app come and go. */
const test = base.extend<object, Served>({
  server: [
    async ({ playwright: _ }, use) => {
      const server = await startServer();
      await use(server);
      await server.stop();
    },
    { scope: 'worker' },
  ],
  versions: [
    async ({ server }, use) => {
      const versions = await startVersions(server.url);
      await use(versions);
      await versions.stop();
    },
    { scope: 'worker' },
  ],
});
test.use({ mayComplain: true });
test.describe.configure({ mode: 'serial' });

/** Opens the round, and again once a version is kept: only then does that version give out the page. */
async function install(page: Page, url: string) {
  await page.goto(`${url}/round`);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.reload();
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
  expect(await page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
}

/** The version whose worker gives out this page, as the comment at its end says. */
const waiting = (page: Page) =>
  page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting?.state ?? 'none');

/** Marks this page; a page that was loaded anew has lost the mark. */
const mark = (page: Page) => page.evaluate(() => void Object.assign(window, { marked: true }));
const isMarked = (page: Page) => page.evaluate(() => 'marked' in window);

test('outside a round one visit is enough: the new version takes over and the page comes anew by itself', async ({
  page,
  versions,
}) => {
  await install(page, versions.url);
  versions.release('2');
  await page.reload();
  await mark(page);
  await expect.poll(() => isMarked(page).catch(() => true)).toBe(false);
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
  expect(await waiting(page)).toBe('none');
});

test('an app that was left open takes the new version when it is taken up again', async ({ page, versions }) => {
  await install(page, versions.url);
  await mark(page);
  versions.release('3');
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect.poll(() => isMarked(page).catch(() => true)).toBe(false);
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
});

test('during a round it waits, also for a second page that stands before the start; and takes over at its end', async ({
  page,
  context,
  versions,
}) => {
  await install(page, versions.url);
  const second = await context.newPage();
  await second.goto(`${versions.url}/round`);
  await expect(second.getByRole('button', { name: 'Start the round' })).toBeVisible();
  await page.getByRole('button', { name: 'Start the round' }).click();
  await expect(next(page)).toBeVisible();
  versions.release('4');
  await page.evaluate(async () => void (await (await navigator.serviceWorker.getRegistration())!.update()));
  await expect.poll(() => waiting(page)).toBe('installed');
  await mark(page);
  await openNext(page);
  await count(page, '1');
  await saveAndGo(page);
  await second.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  // Longer than a waiting version is first asked to take over.
  await page.waitForTimeout(3_000);
  expect(await waiting(page)).toBe('installed');
  expect(await isMarked(page)).toBe(true);
  await second.close();

  await page.getByRole('button', { name: /all stops$/ }).click();
  await page.getByRole('button', { name: 'End the round' }).click();
  await page.getByRole('button', { name: /^End it with / }).click();
  await expect.poll(() => isMarked(page).catch(() => true)).toBe(false);
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
  expect(await waiting(page)).toBe('none');
});

test.describe('where the browser keeps no pages', () => {
  test.use({ serviceWorkers: 'block' });

  test('a page of an older version that asks for a part which is gone comes anew once, and else says what to do', async ({
    page,
    versions,
  }) => {
    await page.goto(`${versions.url}/more`);
    const traps = page
      .getByRole('navigation', { name: 'Further pages' })
      .getByRole('link', { name: 'Fields & traps', exact: true });
    await expect(traps).toBeVisible();
    await mark(page);
    versions.release('5', ['StationsPage']);
    await traps.click();
    await expect(page.getByRole('heading', { name: 'A part of this page did not come' })).toBeVisible();
    expect(await isMarked(page)).toBe(false);
    versions.release('6');
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect(page.locator('.traps tbody tr, .trap-card').first()).toBeVisible();
  });
});
