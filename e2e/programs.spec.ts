import type { WeekView } from '@duskwatch/core';
import { startEmptyServer, startServer } from './own-server.ts';
import { accessibilityProblems, expect, record, test } from './page.ts';

// A refusal that is shown to the reader, and a server that begins anew, are noted in the console as well.
test.use({ mayComplain: true });

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

test('a backup brought back in the browser takes the place of the program, which is set aside', async ({ page }) => {
  const server = await startEmptyServer();
  try {
    await page.goto(`${server.url}/program/settings`);
    await page.getByLabel('Name', { exact: true }).fill('Hill Growers');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await expect(page.locator('.masthead-program')).toContainText('Hill Growers');
    await page.goto(`${server.url}/program/data`);
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Make a backup (zip)' }).click();
    const backup = await (await coming).path();

    await page.goto(`${server.url}/program/settings`);
    await page.getByLabel('Name', { exact: true }).fill('Valley Growers');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await expect(page.locator('.masthead-program')).toContainText('Valley Growers');

    await page.goto(`${server.url}/program/data`);
    const restore = page.locator('.restore');
    await restore
      .getByLabel('Choose a backup (zip)')
      .setInputFiles({ name: 'a.zip', mimeType: 'application/zip', buffer: Buffer.from('moths') });
    await expect(restore.locator('.faults')).toContainText('duskwatch.sqlite');
    await restore.getByLabel('Choose a backup (zip)').setInputFiles(backup);
    await expect(restore).toContainText('It holds Hill Growers');
    expect(await accessibilityProblems(page)).toEqual([]);
    await restore.getByRole('button', { name: 'Put it in the place of this program' }).click();
    await expect(restore).toContainText('Brought back.');
    await restore.getByRole('button', { name: 'Open it' }).click();
    await expect(page.locator('.masthead-program')).toContainText('Hill Growers');
  } finally {
    await server.stop();
  }
});

test('another short name for a field is followed by all that names it', async ({ page }) => {
  const server = await startServer();
  try {
    const { fields } = (await (await page.request.get(`${server.url}/api/week`)).json()) as WeekView;
    const { fieldId, name } = fields[0]!;
    await page.goto(`${server.url}/fields/${fieldId}`);
    await record(page, 'Field, planting, harvest');
    await page.getByRole('button', { name: 'Change the short name' }).click();
    const form = page.getByRole('dialog');
    await form.getByLabel('Short name').fill(fields[1]!.fieldId);
    await form.getByRole('button', { name: 'Change it' }).click();
    await expect(form.locator('.faults')).toBeVisible();
    await form.getByLabel('Short name').fill('renamed');
    expect(await accessibilityProblems(page)).toEqual([]);
    await form.getByRole('button', { name: 'Change it' }).click();
    await expect(page).toHaveURL(`${server.url}/fields/renamed`);
    await expect(page.getByRole('heading', { level: 1 })).toContainText(name);
    const traps = await (await page.request.get(`${server.url}/api/records/traps`)).json();
    expect(JSON.stringify(traps)).not.toContain(`"${fieldId}"`);
  } finally {
    await server.stop();
  }
});
