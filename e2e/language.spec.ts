import { expect, test } from './page.ts';

test('the language chosen in the settings stays, and units and dates follow their own choice', { tag: '@desk' }, async ({
  page,
}) => {
  await page.goto('/program/settings');
  await page.getByRole('radio', { name: 'Español' }).click();
  await expect(page.getByRole('heading', { name: 'Ajustes' })).toBeVisible();
  await page.getByRole('radio', { name: '°C, °C·d' }).check();
  await page.getByRole('radio', { name: 'English' }).click();
  await expect(page.getByRole('heading', { name: 'Settings' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Settings' })).toBeVisible();
  await page.getByRole('radio', { name: 'July 13, 2026' }).click();
  await expect(page.getByText('Such as Monday, July 13, 2026.')).toBeVisible();
  await page.goto('/');
  await expect(page.locator('.sub')).toContainText(/, 2026/);
  await page.locator('.cell.verb-decide').first().click();
  await expect(page.locator('.open-evidence')).not.toContainText(/heat to [^.]* of [\d.–]+ °F·d/);
});
