import { startServer } from './own-server.ts';
import { accessibilityProblems, expect, test } from './page.ts';

test('from the demo to a program of one’s own and back, and nothing of the one in the other', async ({ page }) => {
  const server = await startServer();
  try {
    await page.goto(server.url);
    await page.getByRole('button', { name: 'Start my own program' }).click();
    await expect(page.getByRole('heading', { name: 'Your first advice' })).toBeVisible();
    const own = new URL(page.url()).origin;
    expect(own).not.toBe(server.url);
    await expect(page.locator('.masthead .invented')).toHaveCount(0);
    await expect(page.getByRole('link', { name: 'Import a sheet' })).toBeVisible();
    expect(await accessibilityProblems(page)).toEqual([]);

    await page.getByRole('button', { name: 'Try the demo' }).click();
    await expect(page.locator('.masthead .invented')).toBeVisible();
    expect(new URL(page.url()).origin).toBe(server.url);

    await page.goto(`${server.url}/program/data/import`);
    await page.getByRole('button', { name: 'Start my own program' }).click();
    await expect(page.getByRole('heading', { name: 'Your first advice' })).toBeVisible();
    await page.getByRole('button', { name: 'Program', exact: true }).click();
    await expect(page.getByRole('button', { name: 'The invented demo' })).toBeVisible();
    expect(await accessibilityProblems(page)).toEqual([]);
  } finally {
    await server.stop();
  }
});
