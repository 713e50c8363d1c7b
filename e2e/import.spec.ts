/** A sheet as somebody keeps it, from the file to records and back: seen, asked about, imported, taken back. */
import { fileURLToPath } from 'node:url';
import { startEmptyServer } from './own-server.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, test } from './page.ts';

const fixture = (name: string) => fileURLToPath(new URL(`../packages/exchange/fixtures/${name}`, import.meta.url));

test('a sheet with words among its counts is understood, asked about once a word, imported, and taken back', async ({ page }) => {
  const server = await startEmptyServer();
  try {
    await page.goto(`${server.url}/program/data`);
    await page.getByRole('link', { name: 'Import a sheet' }).click();
    await page.getByLabel('Choose files').setInputFiles(fixture('words-in-cells.csv'));
    await expect(page.getByText(/^3 traps, 15 checks on 6 days/)).toBeVisible();
    await expect(page.locator('.sheet-cells td.as-word').filter({ hasText: 'trap down' })).toBeVisible();
    await expectNoSidewaysScroll(page);
    expect(await accessibilityProblems(page)).toEqual([]);

    const answer = (id: string) => page.locator(`[data-name="${id}"]`);
    await page.getByRole('button', { name: /^Take what is likely for 10/ }).click();
    await answer('insect').locator('select').selectOption('helicoverpa-zea');
    await answer('design').locator('select').selectOption('mesh-cone');
    await answer('crop').locator('select').selectOption('sweet-corn');
    await answer('farm').locator('input').fill('Hill farm');
    await page.getByRole('button', { name: 'See what it becomes' }).click();
    // The day on which the traps were hung is still open: it is named, and nothing is kept.
    await expect(page.getByRole('alert')).toContainText('hungOn');
    await answer('hungOn').locator('input').fill('2025-04-28');
    await page.getByRole('button', { name: 'See what it becomes' }).click();
    await expect(page.getByText('15 checks; 3 new traps; 3 new fields')).toBeVisible();
    await page.getByRole('button', { name: 'Import', exact: true }).click();
    await expect(page.getByText('21 records added')).toBeVisible();

    const checks = async () => (await (await page.request.get(`${server.url}/api/records/checks`)).json()) as object[];
    expect(await checks()).toHaveLength(15);
    // The next file of the same make has the answers already.
    await page.getByLabel('Choose files').setInputFiles(fixture('words-in-cells.csv'));
    await expect(answer('word:trap down').locator('select')).toHaveValue('down');

    await page.getByRole('button', { name: 'Take back all of words-in-cells.csv' }).click();
    await expect(page.getByText(/taken back by/)).toBeVisible();
    expect(
      (await checks()).filter(
        (said) => (said as { standing: string }).standing === 'current' && (said as { value: unknown }).value,
      ),
    ).toEqual([]);
  } finally {
    // A page that asks on would complain of the server that is gone.
    await page.goto('about:blank');
    await server.stop();
  }
});

test('what is no sheet is refused in words, and a workbook of weather is asked about by its units', async ({ page }) => {
  const server = await startEmptyServer();
  try {
    await page.goto(`${server.url}/program/data/import`);
    await page
      .getByLabel('Choose files')
      .setInputFiles({ name: 'x.xlsx', mimeType: 'application/zip', buffer: Buffer.from('PK\u0003\u0004 no workbook') });
    await expect(page.getByRole('alert')).toContainText('not a workbook');
    await page.getByLabel('Choose files').setInputFiles(fixture('clima.csv'));
    await expect(page.getByText(/^Weather of 20 days/)).toBeVisible();
    await page.locator('[data-name="temperatureUnit"] select').selectOption('C');
    await page.locator('[data-name="precipitationUnit"] select').selectOption('mm');
    await page.locator('[data-name="source"] input').fill('barn');
    await page.getByRole('button', { name: 'See what it becomes' }).click();
    await expect(page.getByText('20 days of weather')).toBeVisible();
  } finally {
    // A page that asks on would complain of the server that is gone.
    await page.goto('about:blank');
    await server.stop();
  }
});

test('several files are taken one after another, rows are pointed at, and a program folder comes back as its zip', async ({
  page,
}) => {
  const server = await startEmptyServer();
  try {
    await page.goto(`${server.url}/program/data/import`);
    const sheet = (name: string, rows: readonly string[]) => ({
      name,
      mimeType: 'text/csv',
      buffer: Buffer.from(['Trap,2025-06-02,2025-06-09', ...rows, ''].join('\n')),
    });
    const files = [
      sheet('north.csv', ['Oak gate,3,4', 'Pond,1,0', 'Week of the fair,4,4']),
      sheet('not-this.csv', ['Mill,9,8']),
      sheet('south.csv', ['Weir,2,2', 'Lock,0,1']),
    ];
    await page.getByLabel('Choose files').setInputFiles(files);
    await expect(page.getByText('File 1 of 3: north.csv.')).toBeVisible();
    await expect(page.getByText(/^3 traps, 6 checks/)).toBeVisible();
    await page.getByRole('button', { name: 'Point at row 4' }).click();
    await page.getByRole('button', { name: 'These are totals: leave them out' }).click();
    await expect(page.getByText(/^2 traps, 4 checks/)).toBeVisible();
    await expect(page.locator('.sheet-cells td.as-total').filter({ hasText: 'Week of the fair' })).toHaveCount(0);
    expect(await accessibilityProblems(page)).toEqual([]);

    const answer = (id: string) => page.locator(`[data-name="${id}"]`);
    const fill = async () => {
      await answer('insect').locator('select').selectOption('helicoverpa-zea');
      await answer('design').locator('select').selectOption('mesh-cone');
      await answer('crop').locator('select').selectOption('sweet-corn');
      await answer('farm').locator('input').fill('Hill farm');
      await answer('field').locator('input').fill('each-trap');
      await answer('condition').locator('select').selectOption('fit');
      await answer('hungOn').locator('input').fill('2025-05-26');
    };
    await fill();
    await page.getByRole('button', { name: 'See what it becomes' }).click();
    await page.getByRole('button', { name: 'Import', exact: true }).click();
    await expect(page.getByText('File 2 of 3: not-this.csv.')).toBeVisible();
    await page.getByRole('button', { name: 'Leave this file out' }).click();
    await expect(page.getByText('File 3 of 3: south.csv.')).toBeVisible();
    await expect(answer('insect').locator('select')).toHaveValue('helicoverpa-zea');
    await fill();
    await page.getByRole('button', { name: 'See what it becomes' }).click();
    await page.getByRole('button', { name: 'Import', exact: true }).click();
    const traps = async (url: string) =>
      ((await (await page.request.get(`${url}/api/records/traps`)).json()) as { value: { station: string } }[])
        .map(({ value }) => value.station)
        .sort();
    await expect.poll(() => traps(server.url)).toEqual(['Lock', 'Oak gate', 'Pond', 'Weir']);

    // The whole program, out as a zip and into another one.
    const zip = Buffer.from(await (await page.request.get(`${server.url}/api/program.zip`)).body());
    const other = await startEmptyServer();
    try {
      await page.goto(`${other.url}/program/data/import`);
      await page.getByLabel('Choose files').setInputFiles({ name: 'program.zip', mimeType: 'application/zip', buffer: zip });
      await expect(page.getByText('field: 4 · trap: 4 · check: 8')).toBeVisible();
      await page.getByRole('button', { name: 'Import', exact: true }).click();
      await expect(page.getByText('17 records added')).toBeVisible();
      expect(await traps(other.url)).toEqual(['Lock', 'Oak gate', 'Pond', 'Weir']);
      await page.getByRole('button', { name: 'Take back all of program.zip' }).click();
      await expect(page.getByText(/taken back by/)).toBeVisible();
      expect(await traps(other.url)).toEqual([]);
    } finally {
      await page.goto('about:blank');
      await other.stop();
    }
  } finally {
    await page.goto('about:blank');
    await server.stop();
  }
});
