/** Walking a round in the browser, and what the server says of it. */
import { type APIRequestContext, expect, type Page } from '@playwright/test';
import type { RoundView } from '../packages/core/src/index.ts';

export interface Stored<T> {
  readonly recordId: string;
  readonly revisionId: string;
  readonly value: T;
}

export const roundOf = async (request: APIRequestContext): Promise<RoundView> => (await request.get('/api/round')).json();
export const records = async <T>(request: APIRequestContext, kind: string): Promise<Stored<T>[]> =>
  (await request.get(`/api/records/${kind}`)).json();

export const save = (page: Page) => page.getByRole('button', { name: /^Save/ });
export const next = (page: Page) => page.getByRole('button', { name: /^Next:/ });
export const allSent = (page: Page) => expect(page.getByRole('button', { name: /All sent$/ })).toBeVisible();

/** Opens the round with signal until the phone could do without, and starts it. */
export async function startRound(page: Page, { all = false } = {}) {
  await page.goto('/round');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  if (all) await page.getByRole('checkbox', { name: /All stations/ }).check();
  await page.getByRole('button', { name: 'Start the round' }).click();
  await expect(next(page)).toBeVisible();
}

/** Opens the next trap, past the warning of a field that is not to be entered. */
export async function openNext(page: Page) {
  await next(page).click();
  await passWarning(page);
}

export async function passWarning(page: Page) {
  const outside = page.getByRole('button', { name: /stands outside/ });
  await expect(save(page).or(outside)).toBeVisible();
  if (await outside.isVisible()) await outside.click();
}

export const trapNow = (page: Page) => new URL(page.url()).searchParams.get('trap');

export async function count(page: Page, digits: string) {
  for (const digit of digits) await page.getByRole('button', { name: digit, exact: true }).click();
}

/** Says that a lure which is due is not changed; true when one was. */
export async function leaveLure(page: Page): Promise<boolean> {
  const left = page.getByRole('button', { name: 'Not today' });
  if (!(await left.isVisible()) || (await left.getAttribute('aria-pressed')) === 'true') return false;
  if ((await page.getByRole('button', { name: 'Changed', exact: true }).getAttribute('aria-pressed')) === 'true') return false;
  await left.click();
  return true;
}

/** Saves, and waits until another screen stands there. Returns the trap that was saved. */
export async function saveAndGo(page: Page): Promise<string> {
  const trap = trapNow(page)!;
  await leaveLure(page);
  await save(page).click();
  // A count far above what was expected is asked about; here it is what was meant.
  const yes = page.getByRole('button', { name: /^Yes, \d/ });
  await expect.poll(async () => (await yes.isVisible()) || trapNow(page) !== trap).toBe(true);
  if (await yes.isVisible()) await yes.click();
  await expect(page).not.toHaveURL(new RegExp(`trap=${trap}(&|$)`));
  return trap;
}

/** Says what a record now is, as somebody at a desk would. Returns the revision's id. */
export async function say(
  request: APIRequestContext,
  earlier: Stored<unknown> | null,
  value: object,
  kind = 'traps',
): Promise<string> {
  const hex = (length: number) => Array.from({ length }, () => Math.floor(Math.random() * 16).toString(16)).join('');
  const time = Date.now().toString(16).padStart(12, '0');
  const revisionId = `${time.slice(0, 8)}-${time.slice(8)}-7${hex(3)}-8${hex(3)}-${hex(12)}`;
  const revision = {
    revisionId,
    recordId: earlier?.recordId ?? revisionId,
    kind,
    baseRevisionId: earlier?.revisionId ?? null,
    at: new Date().toISOString(),
    value,
  };
  const answer = await (await request.post('/api/revisions', { data: { revisions: [revision] } })).json();
  expect(answer.added).toEqual([revisionId]);
  return revisionId;
}

/** What the phone's own pages keep under a name; undefined while they keep nothing of it. */
export const keptOnPhone = <T>(page: Page, fact: 'view' | 'scouting' | 'drafts'): Promise<T | undefined> =>
  page.evaluate(async (name) => {
    // Opened before the app has made it, it would be made empty.
    if (!(await indexedDB.databases()).some((each) => each.name === 'duskwatch-round')) return undefined;
    return new Promise<T>((resolve) => {
      const opening = indexedDB.open('duskwatch-round');
      opening.onsuccess = () => {
        const read = opening.result.transaction('facts').objectStore('facts').get(name);
        read.onsuccess = () => {
          opening.result.close();
          resolve(read.result);
        };
      };
    });
  }, fact);
