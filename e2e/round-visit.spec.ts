import type { APIRequestContext, Page } from '@playwright/test';
import type { CheckRecord, LureRecord, ProgramSettings, RoundTrap, SkipRecord, StageRecord } from '../packages/core/src/index.ts';
import { freshTest as test } from './own-test.ts';
import { expect, expectNoSidewaysScroll } from './page.ts';
import {
  allSent,
  count,
  next,
  openNext,
  passWarning,
  records,
  roundOf,
  type Stored,
  save,
  saveAndGo,
  say,
  startRound,
  trapNow,
} from './round.ts';

/** What the page of a trap asks, and what it never loses; each on a program of its own. */
test.use({ mayComplain: true });

/** Opens a trap of the round under way. */
async function openTrap(page: Page, request: APIRequestContext, wanted: (trap: RoundTrap) => boolean) {
  const { stops } = await roundOf(request);
  const found = stops
    .filter((stop) => stop.due && stop.fields.length > 0)
    .flatMap((stop) => stop.traps.filter(wanted).map((trap) => ({ stop, trap })))[0]!;
  await page.goto(`/round?station=${encodeURIComponent(found.stop.station)}&trap=${encodeURIComponent(found.trap.trapId)}`);
  await passWarning(page);
  return found;
}
const plain = ({ due, lure, lastVisit, told }: RoundTrap) =>
  due && !lure?.change && lastVisit?.condition === 'fit' && lastVisit.emptied && told.length > 1;
const countsOf = async (request: APIRequestContext, trap: string, on: string) =>
  (await records<CheckRecord>(request, 'checks'))
    .filter(({ value }) => value.trapId === trap && value.checkedOn === on)
    .map(({ value }) => value.targetCount);

test('a lure that is due asks above the pad, and saving waits for one of two answers', async ({ page, request }) => {
  const { on } = await roundOf(request);
  await startRound(page);
  const { trap } = await openTrap(page, request, (each) => each.lure?.change === true);
  await count(page, '3');
  await save(page).click();
  await expect(page.getByRole('alert')).toHaveText('Lure: changed, or not today?');
  expect(trapNow(page)).toBe(trap.trapId);
  await page.getByRole('button', { name: 'Changed', exact: true }).click();
  await expect(page.getByText('Fresh gloves; take the old lure along.')).toBeVisible();
  await saveAndGo(page);
  await allSent(page);
  const lures = (await records<LureRecord>(request, 'lures')).map(({ value }) => value);
  expect(lures).toContainEqual({ trapId: trap.trapId, placedOn: on, lifeDays: trap.lure!.lifeDays });
});

test('an unlikely count is asked about while the moths are in hand, and either answer is one tap', async ({ page, request }) => {
  const { on } = await roundOf(request);
  await startRound(page);
  const { trap } = await openTrap(page, request, plain);
  const last = trap.lastVisit!.count!;
  await expect(page.getByText(new RegExp(`^last ${last} on `))).toBeVisible();
  await count(page, '4120');
  await save(page).click();
  const question = page.getByRole('dialog');
  await expect(question.getByRole('heading')).toHaveText(`Last time ${last}. Really 4,120?`);
  await expect(question).toContainText(`The most in this trap so far is ${trap.most}`);
  await question.getByRole('button', { name: 'No, correct it' }).click();
  await expect(page.getByRole('textbox').first()).toHaveValue('4120');
  expect(await countsOf(request, trap.trapId, on)).not.toContain(4120);
  await save(page).click();
  await question.getByRole('button', { name: 'Yes, 4,120' }).click();
  await expect(page).not.toHaveURL(new RegExp(`trap=${trap.trapId}(&|$)`));
  await allSent(page);
  expect(await countsOf(request, trap.trapId, on)).toContain(4120);
});

test('ending a round tells of a count that was typed and not saved, and saves it', async ({ page, request }) => {
  const { on } = await roundOf(request);
  await startRound(page);
  const { trap } = await openTrap(page, request, plain);
  await count(page, '2');
  await page.getByRole('button', { name: /all stops$/ }).click();
  await expect(page.getByText('2 typed, not saved')).toBeVisible();
  await page.getByRole('button', { name: 'End the round' }).click();
  await expect(page.getByRole('heading', { name: '1 visit is typed and not saved' })).toBeVisible();
  await expect(page.getByText(trap.trapId)).toBeVisible();
  await page.getByRole('button', { name: 'Save it and end' }).click();
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
  await allSent(page);
  expect(await countsOf(request, trap.trapId, on)).toContain(2);
});

test('a round ended without a typed count keeps it in its box for the day', async ({ page, request }) => {
  await startRound(page);
  const { trap } = await openTrap(page, request, plain);
  await count(page, '2');
  await page.getByRole('button', { name: /all stops$/ }).click();
  await page.getByRole('button', { name: 'End the round' }).click();
  await page.getByRole('button', { name: 'End without them' }).click();
  await page.getByRole('button', { name: 'Start the round' }).click();
  await openTrap(page, request, ({ trapId }) => trapId === trap.trapId);
  await expect(page.getByRole('textbox').first()).toHaveValue('2');
});

test('undo takes back all that one save wrote: the count, the lure and the stage', async ({ page, context, request }) => {
  const { on } = await roundOf(request);
  await startRound(page);
  const { stop, trap } = await openTrap(page, request, plain);
  await context.setOffline(true);
  await count(page, '2');
  await page.getByRole('button', { name: /^Lure / }).click();
  await page.getByRole('button', { name: 'Lure changed now' }).click();
  await page.getByRole('button', { name: 'Done' }).click();
  await page.getByRole('button', { name: /^Stage/ }).click();
  await page.getByRole('group', { name: stop.fields[0]!.name }).getByRole('button').last().click();
  await page.getByRole('button', { name: 'Done' }).click();
  await saveAndGo(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await passWarning(page);
  await expect(page.getByRole('textbox').first()).toHaveValue('2');
  await context.setOffline(false);
  await allSent(page);
  expect(await countsOf(request, trap.trapId, on)).not.toContain(2);
  const lures = (await records<LureRecord>(request, 'lures')).map(({ value }) => value);
  expect(lures.filter(({ trapId, placedOn }) => trapId === trap.trapId && placedOn === on)).toEqual([]);
  const stages = (await records<StageRecord>(request, 'stages')).map(({ value }) => value);
  const last = stop.fields[0]!.stages.at(-1)!.id;
  expect(
    stages.filter((each) => each.fieldId === stop.fields[0]!.fieldId && each.observedOn === on && each.stage === last),
  ).toEqual([]);
});

test('a skipped station is marked as such, its reason is sent, and the skip can be taken back', async ({ page, request }) => {
  const { on } = await roundOf(request);
  await startRound(page);
  const { stop, trap } = await openTrap(page, request, plain);
  await page.getByRole('button', { name: 'Skip', exact: true }).click();
  await page.getByRole('button', { name: 'under water' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'skipped: under water' })).toBeVisible();
  await page.goto('/round');
  const row = page.locator('.stops > li').filter({ hasText: stop.station });
  await expect(row).toContainText('skipped: under water');
  await allSent(page);
  const skips = async () =>
    (await records<SkipRecord>(request, 'skips')).filter(({ value }) => value.trapId === trap.trapId && value.skippedOn === on);
  expect((await skips()).map(({ value }) => value.reason)).toEqual(['water']);
  await openTrap(page, request, ({ trapId }) => trapId === trap.trapId);
  await page.getByRole('button', { name: 'Take the skip back' }).click();
  await expect(page.getByRole('button', { name: 'Take the skip back' })).toHaveCount(0);
  await allSent(page);
  expect(await skips()).toEqual([]);
});

test('a phone whose clock is a month ahead writes the day that the server has, and says so', async ({
  page,
  context,
  request,
}) => {
  const [settings] = (await records<ProgramSettings>(request, 'settings')) as [Stored<ProgramSettings>];
  await say(request, settings, { ...settings.value, pinnedOn: null }, 'settings');
  const { on } = await roundOf(request);
  await page.clock.setFixedTime(new Date(Date.now() + 31 * 86_400_000));
  await startRound(page, { all: true });
  await context.setOffline(true);
  await openNext(page);
  await expect(page.getByText('This phone’s clock is 31 days ahead.')).toBeVisible();
  await count(page, '2');
  const trap = await saveAndGo(page);
  await context.setOffline(false);
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await allSent(page);
  const days = (await records<CheckRecord>(request, 'checks')).filter(({ value }) => value.trapId === trap);
  expect(
    days
      .map(({ value }) => value.checkedOn)
      .sort()
      .at(-1),
  ).toBe(on);
});

test('where the phone is, is asked for by a tap alone; the next stop opens in the phone’s own map', async ({
  page,
  context,
  request,
}) => {
  await page.addInitScript(() => {
    Object.assign(window, { asked: 0 });
    const ask = navigator.geolocation.getCurrentPosition.bind(navigator.geolocation);
    navigator.geolocation.getCurrentPosition = (...args) => {
      (window as unknown as { asked: number }).asked++;
      ask(...args);
    };
  });
  const { stops } = await roundOf(request);
  await context.grantPermissions(['geolocation']);
  await startRound(page);
  const station = (await next(page).textContent())!.replace('Next: ', '');
  const stop = stops.find((each) => each.station === station)!;
  await context.setGeolocation({ latitude: stop.latitude! - 0.1, longitude: stop.longitude! });
  const asked = () => page.evaluate(() => (window as unknown as { asked: number }).asked);
  expect(await asked()).toBe(0);
  await page.getByRole('button', { name: 'From here' }).click();
  // 0.1° of latitude on a sphere of 6371.0088 km is 11.1 km, or 6.9 mi.
  await expect(page.getByText('6.9 mi north of you')).toBeVisible();
  await expect(page.getByText('Never look while driving.')).toBeVisible();
  expect(await asked()).toBe(1);
  const map = page.getByRole('link', { name: `${station} in this phone’s map` });
  expect(await map.getAttribute('href')).toContain(`geo:${stop.latitude},${stop.longitude}?q=`);
});

test('signed out is not without signal', async ({ page }) => {
  await startRound(page);
  await page.route('**/api/session', (route) =>
    route.fulfill({ json: { mode: 'accounts', person: null, needsFirstPerson: false } }),
  );
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await expect(page.getByRole('button', { name: /Signed out/ })).toBeVisible();
  await page.unroute('**/api/session');
  await page.route('**/api/session', (route) => route.abort());
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await expect(page.getByRole('button', { name: /No signal/ })).toBeVisible();
});

test('laid on its side, the boxes stand beside the pad, and all of the pad is in sight', async ({ page }) => {
  await page.setViewportSize({ width: 844, height: 390 });
  await startRound(page);
  await openNext(page);
  const box = (await page.getByRole('textbox').first().boundingBox())!;
  const pad = (await page.getByRole('group', { name: 'Count pad' }).boundingBox())!;
  expect(box.x + box.width).toBeLessThanOrEqual(pad.x);
  expect(pad.y + pad.height).toBeLessThanOrEqual(390);
  await expect(save(page)).toBeInViewport({ ratio: 1 });
  await expectNoSidewaysScroll(page);
});

for (const [name, width, text] of [
  ['195 px wide', 195, '100%'],
  ['with its text twice as large', 390, '200%'],
] as const) {
  test(`a screen ${name} still takes a count, a reason and a skip`, async ({ page }) => {
    await page.setViewportSize({ width, height: 844 });
    await page.addInitScript((size) => {
      addEventListener('DOMContentLoaded', () => document.documentElement.style.setProperty('font-size', size));
    }, text);
    await startRound(page);
    await expectNoSidewaysScroll(page);
    await openNext(page);
    await expectNoSidewaysScroll(page);
    await count(page, '2');
    await page.getByRole('button', { name: 'Unfit' }).click();
    await page.getByRole('button', { name: 'Down', exact: true }).click();
    await expectNoSidewaysScroll(page);
    await page.getByRole('button', { name: 'Fit', exact: true }).click();
    await page.getByRole('button', { name: 'Skip', exact: true }).click();
    await expectNoSidewaysScroll(page);
    await page.getByRole('button', { name: 'Close' }).click();
    await saveAndGo(page);
  });
}

test('what was just done stands above the foot, off the head of the page', async ({ page }) => {
  await startRound(page);
  await openNext(page);
  await count(page, '2');
  await saveAndGo(page);
  const toast = (await page.locator('.toast p').boundingBox())!;
  const head = (await page.locator('.round-head').boundingBox())!;
  const foot = (await page.locator('.round-foot').boundingBox())!;
  expect(toast.y).toBeGreaterThan(head.y + head.height);
  expect(toast.y + toast.height).toBeLessThanOrEqual(foot.y + 1);
});
