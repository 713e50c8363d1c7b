import type { WeekView } from '../packages/core/src/index.ts';
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

test.beforeEach(async ({ page, request }) => {
  const week = large(await weekOf(request));
  await page.route('**/api/week', (route) => route.fulfill({ json: week }));
  await page.goto('/');
  await expect(page.locator('.cell').first()).toBeVisible();
});

const rows = '.week-row, .week-lines';

test('of 500 fields only those near the window are drawn, and the last one comes when it is scrolled to', async ({ page }) => {
  await expect(page.getByText('500 fields')).toBeAttached();
  expect(await page.locator(rows).count()).toBeLessThan(120);
  await expect(page.getByText('Field 499', { exact: true })).toHaveCount(0);
  await page.locator('.week-foot').scrollIntoViewIfNeeded();
  await expect(page.getByText('Field 499', { exact: true })).toBeAttached();
  expect(await page.locator(rows).count()).toBeLessThan(120);
  await expectNoSidewaysScroll(page);
});

test('on paper there are all 500', async ({ page }) => {
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await expect(page.locator(rows)).toHaveCount(FIELDS);
});
