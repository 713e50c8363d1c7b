import { mkdirSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { startEmptyServer } from './own-server.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, test } from './page.ts';

test('a source of weather is begun, read from its folder, written by hand and held against another', async ({ page }) => {
  const server = await startEmptyServer();
  try {
    await page.goto(`${server.url}/program/weather`);
    await expect(page.getByText('No weather yet.')).toBeVisible();
    const form = page.getByRole('dialog');
    const save = async () => {
      await form.getByRole('button', { name: /^Save/ }).click();
      await expect(form).toHaveCount(0);
    };

    // A service of others is asked only once its terms were seen.
    await page.getByRole('button', { name: 'Add a source' }).click();
    await form.getByLabel('Short name').fill('station');
    await form.getByLabel('Fetched from').selectOption('noaa-daily');
    await expect(form.getByRole('link', { name: 'Terms of the service' })).toHaveAttribute('href', /^https:/);
    await form.getByLabel('The service’s name of the station').fill('XX000000001');
    await form.getByRole('group', { name: 'Fetch by itself' }).getByRole('radio', { name: 'yes' }).check();
    await form.getByRole('button', { name: 'Save' }).click();
    await expect(form.locator('.faults')).toBeVisible();
    expect(await accessibilityProblems(page)).toEqual([]);
    await form.getByLabel('Fetched from').selectOption('folder');
    await form.getByLabel(/^Address/).fill('yard');
    await save();

    const row = page.getByRole('row').filter({ hasText: 'station' });
    const folder = /Files are put into (.+)\./.exec((await row.textContent()) ?? '')![1]!;
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'yard-1.csv'), 'date,tmin_f,tmax_f\n2026-07-01,50,77\n2026-07-03,53.6,78.8\n');
    const minuteAgo = new Date(Date.now() - 60_000);
    utimesSync(join(folder, 'yard-1.csv'), minuteAgo, minuteAgo);
    await page.getByRole('button', { name: 'Fetch now: station' }).click();
    await expect(row).toContainText('Fri July 3');
    await expect(row).toContainText('2 days');

    // What was missing is written by hand, in the units read off the thermometer.
    await page.getByRole('button', { name: 'Write a day of station' }).click();
    await form.getByLabel('Day').fill('2026-07-02');
    await form.getByLabel('Lowest, °F').fill('80');
    await form.getByLabel('Highest, °F').fill('60');
    await form.getByRole('button', { name: 'Save the day' }).click();
    await expect(form.getByRole('status')).toContainText('the lowest at or below the highest');
    await form.getByLabel('Lowest, °F').fill('59');
    await form.getByLabel('Highest, °F').fill('80.6');
    await save();
    const days = await (await page.request.get(`${server.url}/api/records/weather`)).json();
    expect(days.map(({ value, author }: { value: object; author: string }) => ({ ...value, author }))).toMatchObject([
      { date: '2026-07-01', tminC: 10, tmaxC: 25, author: 'folder' },
      { date: '2026-07-02', tminC: 15, tmaxC: 27, author: 'this-machine' },
      { date: '2026-07-03', tminC: 12, tmaxC: 26, author: 'folder' },
    ]);

    // A file that leaves its unit open is not read, and says what it asks.
    writeFileSync(join(folder, 'yard-2.csv'), 'date,tmin,tmax\n2026-07-04,50,77\n');
    utimesSync(join(folder, 'yard-2.csv'), minuteAgo, minuteAgo);
    await page.getByRole('button', { name: 'Fetch now: station' }).click();
    await expect(row).toContainText('could not be read');
    await expect(row).toContainText('yard-2.csv');

    await page.getByRole('button', { name: 'Add a source' }).click();
    await form.getByLabel('Short name').fill('grid');
    await save();
    await page.getByRole('button', { name: 'Write a day of grid' }).click();
    await form.getByLabel('Day').fill('2026-07-01');
    await form.getByLabel('Lowest, °F').fill('53.6');
    await form.getByLabel('Highest, °F').fill('75.2');
    await save();
    const compared = page.locator('.weather-compare');
    await compared.getByLabel('Source', { exact: true }).selectOption('station');
    await compared.getByLabel('Compared with').selectOption('grid');
    await expect(compared).toContainText('1 day in common');
    await expect(compared.getByRole('row').filter({ hasText: 'Lowest of the day' })).toContainText('3.6 °F');
    await expect(compared.getByRole('row').filter({ hasText: 'Highest of the day' })).toContainText('−1.8 °F');
    expect(await accessibilityProblems(page)).toEqual([]);
    await expectNoSidewaysScroll(page);
  } finally {
    await server.stop();
  }
});
