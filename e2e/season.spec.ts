import type { APIRequestContext, Page } from '@playwright/test';
import type { SeasonTruthView, SeasonView } from '../packages/core/src/index.ts';
import { test } from './own-test.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll } from './page.ts';

const seasonOf = async (request: APIRequestContext, year: number): Promise<SeasonView> =>
  (await request.get(`/api/season?year=${year}`)).json();

/** A phone draws a page that is too wide smaller, and then calls the window as wide as the page. */
async function expectWithinPage(page: Page): Promise<void> {
  await expectNoSidewaysScroll(page);
  expect(await page.evaluate(() => innerWidth)).toBe(page.viewportSize()!.width);
}

test('from what to trap to what to order: a decision changes plan, lures and budget, and can be undone', {
  tag: '@desk',
}, async ({ page, request }) => {
  const [insect, name] = ['ostrinia-nubilalis', 'European corn borer'];
  const before = await seasonOf(request, 2027);
  const own = (view: SeasonView) => view.lines.filter((line) => line.insect === insect);
  await page.goto('/season?year=2027');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Season 2027');
  // Each insect is a line until it is opened; the first is open.
  const section = page.locator('details.insect-plan', { has: page.getByRole('heading', { name, exact: true }) });
  await section.getByRole('heading', { name, exact: true }).click();
  await expect(section.getByText('earliest plausible', { exact: false }).first()).toBeVisible();
  for (const summary of await section.locator('summary:visible').all())
    if ((await summary.locator('..').getAttribute('open')) === null) await summary.click();
  await expect(section.getByText('The harvest date written before', { exact: false }).first()).toBeVisible();
  await expectWithinPage(page);

  const number = section.getByRole('textbox', { name: 'Traps per area' });
  await number.fill('1');
  await number.press('Enter');
  await expect(page.getByText(/^Saved: decision for the season/)).toBeVisible();
  const after = await seasonOf(request, 2027);
  expect(own(after).every(({ traps }) => traps.count === 1 && traps.why === 'stated')).toBe(true);
  const need = (view: SeasonView) => view.lures.needs.find((each) => each.insect === insect)!.placed;
  expect(need(after)).toBeLessThan(need(before));
  expect(after.budget!.total.low).not.toBe(before.budget!.total.low);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Undone.')).toBeVisible();
  expect(own(await seasonOf(request, 2027)).map(({ traps }) => traps.count)).toEqual(own(before).map(({ traps }) => traps.count));
  expect(await accessibilityProblems(page)).toEqual([]);
});

for (const [part, shown] of [
  ['numbers', 'How many traps'],
  ['lures', 'Lures'],
  ['budget', 'Budget'],
] as const) {
  test(`the ${part} of next season read well, pass axe and stay within the page`, async ({ page }) => {
    await page.goto('/season?year=2027');
    await page.getByRole('tablist', { name: 'Parts of the season' }).getByRole('tab', { name: shown }).click();
    await expect(page.locator('.season .figures').first()).toBeVisible();
    for (const summary of await page.locator('summary:visible').all()) await summary.click();
    await expectWithinPage(page);
    expect(await accessibilityProblems(page)).toEqual([]);
  });
}

test('what has no price is said to be unknown, and a price of one’s own takes its place', { tag: '@desk' }, async ({
  page,
  request,
}) => {
  await page.goto('/season?year=2027&part=budget');
  await expect(page.getByRole('heading', { name: /^The season takes at least/ })).toBeVisible();
  await expect(page.getByText('no price for: post', { exact: false })).toBeVisible();
  const post = page.getByRole('textbox', { name: 'post', exact: true });
  await post.fill('6,50');
  await post.press('Enter');
  await expect(page.getByText(/^Saved: price/)).toBeVisible();
  const rows = (await seasonOf(request, 2027)).budget!.rows;
  expect(rows.find(({ kind }) => kind === 'post')!.price).toMatchObject({ low: 6.5, standing: 'user' });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Undone.')).toBeVisible();
});

test('the running season is held against its plan, grouped by cause with one act each, the gravest first', {
  tag: '@desk',
}, async ({ page, request }) => {
  const { lines } = (await (await request.get('/api/season/truth')).json()) as SeasonTruthView;
  const causes = new Set(lines.map(({ cause }) => cause));
  await page.goto('/season?part=truth');
  const heads = page.locator('.truth-lines .cause-head');
  await expect(heads).toHaveCount(causes.size);
  await expect(page.locator('.truth-lines tbody tr:not(.group-head)')).toHaveCount(lines.length);
  const graver = ['blind', 'not-hung', 'lure-spent', 'checks-missed', 'hung-late', 'other-design', 'not-telling', 'as-planned'];
  const inOrder = graver.filter((cause) => causes.has(cause as SeasonTruthView['lines'][number]['cause']));
  const counts = inOrder.map((cause) => lines.filter((line) => line.cause === cause).length);
  for (const [nth, count] of counts.entries())
    await expect(heads.nth(nth).locator('b')).toContainText(new RegExp(`: ${count} areas?$`));
  const acts = inOrder.filter((cause) => cause !== 'as-planned').length;
  await expect(page.locator('.cause-head :is(a, button)')).toHaveCount(acts);
  await expectWithinPage(page);
  expect(await accessibilityProblems(page)).toEqual([]);
  await page.getByRole('combobox', { name: 'Group by' }).selectOption('farm');
  await expect(page.locator('.group-head')).toHaveCount(new Set(lines.map(({ farm }) => farm)).size);
});
