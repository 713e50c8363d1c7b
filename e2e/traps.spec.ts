import type { APIRequestContext, Page } from '@playwright/test';
import { english, type TrapsView, type TrapView } from '../packages/core/src/index.ts';
import { test } from './own-test.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, weekOf } from './page.ts';

const stationsOf = async (request: APIRequestContext): Promise<TrapsView> => (await request.get('/api/traps')).json();
const trapOf = async (request: APIRequestContext, trapId: string): Promise<TrapView> =>
  (await request.get(`/api/traps/${encodeURIComponent(trapId)}`)).json();
const { figure: rateText } = english({ temperature: 'C' });
const rows = (page: Page) => page.locator('.traps tbody tr, .trap-cards > li');
/** Names that no other test of any browser takes. */
const unique = (prefix: string) => `${prefix}-${Math.random().toString(36).slice(2, 8)}`;

async function fillNewTrap(page: Page, trapId: string): Promise<void> {
  await page.goto('/fields');
  await page.getByRole('button', { name: 'Add a trap' }).click();
  const form = page.getByRole('dialog', { name: 'Add a trap' });
  await form.getByLabel('Trap name').fill(trapId);
  await form.getByLabel('Station').fill('Test post (invented)');
  await form.getByLabel('Insect').selectOption('helicoverpa-zea');
  await form.getByRole('radio', { name: 'mesh cone' }).check();
  await form.getByRole('checkbox', { name: 'Kiln Strip' }).check();
}

test('lists every trap that hangs, and finds, filters and sorts them', async ({ page, request }) => {
  const view = await stationsOf(request);
  const hanging = view.places.flatMap(({ traps }) => traps).filter(({ state }) => state === 'hanging');
  await page.goto('/fields');
  await expect(page.getByText(/traps? hang/)).toBeVisible();
  expect(await rows(page).count()).toBeGreaterThanOrEqual(hanging.length - 1);
  await expectNoSidewaysScroll(page);
  const { trapId } = hanging[0]!;
  await page.getByLabel('Search').fill(trapId);
  await expect(rows(page)).toHaveCount(1);
  await expect(page).toHaveURL(new RegExp(`find=${trapId}`));
  await page.getByLabel('Search').fill('no such trap');
  await expect(page.getByText('No trap matches these filters.')).toBeVisible();
  await page.getByRole('button', { name: 'Clear the filters' }).click();
  expect(await rows(page).count()).toBeGreaterThan(hanging.length);
  await page.goto('/fields?sort=rate&down=yes');
  const highest = Math.max(...hanging.map(({ newest }) => newest?.perNight ?? 0));
  await expect(rows(page).first()).toContainText(`${rateText(highest)} a night`);
});

test('copies the traps as a table that a spreadsheet reads', { tag: '@desk' }, async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto('/fields?farm=Quernstead');
  await expect(rows(page).first()).toBeVisible();
  const shown = await rows(page).count();
  await page
    .getByRole('button', { name: /^Copy or save/ })
    .first()
    .click();
  await page.getByRole('menuitem', { name: 'Copy as CSV' }).click();
  await expect(page.getByText('Copied.')).toBeVisible();
  const lines = (await page.evaluate(() => navigator.clipboard.readText())).split('\r\n');
  expect(lines).toHaveLength(shown + 1);
  expect(lines[0]).toContain('station,trap,insect');
});

test('a trap shows its checks as the API has them', async ({ page, request }) => {
  const trap = await trapOf(request, 'CR2-MC-26');
  await page.goto('/traps/CR2-MC-26');
  const table = page.getByRole('group', { name: 'Checks' });
  await expect(table.locator('tbody tr')).toHaveCount(trap.visits.length);
  const counts = await table.locator('tbody td:nth-child(2)').allTextContents();
  expect(counts).toEqual(trap.visits.map(({ count }) => (count === null ? '–' : String(count))));
  await expectNoSidewaysScroll(page);
});

test('a new trap is told what is wrong beside each box, how it is set up, and can be taken back', { tag: '@desk' }, async ({
  page,
  request,
}) => {
  const trapId = unique('E2E');
  await fillNewTrap(page, '');
  const form = page.getByRole('dialog', { name: 'Add a trap' });
  await expect(form).toContainText('Opening at 2 ft above ground');
  await expect(form).toContainText('Have buried lines located');
  await expect(form).toContainText('Fresh disposable gloves for each species');
  // Named after its station and insect, until somebody writes another name.
  await expect(form.getByLabel('Trap name')).not.toHaveValue('');
  await form.getByLabel('Trap name').fill('');
  await form.getByLabel('Latitude').fill('95');
  await form.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(form.getByLabel('Trap name')).toBeFocused();
  await expect(form.locator('[data-name="trapId"] .faults')).toContainText('Fill it in.');
  await expect(form.locator('[data-name="latitude"] .faults')).toContainText('expected a number from -90 to 90, got 95');
  await form.getByLabel('Trap name').fill(trapId);
  await form.getByLabel('Latitude').fill('45,01');
  await form.getByLabel('Longitude').fill('-30.01');
  await form.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(form).toHaveCount(0);
  await expect(page.getByText(`Saved: trap ${trapId}.`)).toBeVisible();
  const saved = await trapOf(request, trapId);
  expect(saved).toMatchObject({ latitude: 45.01, longitude: -30.01, design: 'mesh-cone', state: 'hanging' });
  expect(saved.informs.map(({ name }) => name)).toEqual(['Kiln Strip']);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Undone.')).toBeVisible();
  expect((await request.get(`/api/traps/${trapId}`)).status()).toBe(404);
});

test.describe('moving', () => {
  // Undone, the page asks for a trap that is gone, and the browser reports that.
  test.use({ mayComplain: true });

  test('a moved trap ends on the day and begins anew elsewhere, with its lure', { tag: '@desk' }, async ({ page, request }) => {
    const trapId = unique('MOVE');
    await fillNewTrap(page, trapId);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await expect(page.getByText(`Saved: trap ${trapId}.`)).toBeVisible();
    await page.goto(`/traps/${trapId}`);
    await page.getByRole('button', { name: 'Record a lure change' }).click();
    await page.getByLabel('Lasts, days').fill('28');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await expect(page.getByText('Saved: lure')).toBeVisible();
    await page.getByRole('button', { name: 'Move it' }).click();
    const form = page.getByRole('dialog', { name: `Move ${trapId}` });
    await expect(form).toContainText('the two catches stay two histories');
    await form.getByLabel('Station').fill('Test post, farther (invented)');
    await form.getByRole('button', { name: 'Move it' }).click();
    await expect(page.getByRole('heading', { level: 1, name: `${trapId}-2` })).toBeVisible();
    const [old, next] = [await trapOf(request, trapId), await trapOf(request, `${trapId}-2`)];
    expect(old).toMatchObject({ state: 'taken-down', takenDownOn: '2026-07-15' });
    expect(next).toMatchObject({ state: 'hanging', station: 'Test post, farther (invented)', hungOn: '2026-07-15', visits: [] });
    expect(next.lures).toEqual([{ placedOn: '2026-07-15', lifeDays: 28 }]);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByText('Undone.')).toBeVisible();
    expect(await trapOf(request, trapId)).toMatchObject({ state: 'hanging', takenDownOn: null });
  });
});

test('a trap cannot be taken down before its last check, and says why', { tag: '@desk' }, async ({ page }) => {
  await page.goto('/traps/CR2-MC-26');
  await page.getByRole('button', { name: 'Take it down' }).click();
  const form = page.getByRole('dialog', { name: 'Take down CR2-MC-26' });
  await form.getByLabel('Taken down on').fill('2026-07-01');
  await form.getByRole('button', { name: 'Take it down' }).click();
  await expect(form.locator('.faults')).toContainText('2026-07-01');
  await page.keyboard.press('Escape');
  await expect(form).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Take it down' })).toBeFocused();
});

test('a trap shows its season drawn, with its lures and the nearest of its kind', async ({ page, request }) => {
  const trap = await trapOf(request, 'DU1-HZ-26');
  await page.goto('/traps/DU1-HZ-26');
  const chart = page.locator('.trap-chart');
  await expect(chart.locator('.rate-line')).toHaveAttribute('d', /^M.+/);
  await expect(chart.locator('.neighbour-line')).toHaveCount(trap.chart.neighbours.length);
  for (const { station } of trap.chart.neighbours) await expect(chart.locator('.legend')).toContainText(station);
  await expect(chart).toContainText(`rule ${rateText(trap.chart.threshold!.perNight)}`);
  await expect(chart.locator('.told-nothing')).toHaveCount(trap.chart.withoutInformation.length);
  await expectNoSidewaysScroll(page);
});

test.describe('the map', () => {
  // A software renderer talks of its own slowness in the console.
  test.use({ mayComplain: true });

  test('asks nobody but this server, and holds every station also as a table', { tag: '@desk' }, async ({
    page,
    request,
    baseURL,
  }) => {
    const foreign: string[] = [];
    page.on('request', (sent) => {
      if (!sent.url().startsWith(baseURL!) && !sent.url().startsWith('data:')) foreign.push(sent.url());
    });
    const view = await stationsOf(request);
    const placed = view.places.filter(
      ({ traps, latitude }) => latitude !== null && traps.some(({ state }) => state === 'hanging'),
    );
    await page.goto('/map');
    await expect(page.locator('.station-mark').first()).toBeVisible();
    await page.getByText('Table behind the map').click();
    const names = await page.locator('.behind .row-button').allTextContents();
    for (const { station } of placed.filter(({ station }) => !station.includes('Test post'))) expect(names).toContain(station);
    await page.getByRole('button', { name: placed[0]!.station, exact: true }).click();
    await expect(page.locator('.map-panel h2')).toHaveText(placed[0]!.station);
    await page.getByRole('button', { name: 'Nearer' }).click();
    await page.getByRole('combobox', { name: 'Insect' }).selectOption({ index: 1 });
    await expect(page).toHaveURL(/insect=/);
    await expectNoSidewaysScroll(page);
    expect(foreign).toEqual([]);
  });

  test('shows each field by its most pressing verb, and keeps its size and its address when something is pointed at', async ({
    page,
    request,
  }) => {
    const { due } = await weekOf(request);
    await page.goto('/map');
    // Where there is no room for its fields' names, a farm stands as one mark with its most pressing verb.
    const decided = page.locator(':is(.field-mark, .farm-mark).verb-decide');
    await expect(decided.first()).toBeVisible();
    const named = (await decided.locator('text, title').allTextContents()).join(' ');
    for (const { name, farm } of due.decisions) expect(named.includes(name) || named.includes(farm)).toBe(true);
    const ground = page.locator('div.ground');
    const before = await ground.boundingBox();
    await page.getByRole('button', { name: 'The next station' }).click();
    await expect(page).toHaveURL(/station=/);
    await expect(page.locator('.walk')).toContainText('station 1 of');
    const first = await page.locator('.map-panel h2').textContent();
    await page.getByRole('button', { name: 'The next station' }).click();
    await expect(page.locator('.map-panel h2')).not.toHaveText(first!);
    await page.getByRole('button', { name: 'The station before' }).click();
    await expect(page.locator('.map-panel h2')).toHaveText(first!);
    const after = await ground.boundingBox();
    expect([after!.width, after!.height]).toEqual([before!.width, before!.height]);
    await page.reload();
    await expect(page.locator('.map-panel h2')).toHaveText(first!);
    await expect(page.locator('.station-mark.chosen')).toHaveCount(1);
  });

  test('draws rates only of one insect in one design, explained in figures', { tag: '@desk' }, async ({ page }) => {
    await page.goto('/map');
    await page.getByRole('button', { name: 'Moth rates' }).click();
    await expect(page.getByText('Rates need one insect and one trap design')).toBeVisible();
    await expect(page.locator('.by-rate')).toHaveCount(0);
    await page.getByRole('combobox', { name: 'Insect' }).selectOption('helicoverpa-zea');
    await page.getByRole('combobox', { name: 'Trap design' }).selectOption('mesh-cone');
    await expect(page.locator('.map-key')).toContainText(/\d a night/);
    await expect(page.locator('.marks .station-mark.by-rate').first()).toBeVisible();
    await expect(page).toHaveURL(/design=mesh-cone/);
  });

  test('stands on a plain plan where the browser draws no map', async ({ page }) => {
    await page.addInitScript(() => {
      HTMLCanvasElement.prototype.getContext = () => null;
    });
    await page.goto('/map');
    await expect(page.getByText('no WebGL')).toBeVisible();
    // Where the ground lies is settled once everything on it is there.
    await expect(page.locator('#page')).toHaveAttribute('aria-busy', 'false');
    const mark = page.locator('.station-mark > g').first();
    const before = await mark.getAttribute('transform');
    await page.locator('.plan').focus();
    await page.keyboard.press('ArrowLeft');
    await expect(mark).not.toHaveAttribute('transform', before!);
    await page.getByRole('button', { name: 'Show all' }).click();
    await expect(mark).toHaveAttribute('transform', before!);
    expect(await accessibilityProblems(page)).toEqual([]);
  });

  test('names an address that it may not ask, and what allows it', { tag: '@desk' }, async ({ page }) => {
    await page.goto('/map');
    await page.getByText('Base map', { exact: true }).click();
    await page.getByLabel('An address').fill('ftp://nowhere');
    await page.getByRole('button', { name: 'Use it' }).click();
    await expect(page.getByText('That is no address')).toBeVisible();
    await page.getByLabel('An address').fill('https://tiles.invalid/style.json');
    await page.getByRole('button', { name: 'Use it' }).click();
    await expect(page.getByText('--map-origin https://tiles.invalid')).toBeVisible();
    await page.getByRole('button', { name: 'None: plain paper' }).click();
  });
});
