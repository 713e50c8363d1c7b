import type { APIRequestContext, Page } from '@playwright/test';
import type { CheckRecord, SkipRecord, TrapRecord } from '../packages/core/src/index.ts';
import { freshTest as test } from './own-test.ts';
import { expect, expectNoSidewaysScroll, passesInBothThemes } from './page.ts';
import {
  allSent,
  count,
  leaveLure,
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

/** The round writes, so each test has a program of its own; and it works without a network, which a console complains of. */
test.use({ mayComplain: true });

interface Changes {
  readonly revisions: readonly { readonly kind: string; readonly value: CheckRecord | null }[];
  readonly last: number;
  readonly more: boolean;
}

const changes = async (request: APIRequestContext, since: number): Promise<Changes> =>
  (await request.get(`/api/changes?since=${since}`)).json();

async function lastChange(request: APIRequestContext): Promise<number> {
  let page: Changes = { revisions: [], last: 0, more: true };
  while (page.more) page = await changes(request, page.last);
  return page.last;
}

test('a whole round without signal, with a reload and a dead battery on the way, arrives once and in order', async ({
  page: first,
  context,
  request,
}) => {
  const view = await roundOf(request);
  const asked = view.stops
    .filter((stop) => stop.due)
    .flatMap((stop) => stop.traps.filter((trap) => trap.due || trap.lure?.change));
  const since = await lastChange(request);
  await startRound(first);
  await context.setOffline(true);

  let page = first;
  const saved: [string, number][] = [];
  let skipped = '';
  await openNext(page);
  for (let n = 0; trapNow(page); n++) {
    if (n === 2) {
      await page.reload();
      await passWarning(page);
    }
    if (n === 4) {
      await page.close();
      page = await context.newPage();
      await page.goto('/round');
      await openNext(page);
    }
    if (n === 5) {
      skipped = trapNow(page)!;
      await page.getByRole('button', { name: 'Skip', exact: true }).click();
      const one = page.getByRole('button', { name: /^Only / });
      if (await one.isVisible()) await one.click();
      await page.getByRole('button', { name: 'gate locked' }).click();
      await expect(page.getByRole('dialog')).toBeHidden();
    } else {
      await count(page, String(10 + n));
      saved.push([await saveAndGo(page), 10 + n]);
    }
    if (trapNow(page)) await passWarning(page);
  }
  await expect(page.getByRole('heading', { name: 'All stops seen to' })).toBeVisible();
  expect(saved.length).toBe(asked.length - 1);
  await expect(page.getByRole('button', { name: new RegExp(`${saved.length + 1} kept here, not sent$`) })).toBeVisible();
  expect((await changes(request, since)).revisions).toEqual([]);

  await context.setOffline(false);
  // Chromium tells of the signal only pages that it told of its loss; this one was opened after.
  await page.evaluate(() => dispatchEvent(new Event('online')));
  await allSent(page);
  const { revisions } = await changes(request, since);
  const checked = revisions.filter(({ kind }) => kind === 'checks');
  expect(checked.map(({ value }) => [value?.trapId, value?.targetCount])).toEqual(saved);
  const skips = (await records<SkipRecord>(request, 'skips')).filter(({ value }) => value.skippedOn === view.on);
  expect(skips.map(({ value }) => value)).toEqual([{ trapId: skipped, skippedOn: view.on, reason: 'locked', note: null }]);
  const checks = await records<CheckRecord>(request, 'checks');
  for (const [trapId, targetCount] of saved) {
    const ofTrap = checks.filter(({ value }) => value.trapId === trapId && value.checkedOn === view.on);
    expect(ofTrap.map(({ value }) => value.targetCount)).toContain(targetCount);
  }

  await page.getByRole('button', { name: 'End the round' }).click();
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
});

test('thirty traps take one tap each beside the digits', async ({ page, context }) => {
  await page.addInitScript(() => {
    Object.assign(window, { taps: 0 });
    const onClick = (event: Event) => {
      if ((event.target as Element).closest('button')) (window as unknown as { taps: number }).taps++;
    };
    addEventListener('click', onClick, { capture: true });
  });
  await startRound(page, { all: true });
  await context.setOffline(true);
  await openNext(page);
  const taps = () => page.evaluate(() => (window as unknown as { taps: number }).taps);
  const before = await taps();
  let asked = 0;
  for (let n = 0; n < 30; n++) {
    await count(page, '2');
    if (await leaveLure(page)) asked++;
    await saveAndGo(page);
    if (await page.getByRole('button', { name: /stands outside/ }).isVisible()) {
      asked++;
      await passWarning(page);
    }
  }
  expect((await taps()) - before - asked).toBe(30 * 2);
});

test('an empty trap is said with “none”; without a count nothing is saved', async ({ page, request }) => {
  await startRound(page);
  await openNext(page);
  const trap = trapNow(page);
  await save(page).click();
  await expect(page.getByRole('alert')).toHaveText('Enter the count, or tap “none”.');
  expect(trapNow(page)).toBe(trap);
  await page.getByRole('button', { name: 'None: write 0' }).click();
  await saveAndGo(page);
  await allSent(page);
  const { value } = (await records<CheckRecord>(request, 'checks')).filter((each) => each.value.trapId === trap).at(-1)!;
  expect(value).toMatchObject({ targetCount: 0, otherCount: null, condition: 'fit', emptied: true, note: null });
});

test('a fallen trap with a new lure, a stage, a note and a photo arrives as it was put in', async ({ page, request }) => {
  const view = await roundOf(request);
  await startRound(page);
  await openNext(page);
  const trap = trapNow(page)!;
  const stop = view.stops.find(({ traps }) => traps.some(({ trapId }) => trapId === trap))!;
  const field = stop.fields[0]!;
  await page.getByRole('button', { name: 'Unfit' }).click();
  await save(page).click();
  await expect(page.getByRole('alert')).toHaveText('Say what is wrong with it.');
  await page.getByRole('button', { name: 'Down', exact: true }).click();

  const done = page.getByRole('button', { name: 'Done' });
  await page
    .getByRole('button', { name: /^Lure \w/ })
    .first()
    .click();
  await expect(page.getByRole('button', { name: 'Lure changed now' })).toHaveAttribute('aria-pressed', 'false');
  await page.getByRole('button', { name: 'Lure changed now' }).click();
  await page.getByLabel('The new lure lasts, days').fill('21');
  await done.click();
  await page.getByRole('button', { name: /^Stage/ }).click();
  const group = page.getByRole('group', { name: field.name });
  await group.getByRole('button').last().click();
  await done.click();
  await page.getByRole('button', { name: /^Note/ }).click();
  await page.getByLabel('Note for this check').fill('Deer, by the tracks.');
  await done.click();
  await page.getByRole('button', { name: /^Photo/ }).click();
  await page
    .getByLabel('Take a photo')
    .setInputFiles({ name: 'trap.png', mimeType: 'image/png', buffer: await picture(page, 2400, 1200) });
  await expect(page.getByText(/^1,600 × 800|1600 × 800/)).toBeVisible();
  await done.click();
  await saveAndGo(page);
  await allSent(page);

  const check = (await records<CheckRecord>(request, 'checks')).filter(({ value }) => value.trapId === trap).at(-1)!.value;
  expect(check).toMatchObject({ targetCount: null, condition: 'unfit', unfitReason: 'down', note: 'Deer, by the tracks.' });
  const photo = await request.get(`/api/photos/${check.photo}`);
  expect(photo.headers()['content-type']).toBe('image/jpeg');
  expect((await photo.body()).length).toBeGreaterThan(1_000);
  const lures = await records<{ trapId: string; placedOn: string; lifeDays: number }>(request, 'lures');
  expect(lures.map(({ value }) => value)).toContainEqual({ trapId: trap, placedOn: view.on, lifeDays: 21 });
  const stages = await records<{ fieldId: string; observedOn: string; stage: string }>(request, 'stages');
  expect(stages.map(({ value }) => value)).toContainEqual({
    fieldId: field.fieldId,
    observedOn: view.on,
    stage: field.stages.at(-1)!.id,
  });
});

test('a save can be taken back at once, and corrected later; both stay in the record’s history', async ({
  page,
  context,
  request,
}) => {
  await startRound(page);
  await context.setOffline(true);
  await openNext(page);
  const trap = trapNow(page)!;
  await count(page, '12');
  await saveAndGo(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page).toHaveURL(new RegExp(`trap=${trap}(&|$)`));
  await passWarning(page);
  await page.getByRole('button', { name: 'erase' }).click();
  await count(page, '3');
  await saveAndGo(page);

  await page.getByRole('button', { name: /all stops$/ }).click();
  await page.locator('.stops').getByRole('button', { name: /13/ }).click();
  await passWarning(page);
  const tab = page.getByRole('button', { name: new RegExp(`${trap}`) });
  if (await tab.isVisible()) await tab.click();
  await page.getByRole('textbox', { name: 'Other moths' }).fill('4');
  await page.getByRole('button', { name: 'Save the correction' }).click();
  await expect(next(page)).toBeVisible();
  await context.setOffline(false);
  await allSent(page);

  const now = (await records<CheckRecord>(request, 'checks')).filter(({ value }) => value.trapId === trap).at(-1)!;
  expect(now.value).toMatchObject({ targetCount: 13, otherCount: 4 });
  const { trapId, checkedOn, visit } = now.value;
  const history = await request.get(`/api/records/checks/${encodeURIComponent(`${trapId}|${checkedOn}|${visit}`)}/history`);
  const said: Stored<CheckRecord | null>[] = await history.json();
  expect(said.map(({ value }) => value && [value.targetCount, value.otherCount])).toEqual([
    [12, null],
    null,
    [13, null],
    [13, 4],
  ]);
  expect(await (await request.get('/api/conflicts')).json()).toEqual([]);
});

test('a refused check is shown with its reason, does not hold up the others, and can be mended', async ({
  page,
  context,
  request,
}) => {
  const view = await roundOf(request);
  await startRound(page);
  await context.setOffline(true);
  await openNext(page);
  const trap = trapNow(page)!;
  const hung = (await records<TrapRecord>(request, 'traps')).find(({ value }) => value.trapId === trap)!;
  const before = new Date(Date.parse(view.on) - 86_400_000).toISOString().slice(0, 10);
  const taken = await say(request, hung, { ...hung.value, takenDownOn: before });

  await count(page, '12');
  await saveAndGo(page);
  await passWarning(page);
  await count(page, '5');
  const other = await saveAndGo(page);
  await context.setOffline(false);
  await page.getByRole('button', { name: /1 refused$/ }).click();
  const refused = page.getByRole('listitem').filter({ hasText: trap });
  await expect(refused).toContainText('count 12');
  await expect(refused).toContainText(`when trap ${trap} was taken down`);
  const counts = async (trapId: string) =>
    (await records<CheckRecord>(request, 'checks'))
      .filter(({ value }) => value.trapId === trapId && value.checkedOn === view.on)
      .map(({ value }) => value.targetCount);
  expect(await counts(other)).toContain(5);

  // The coordinator finds that the trap still stands, and the scout that there were two more moths.
  await say(request, { ...hung, revisionId: taken }, hung.value);
  await refused.getByRole('button', { name: 'Correct' }).click();
  await passWarning(page);
  await page.getByRole('textbox').first().fill('14');
  await page.getByRole('button', { name: 'Save the correction' }).click();
  await allSent(page);
  expect(await counts(trap)).toContain(14);
  expect(await counts(trap)).not.toContain(12);
});

test('a field whose re-entry time is not over is warned of before its stop opens', async ({ page, request }) => {
  const view = await roundOf(request);
  const stop = view.stops.find((each) => each.due && each.fields.length > 0)!;
  const { fieldId, name } = stop.fields[0]!;
  const insect = stop.traps[0]!.insect;
  const value = {
    fieldId,
    insect,
    appliedOn: view.on,
    product: 'an invented product',
    protectsDays: null,
    reentryHours: 48,
    preharvestDays: null,
  };
  await say(request, null, value, 'treatments');
  await page.goto('/round');
  await expect(page.getByText(/to keep out of today/)).toBeVisible();
  await page.getByRole('button', { name: new RegExp(`Start at ${stop.station}\\b`) }).click();
  await page.getByRole('button', { name: 'Start the round' }).click();
  await next(page).click();
  await expect(page.getByRole('heading', { name: 'Keep out of this field' })).toBeVisible();
  await expect(page.getByRole('heading', { name })).toBeVisible();
  await expect(page.getByText('an invented product: 48 h')).toBeVisible();
  await expect(save(page)).toHaveCount(0);
  await page.getByRole('button', { name: 'Skip this station' }).click();
  // The next stop comes once the skip is kept.
  await expect(page.getByRole('button', { name: /^Stop 2 of/ })).toBeVisible();
  await page.getByRole('button', { name: /all stops$/ }).click();
  await expect(page.getByRole('listitem').filter({ hasText: stop.station }).first()).toContainText('skipped: keep-out time');
});

test('a phone that has never had signal says so, and goes on when there is some', async ({ page }) => {
  await page.route('**/api/**', (route) => route.abort());
  await page.goto('/round');
  await expect(page.getByRole('heading', { name: 'No round on this phone yet' })).toBeVisible();
  await page.unroute('**/api/**');
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
});

test('who signs out leaves no round behind on the phone', async ({ page, context }) => {
  await startRound(page);
  await page.reload();
  await expect(next(page)).toBeVisible();
  await page.evaluate(() => fetch('/api/session', { method: 'DELETE' }).then(() => undefined));
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole('heading', { name: 'No round on this phone yet' })).toBeVisible();
});

test('the round can be installed', async ({ page, request }) => {
  await page.goto('/round');
  const href = await page.locator('link[rel="manifest"]').getAttribute('href');
  const manifest = await (await request.get(href!)).json();
  expect(manifest).toMatchObject({ start_url: '/start', display: 'standalone' });
  for (const { src, sizes } of manifest.icons as { src: string; sizes: string }[]) {
    const icon = await request.get(src);
    expect(icon.ok()).toBe(true);
    if (!src.endsWith('.png')) continue;
    // Width of a PNG: bytes 16 to 19 (PNG specification, IHDR).
    expect(`${(await icon.body()).readUInt32BE(16)}x${(await icon.body()).readUInt32BE(20)}`).toBe(sizes);
  }
  const worker = await request.get('/service-worker.js');
  expect(worker.headers()['content-type']).toContain('javascript');
  expect(worker.headers()['cache-control']).toBe('no-cache');
});

test('after dusk at the station the page is dark by itself, and by day it is not', async ({ page, request }) => {
  const view = await roundOf(request);
  const { longitude } = view.stops.find((stop) => stop.longitude !== null)!;
  const noonUtcHours = 12 - longitude! / 15;
  const at = (localHours: number) => new Date(Date.parse(`${view.on}T00:00:00Z`) + (noonUtcHours - 12 + localHours) * 3_600_000);
  await page.clock.setFixedTime(at(23.5));
  await page.goto('/round');
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.clock.setFixedTime(at(12));
  await page.reload();
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
  await expect(page.locator('html')).not.toHaveAttribute('data-theme', 'dark');
});

test('every screen of the round passes axe by day and by night, and holds targets a glove can hit', async ({ page, context }) => {
  const looksRight = async () => {
    await passesInBothThemes(page);
    expect(await smallTargets(page)).toEqual([]);
    await expectNoSidewaysScroll(page);
  };
  await page.goto('/round');
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
  await looksRight();
  await startRound(page);
  await looksRight();
  await context.setOffline(true);
  await openNext(page);
  await looksRight();
  for (const sheet of ['Lure', 'Stage', 'Photo', 'Note', 'Which moth']) {
    await page
      .getByRole('button', { name: new RegExp(`^${sheet}`) })
      .first()
      .click();
    if (sheet === 'Lure') await page.getByRole('button', { name: 'Lure changed now' }).click();
    await looksRight();
    await page.getByRole('button', { name: 'Done' }).click();
  }
  await page.getByRole('button', { name: 'Skip', exact: true }).click();
  await looksRight();
  await page.getByRole('button', { name: 'Close' }).click();
  await page.getByRole('button', { name: 'Unfit' }).click();
  await looksRight();
  await page.getByRole('button', { name: 'Down', exact: true }).click();
  await looksRight();
  await page.getByRole('button', { name: 'Full', exact: true }).click();
  await looksRight();
  await saveAndGo(page);
  await looksRight();
  await page.getByRole('button', { name: /not sent$/ }).click();
  await looksRight();
});

test('the keys of the pad are at least 56 px, and the whole visit fits a phone’s screen', async ({ page }) => {
  await startRound(page);
  await openNext(page);
  for (const key of await page.getByRole('group', { name: 'Count pad' }).getByRole('button').all()) {
    const { width, height } = (await key.boundingBox())!;
    expect(Math.min(width, height)).toBeGreaterThanOrEqual(56);
  }
  const overflow = await page.evaluate(() => document.documentElement.scrollHeight - innerHeight);
  expect(overflow).toBeLessThanOrEqual(0);
});

/** Buttons, links and fields in sight that are smaller than 44 px either way. */
const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, a, input, textarea')].flatMap((target) => {
      const { width, height } = target.getBoundingClientRect();
      const name = `${target.className} ${target.textContent}`;
      // A checkbox is hit by its whole label; the skip link is out of sight until it has the focus; a file input is behind its label.
      if (!target.checkVisibility({ visibilityProperty: true }) || /^(skip|unseen)/.test(name)) return [];
      if ((target as HTMLInputElement).type === 'checkbox' || width * height === 0) return [];
      return Math.min(width, height) < 44 ? [`${name}: ${width} × ${height}`] : [];
    }),
  );

/** A picture as a camera would take it: too large to be sent as it is. */
async function picture(page: Page, width: number, height: number): Promise<Buffer> {
  const base64 = await page.evaluate(
    async ([w, h]) => {
      const canvas = document.createElement('canvas');
      canvas.width = w!;
      canvas.height = h!;
      const brush = canvas.getContext('2d')!;
      for (let x = 0; x < w!; x += 40) {
        brush.fillStyle = `hsl(${x % 360} 60% 50%)`;
        brush.fillRect(x, 0, 40, h!);
      }
      const url = canvas.toDataURL('image/png');
      return url.slice(url.indexOf(',') + 1);
    },
    [width, height],
  );
  return Buffer.from(base64, 'base64');
}
