import type { APIRequestContext } from '@playwright/test';
import type { Advice, FieldFlightsView, FlightRows } from '../packages/core/src/index.ts';
import { figure, percent } from '../packages/core/src/index.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, partOf, test } from './page.ts';

async function allRows(request: APIRequestContext) {
  const rows: FlightRows['rows'][number][] = [];
  for (let from: number | null = 0; from !== null; ) {
    const part = (await (await request.get(`/api/flights?from=${from}`)).json()) as FlightRows;
    rows.push(...part.rows);
    from = part.next;
  }
  return rows;
}

const flightsOf = async (request: APIRequestContext, fieldId: string) =>
  (await (await request.get(`/api/fields/${fieldId}/flights`)).json()) as FieldFlightsView;

/** What a page says of a share: the figure only where it may be said. */
const said = ({ share, low, high, told }: FlightRows['rows'][number]['list'][number]['flown']) =>
  ({
    share: `${percent(share)} flown`,
    between: `between ${percent(low)} and ${percent(high)} flown`,
    'cannot-tell': 'cannot be told yet',
  })[told];

test('a field with two flights shows how far each has come, and reads them out by key', async ({ page, request }) => {
  const row = (await allRows(request)).find(({ list }) => list.length >= 2)!;
  const two = { insect: row.insect, fieldId: row.fields[0]!.fieldId };
  const { flights } = (await flightsOf(request, two.fieldId)).insects.find(({ insect }) => insect === two.insect)!;
  await page.goto(`/fields/${two.fieldId}#${two.insect}`);
  const section = partOf(page, two.insect);
  await expect(section.locator('.flight-list li')).toHaveCount(flights!.list.length);
  for (const { number, flown } of flights!.list)
    await expect(section.locator('.flight-list li').nth(number - 1)).toContainText(said(flown));
  await expect(section.locator('.flights').first()).toContainText(flights!.unsure ? 'cannot tell' : 'so far, surely');
  await section.getByText('How these flights were found').click();
  for (const trap of flights!.together.trapIds) await expect(section.locator('.flights').first()).toContainText(trap);
  await expect(section.locator('svg.rate .flight-curve').first()).toHaveAttribute('d', /M.+L/);

  const night = flights!.curve.findLast(({ on, perNight }) => on <= flights!.knownThrough && perNight[0]! >= 0.01)!;
  const on = (await flightsOf(request, two.fieldId)).on;
  const slider = section.getByRole('slider');
  await slider.focus();
  const days = (Date.parse(on) - Date.parse(night.on)) / 86_400_000;
  for (let pressed = 0; pressed < days; pressed++) await page.keyboard.press('ArrowLeft');
  await expect(slider).toHaveAttribute('aria-valuetext', new RegExp(`flight 1: ${figure(night.perNight[0]!)} a night fitted`));
  await expectNoSidewaysScroll(page);
});

test('a Scout led by the moths caught says what to look for, where, and from which nights', { tag: '@desk' }, async ({
  page,
  request,
}) => {
  const advice: readonly Advice[] = await (await request.get('/api/advice')).json();
  const found = advice.find(({ verb, because }) => verb === 'scout' && because[0]?.kind === 'larvae')!;
  await page.goto(`/fields/${found.field}#${found.insect}`);
  const section = partOf(page, found.insect);
  await expect(section.locator('.verdict-why')).toContainText(/larvae/);
  await expect(section).toContainText(/moths caught from .+ to .+: their offspring in the field/);
  await expect(section).toContainText('Where to look:');
  await section.getByText('Table of catches and their offspring').click();
  const { larvae } = (await flightsOf(request, found.field)).insects.find(({ insect }) => insect === found.insect)!;
  await expect(section.getByRole('group', { name: /^Table of catches/ }).locator('tbody tr')).toHaveCount(larvae!.rows.length);
  for (const summary of await section.locator('summary:visible').all())
    if ((await summary.locator('..').getAttribute('open')) === null) await summary.click();
  expect(await accessibilityProblems(page)).toEqual([]);
});

test('the flights stand a row to an insect and farm, in the order of what happens next, and lead to the fields', async ({
  page,
  request,
  isMobile,
}) => {
  const rows = await allRows(request);
  const flying = rows.filter(({ list }) => list.length > 0);
  await page.goto('/flights');
  await expect(page.getByRole('status').filter({ hasText: 'all fitted' })).toBeAttached();
  const shown = page.locator('.flight-rows tbody tr');
  // On a phone those of the next seven days stand, and the others behind a line that counts them.
  if (isMobile) await page.getByText(/\d+ more, later than a week from now/).click();
  await expect(shown).toHaveCount(flying.length);
  const first = flying.map(({ next }) => next?.dates.middle ?? '9').sort()[0];
  const soonest = flying.filter(({ next }) => next?.dates.middle === first).map(({ farm }) => farm);
  const text = (await shown.first().textContent())!;
  expect(soonest.some((farm) => text.includes(farm))).toBe(true);
  // What has no flight is folded, and counted by its moths all the same.
  const without = rows.filter(({ list }) => list.length === 0);
  for (const { farm } of without) await expect(page.locator('.without-flight')).toContainText(farm);
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
  const link = shown.locator('a').first();
  const name = (await link.textContent())!;
  await link.click();
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible();
});

test('a ridge is filled as far as nights are measured, and the heat axis lines the farms of one insect up', {
  tag: '@desk',
}, async ({ page, request }) => {
  const rows = await allRows(request);
  const running = rows.find(({ list, ridge }) => ridge && list.some(({ status }) => status === 'running'))!;
  const { ridge } = running;
  expect(ridge!.known).toBeGreaterThan(0);
  expect(ridge!.known).toBeLessThan(ridge!.heat.length);
  expect(ridge!.heat).toEqual([...ridge!.heat].sort((a, b) => a - b));
  await page.goto(`/flights?insect=${running.insect}&farm=${encodeURIComponent(running.farm)}`);
  const picture = page.locator('.flight-rows .flight-picture').first();
  await expect(picture.locator('.ridge').first()).toHaveAttribute('d', /^M.+Z$/);
  await expect(picture.locator('.ridge-ahead').first()).toHaveAttribute('d', /^M.+/);
  const byDay = await picture.locator('.ridge').first().getAttribute('d');
  await page.getByRole('button', { name: 'Heat' }).click();
  await expect(page).toHaveURL(/axis=heat/);
  await expect(picture.locator('.ridge').first()).not.toHaveAttribute('d', byDay!);
  await page.goto('/flights?axis=heat');
  await expect(page.getByText('Heat lines up the farms of one insect: choose one.')).toBeVisible();
});
