import { accessibilityProblems, expect, test, weekOf } from './page.ts';

for (const theme of ['light', 'dark'] as const) {
  test.describe(`the ${theme} theme`, () => {
    test.use({ colorScheme: theme });

    test('This week, with evidence and every list open, passes axe', async ({ page }) => {
      await page.goto('/');
      await page.locator('.cell.verb-decide').first().click();
      await expect(page.locator('.open-evidence')).toBeVisible();
      for (const summary of await page.locator('summary:visible').all()) await summary.click();
      expect(await accessibilityProblems(page)).toEqual([]);
    });

    test('a field page, with every table open, passes axe', async ({ page, request }) => {
      const { due } = await weekOf(request);
      await page.goto(`/fields/${due.decisions[0]!.fieldId}`);
      await expect(page.getByRole('slider').first()).toBeVisible();
      for (const summary of await page.locator('summary:visible').all()) await summary.click();
      expect(await accessibilityProblems(page)).toEqual([]);
    });
  });
}

test('the theme chosen by hand outlives a reload', async ({ page }) => {
  await page.goto('/');
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const before = await paper();
  await page.getByRole('button', { name: 'Use the dark theme' }).click();
  const after = await paper();
  expect(after).not.toBe(before);
  await page.reload();
  expect(await paper()).toBe(after);
  await expect(page.getByRole('button', { name: 'Use the light theme' })).toBeVisible();
});
