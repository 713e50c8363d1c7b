import { readFileSync } from 'node:fs';
import { accessibilityProblems, expect, test } from './page.ts';

test('a bulletin is drafted, put into a person’s words and taken along in at most ten clicks, in either language', async ({
  page,
}) => {
  let clicks = 0;
  const click = async (name: string | RegExp, role: 'button' | 'link' | 'radio' = 'button') => {
    clicks += 1;
    await page.getByRole(role, { name, exact: typeof name === 'string' }).click();
  };
  await page.goto('/');
  await click('Bulletin', 'link');
  const sheet = page.locator('.bulletin-sheet');
  await expect(sheet).toContainText('a decision is due in');
  await expect(sheet).toContainText('Invented demo');
  clicks += 1;
  await page.getByRole('textbox', { name: 'In short' }).fill('Two farms asked about netting.\nCome to the field day.');
  await expect(sheet).toContainText('Come to the field day.');
  clicks += 1;
  await page.getByRole('textbox', { name: 'Add to “Before anything is done”' }).fill('Ask Ida Brook, 555 0100.');
  await expect(sheet).toContainText('The label, local law and a licensed adviser go before this bulletin');
  await expect(sheet).toContainText('Ask Ida Brook, 555 0100.');
  await page.reload();
  await expect(sheet).toContainText('Come to the field day.');
  clicks += 1;
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a page for mail' }).click(),
  ]);
  expect(file.suggestedFilename()).toBe('bulletin-2026-07-15-en.html');
  const html = readFileSync(await file.path(), 'utf8');
  for (const said of ['Come to the field day.', 'Ask Ida Brook', 'Invented demo']) expect(html).toContain(said);
  expect(clicks).toBeLessThanOrEqual(10);

  await click('Español', 'radio');
  await expect(sheet).toContainText('decisión pendiente en');
  await expect(sheet).not.toContainText('Come to the field day.');
  await click('English', 'radio');
  await click('As drafted');
  await expect(sheet).toContainText('a decision is due in 3 fields');
  expect(await accessibilityProblems(page)).toEqual([]);
});
