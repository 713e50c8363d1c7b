import type { APIRequestContext } from '@playwright/test';
import type { Advice, FieldFlightsView, FlightRows } from '../packages/core/src/index.ts';
import { figure, percent } from '../packages/core/src/index.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, test } from './page.ts';

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
  const two = (await allRows(request)).find(({ list }) => list.length >= 2)!;
  const { flights } = (await flightsOf(request, two.fieldId)).insects.find(({ insect }) => insect === two.insect)!;
  await page.goto(`/fields/${two.fieldId}`);
  const section = page.locator(`[id="${two.insect}"]`);
  await expect(section.locator('.flight-list li')).toHaveCount(two.list.length);
  for (const { number, flown } of two.list)
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

test('a Scout led by the moths caught says what to look for, where, and from which nights', async ({ page, request }) => {
  const advice: readonly Advice[] = await (await request.get('/api/advice')).json();
  const found = advice.find(({ verb, because }) => verb === 'scout' && because[0]?.kind === 'larvae')!;
  await page.goto(`/fields/${found.field}`);
  const section = page.locator(`[id="${found.insect}"]`);
  await expect(section.locator('.insect-sentence')).toContainText(/larvae/);
  await expect(section).toContainText(/moths caught from .+ to .+: their offspring in the field/);
  await expect(section).toContainText('Where to look:');
  await section.getByText('Table of catches and their offspring').click();
  const { larvae } = (await flightsOf(request, found.field)).insects.find(({ insect }) => insect === found.insect)!;
  await expect(section.getByRole('group', { name: /^Table of catches/ }).locator('tbody tr')).toHaveCount(larvae!.rows.length);
  for (const summary of await section.locator('summary:visible').all())
    if ((await summary.locator('..').getAttribute('open')) === null) await summary.click();
  expect(await accessibilityProblems(page)).toEqual([]);
});

test('the flights of the whole program grow to every field and insect with a trap', async ({ page, request }) => {
  const rows = await allRows(request);
  await page.goto('/flights');
  await expect(page.getByRole('status').filter({ hasText: 'all fitted' })).toBeVisible();
  await expect(page.locator('.flight-rows tbody tr')).toHaveCount(rows.length);
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
  await page.locator('.flight-rows tbody a').first().click();
  await expect(page.getByRole('heading', { level: 1, name: rows[0]!.field })).toBeVisible();
});
