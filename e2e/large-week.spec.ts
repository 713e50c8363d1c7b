import { needsNothing, type WeekView } from '../packages/core/src/index.ts';
import { expect, expectNoSidewaysScroll, test, weekOf } from './page.ts';

const FIELDS = 500;

/** The demo's fields, repeated under other names on fifty farms. */
function large(week: WeekView): WeekView {
  const fields = Array.from({ length: FIELDS }, (_, index) => {
    const field = week.fields[index % week.fields.length]!;
    return { ...field, fieldId: `${field.fieldId}-${index}`, name: `Field ${index}`, farm: `Farm ${index % 50}` };
  });
  return { ...week, fields };
}

let week: WeekView;

test.beforeEach(async ({ page, request }) => {
  week = large(await weekOf(request));
  await page.route('**/api/week', (route) => route.fulfill({ json: week }));
  await page.goto('/');
  await expect(page.locator('.cell').first()).toBeVisible();
});

const rows = '.week-row, .week-lines';

test('of 500 fields only those near the window are drawn, and the last one comes when it is scrolled to', async ({ page }) => {
  await expect(page.getByText('500 fields', { exact: true })).toBeAttached();
  expect(await page.locator(rows).count()).toBeLessThan(120);
  const last = page.locator('.week > tbody, .week-list > section').last();
  await expect(last).toBeEmpty();
  await page.locator('.week-foot').scrollIntoViewIfNeeded();
  await expect(last.locator(`:is(${rows}, .fold-line)`).first()).toBeVisible();
  expect(await page.locator(rows).count()).toBeLessThan(120);
  await expectNoSidewaysScroll(page);
});

test('on paper there are all 500: a row for each that asks for something, and the others by name', async ({ page }) => {
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  const quiet = week.fields.filter(needsNothing);
  await expect(page.locator(rows)).toHaveCount(FIELDS - quiet.length);
  const named = (await page.locator('.fold-line').allTextContents()).join('\n');
  expect(quiet.filter(({ name }) => !new RegExp(`${name}\\b`).test(named))).toEqual([]);
});
