/** One day for all pages: chosen once, it goes along until one goes back to today. */
import type { Page } from '@playwright/test';
import { expect, test, weekOf } from './page.ts';

const PAST = '2026-07-08';
const banner = (page: Page) => page.getByRole('status').filter({ has: page.getByRole('link', { name: 'Back to today' }) });
const links = (page: Page, within: string) => page.getByRole('navigation', { name: within }).getByRole('link');

async function isOfThePast(page: Page) {
  await expect(page.locator('main h1')).toBeVisible();
  await expect(banner(page)).toContainText('Wednesday, July 8, 2026');
  expect(new URL(page.url()).searchParams.get('on')).toBe(PAST);
}

test('another day is told on every page and survives links, the menu and a reload', { tag: '@desk' }, async ({
  page,
  request,
}) => {
  const [past, today] = await Promise.all([weekOf(request, PAST), weekOf(request)]);
  expect(past.due).not.toEqual(today.due);
  await page.goto('/');
  await expect(page.getByText('Today, Wed July 15')).toBeVisible();
  await expect(banner(page)).toHaveCount(0);
  await page.getByLabel('As known on').fill(PAST);
  await isOfThePast(page);
  for (const place of ['Fields & traps', 'Rounds', 'Flights', 'Season', 'This week']) {
    await links(page, 'Pages').filter({ hasText: place }).click();
    await isOfThePast(page);
  }
  const { fieldId } = past.due.decisions[0]!;
  await page.locator(`main a[href^="/fields/${fieldId}"]`).first().click();
  await isOfThePast(page);
  await page.reload();
  await isOfThePast(page);
  await links(page, 'Pages').filter({ hasText: 'Fields & traps' }).click();
  await links(page, 'Within Fields & traps').filter({ hasText: 'Questions' }).click();
  await isOfThePast(page);
  for (const name of ['People', 'Settings']) {
    await page.getByRole('button', { name: 'Program', exact: true }).click();
    await links(page, 'Program').filter({ hasText: name }).click();
    await isOfThePast(page);
    await expect(banner(page)).toContainText('this one always shows today’s records');
  }
  await page.goBack();
  await isOfThePast(page);
  await page.getByRole('link', { name: 'Back to today' }).click();
  await expect(banner(page)).toHaveCount(0);
  expect(page.url()).not.toContain('on=');
  await links(page, 'Pages').filter({ hasText: 'This week' }).click();
  await expect(page.getByText('Today, Wed July 15')).toBeVisible();
});

test('a day ahead says that nothing more is known by then; what is written in a field is written today', {
  tag: '@desk',
}, async ({ page }) => {
  await page.goto('/?on=2026-07-20');
  await expect(banner(page)).toContainText('As it will read on Monday, July 20, 2026 if nothing more becomes known.');
  await page.goto(`/rounds/scouting?on=${PAST}`);
  await links(page, 'Within Rounds').filter({ hasText: 'Today’s round' }).click();
  await expect(page).toHaveURL(/\/round$/);
});

test('a day that does not exist is today', { tag: '@desk' }, async ({ page }) => {
  await page.goto('/fields?on=2026-02-30');
  await expect(page.locator('main h1')).toBeVisible();
  await expect(page.getByLabel('As known on')).toHaveValue('2026-07-15');
  await expect(banner(page)).toHaveCount(0);
});

test('the banner stays in sight, above the head of the table', async ({ page, isMobile }) => {
  await page.goto(`/?on=${PAST}`);
  await expect(page.locator('.cell').first()).toBeVisible();
  await page.evaluate(() => scrollTo(0, 2_000));
  await expect(banner(page)).toBeInViewport();
  if (isMobile) return;
  const [line, head] = await Promise.all([banner(page).boundingBox(), page.locator('.week > thead').boundingBox()]);
  expect(head!.y).toBeGreaterThanOrEqual(line!.y + line!.height - 1);
});
