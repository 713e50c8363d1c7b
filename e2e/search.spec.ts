/** Finding a field, trap, farm, insect, person or page by keys alone. */
import { accessibilityProblems, expect, expectNoSidewaysScroll, test } from './page.ts';

const box = (page: import('@playwright/test').Page) => page.getByRole('combobox', { name: 'What to find' });
const options = (page: import('@playwright/test').Page) => page.locator('dialog[open]').getByRole('option');
const chosen = (page: import('@playwright/test').Page) => page.locator('dialog[open]').getByRole('option', { selected: true });

test('the slash opens it, words in any order find a field, and Enter goes there and keeps the day', { tag: '@desk' }, async ({
  page,
  request,
}) => {
  const { fields } = await (await request.get('/api/week')).json();
  const field = fields.find(({ fieldId }: { fieldId: string }) => fieldId === 'quernstead-kiln');
  await page.goto('/flights?on=2026-07-08');
  await expect(page.locator('main h1')).toBeVisible();
  await page.keyboard.press('/');
  await expect(box(page)).toBeFocused();
  await expect(box(page)).toHaveValue('');
  await page.keyboard.type('STRIP quern');
  await expect(chosen(page)).toContainText(field.name);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: field.name })).toBeVisible();
  expect(new URL(page.url()).searchParams.get('on')).toBe('2026-07-08');
  await expect(box(page)).toHaveCount(0);
});

test('Enter pressed before the answer is here waits for it', { tag: '@desk' }, async ({ page }) => {
  await page.route('**/api/search**', async (route) => {
    await new Promise((later) => setTimeout(later, 700));
    await route.continue();
  });
  await page.goto('/program/settings');
  await expect(page.locator('main h1')).toBeVisible();
  await page.keyboard.press('/');
  await page.keyboard.type('cr2-mc-26');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/traps\/CR2-MC-26$/);
});

test('arrow keys walk the list, Escape closes it, and the focus goes back', async ({ page }) => {
  await page.goto('/');
  const button = page.getByRole('button', { name: 'Find', exact: true });
  await button.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.type('corn');
  await expect(options(page).filter({ hasText: 'European corn borer' }).first()).toBeVisible();
  await expect(page.locator('.search-said')).toContainText(/match|more/);
  const first = await chosen(page).textContent();
  await page.keyboard.press('ArrowDown');
  await expect(chosen(page)).not.toHaveText(first!);
  const id = await chosen(page).getAttribute('id');
  await expect(box(page)).toHaveAttribute('aria-activedescendant', id!);
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await expect(options(page).last()).toHaveAttribute('aria-selected', 'true');
  expect(await accessibilityProblems(page, 'dialog[open]')).toEqual([]);
  await expectNoSidewaysScroll(page);
  await page.keyboard.press('Escape');
  await expect(box(page)).toHaveCount(0);
  await expect(button).toBeFocused();
});

test.describe('while the server is silent', () => {
  test.use({ mayComplain: true });
  test('pages are found by name', { tag: '@desk' }, async ({ page }) => {
    await page.route('**/api/search**', (route) => route.abort('connectionrefused'));
    await page.goto('/');
    await page.getByRole('button', { name: 'Find', exact: true }).click();
    await page.keyboard.type('scout');
    await expect(page.getByText('No answer from the server')).toBeVisible();
    await options(page)
      .filter({ hasText: /^Scouting/ })
      .click();
    await expect(page).toHaveURL(/\/rounds\/scouting$/);
  });
});

test('a slash that is written in a box stays there, and nonsense finds nothing', { tag: '@desk' }, async ({ page }) => {
  await page.goto('/fields');
  const filter = page.getByRole('searchbox').first();
  await filter.fill('a');
  await filter.press('End');
  await page.keyboard.type('/b');
  await expect(filter).toHaveValue('a/b');
  await expect(box(page)).toHaveCount(0);
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await box(page).fill('%_\\ <b> 🦋');
  await expect(page.getByText('Nothing of that name')).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(box(page)).toBeVisible();
});
