import { readFileSync } from 'node:fs';
import { test } from './own-test.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll } from './page.ts';

test('labels are told before they are printed, and come as a PDF', async ({ page }) => {
  await page.goto('/fields?insect=helicoverpa-zea');
  await page.getByRole('button', { name: 'Print labels' }).click();
  const form = page.getByRole('dialog', { name: 'Labels and checklists' });
  await form.getByRole('combobox', { name: /^Sheet/ }).selectOption('a4-2x4');
  await form.getByLabel('First label').fill('5');
  await form.getByLabel('How to reach the coordinator').fill('Ida Brook, 555 0100');
  await expect(form).toContainText(/\d+ labels? on \d+ sheets?/);
  await expect(form).toContainText('which no phone can reach');
  expect(await accessibilityProblems(page)).toEqual([]);
  const [labels] = await Promise.all([
    page.waitForEvent('download'),
    form.getByRole('button', { name: 'Download the labels' }).click(),
  ]);
  expect(labels.suggestedFilename()).toBe('trap-labels.pdf');
  expect(
    readFileSync(await labels.path())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');
  const [lists] = await Promise.all([
    page.waitForEvent('download'),
    form.getByRole('button', { name: 'Download the checklists' }).click(),
  ]);
  expect(
    readFileSync(await lists.path())
      .subarray(0, 5)
      .toString(),
  ).toBe('%PDF-');
});

test('the records come as a folder and a workbook, and a backup with its sums, each under the name of the program', async ({
  page,
}) => {
  await page.goto('/program/data');
  for (const [button, name, inside] of [
    ['Folder of tables (zip)', /^duskwatch-[\w-]+-2026-07-15\.zip$/, 'checks.csv'],
    ['Workbook (XLSX)', /^duskwatch-[\w-]+-2026-07-15\.xlsx$/, 'xl/workbook.xml'],
    ['Make a backup (zip)', /^duskwatch-backup-[\w-]+-2026-07-15\.zip$/, 'SHA256SUMS'],
  ] as const) {
    const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: button }).click()]);
    expect(file.suggestedFilename()).toMatch(name);
    // Names of what a zip holds stand in it as they are.
    expect(readFileSync(await file.path()).includes(inside)).toBe(true);
    await expect(page.getByText(`Saved: ${file.suggestedFilename()}`)).toBeVisible();
  }
});

test('a calendar address is made, shown once, and taken back', async ({ page, request }) => {
  await page.goto('/program/data');
  await page.getByRole('button', { name: 'Make a calendar address' }).click();
  const shown = page.getByLabel('Subscribe to this address');
  await expect(shown).toHaveValue(/\/calendar\/[\w-]{43}\.ics$/);
  const address = await shown.inputValue();
  const calendar = await request.get(address);
  expect(calendar.status()).toBe(200);
  expect(await calendar.text()).toMatch(/^BEGIN:VCALENDAR\r\n[\s\S]*SUMMARY:Check traps: /);
  await page.reload();
  await expect(page.getByRole('button', { name: 'End it' })).toBeVisible();
  await expect(shown).toHaveCount(0);
  await page.getByRole('button', { name: 'End it' }).click();
  await expect(page.getByText('You have no calendar address.')).toBeVisible();
  expect((await request.get(address)).status()).toBe(404);
});

test('rounds are planned for two scouts, with their bound, and handed over to the phone', async ({ page }) => {
  await page.goto('/rounds');
  await page.getByLabel('Days').selectOption('3');
  await page.getByRole('group', { name: 'Scout 1' }).getByLabel('Name').fill('Ana');
  await page.getByRole('group', { name: 'Scout 1' }).getByLabel('Hours').fill('3');
  await page.getByRole('button', { name: 'Add a scout' }).click();
  await page
    .getByRole('checkbox', { name: /before noon/ })
    .first()
    .check();
  await page.getByRole('button', { name: 'Plan the rounds' }).click();
  const sheet = page.locator('.round-sheet', { hasText: 'Ana, ' }).first();
  await expect(sheet).toContainText(/At most .* longer than the shortest|No drive past these stops is shorter/);
  const stops = await sheet.locator('tbody tr').count();
  expect(stops).toBeGreaterThan(0);
  await expectNoSidewaysScroll(page);
  expect(await accessibilityProblems(page)).toEqual([]);
  await sheet.getByRole('link', { name: 'Open on this device' }).click();
  await expect(page.getByRole('heading', { name: 'Planned round' })).toBeVisible();
  await expect(page.locator('.stops > li')).toHaveCount(stops);
  await page.getByRole('button', { name: 'Start the round' }).click();
  await expect(page.locator('.stops > li')).toHaveCount(stops);
});
