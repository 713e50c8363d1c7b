import { PASSWORD } from './accounts.ts';
import { FIRST_CODE, startEmptyServer } from './own-server.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, test, weekOf } from './page.ts';

// A session that is not there yet is answered with 401, which browsers note in the console.
test.use({ mayComplain: true });

test('from the first start to the first advice, with its evidence', async ({ page, playwright }) => {
  const server = await startEmptyServer('--accounts');
  try {
    await page.goto(server.url);
    await page.getByLabel('Code from the terminal').fill(FIRST_CODE.exec(server.printed())![0]);
    await page.getByLabel('Name').fill('Ida Brook');
    await page.getByLabel('Password of your choice').fill(PASSWORD);
    await page.getByRole('button', { name: 'Become the coordinator' }).click();
    await expect(page.getByRole('heading', { name: 'Your first advice' })).toBeVisible();
    await expect(page.getByRole('link', { name: 'Import a sheet' })).toBeVisible();
    expect(await accessibilityProblems(page)).toEqual([]);

    const request = await playwright.request.newContext({
      baseURL: server.url,
      storageState: await page.context().storageState(),
    });
    const { on } = await weekOf(request);
    const before = (days: number) => new Date(Date.parse(on) - days * 86_400_000).toISOString().slice(0, 10);
    const form = page.getByRole('dialog');
    const box = (name: string) => form.getByLabel(name, { exact: false }).first();
    const save = async () => {
      await form.getByRole('button', { name: 'Save', exact: true }).click();
      await expect(form).toHaveCount(0);
    };

    await page.getByRole('button', { name: 'Add a field' }).click();
    await box('Farm').fill('Brook');
    await box('Field name').fill('Brook Meadow');
    await box('Crop').fill('sweet corn');
    await expect(box('Short name')).toHaveValue('brook-meadow');
    await save();

    await page.getByRole('button', { name: 'Record the stage' }).click();
    await form.getByRole('radio', { name: 'silk', exact: true }).check();
    await save();

    await page.getByRole('button', { name: 'Add a trap' }).click();
    await box('Station').fill('Brook gate');
    await form.getByLabel('Insect').selectOption('helicoverpa-zea');
    await expect(box('Trap name')).toHaveValue('brook-gate-hz');
    await form.getByRole('radio', { name: /mesh cone/i }).check();
    await box('Hung on').fill(before(7));
    await expect(form.getByRole('checkbox', { name: 'Brook Meadow' })).toBeChecked();
    await save();

    await page.getByRole('button', { name: 'Record the lure' }).click();
    await expect(box('Placed on')).toHaveValue(before(7));
    await box('Lasts, days').fill('28');
    await save();

    await page.getByRole('button', { name: 'Write the check' }).click();
    await box('Target moths').fill('63');
    await save();

    // No weather yet, and no place: the guide goes with the first advice all the same.
    await expect(page.getByRole('heading', { name: 'Your first advice' })).toHaveCount(0);
    const cell = page.locator('.cell');
    await expect(cell).toHaveCount(1);
    await expect(cell).toContainText('Decide');
    await cell.click();
    const evidence = page.locator('.open-evidence');
    await expect(evidence).toContainText('licensed adviser');
    await evidence.getByText('1 check behind this rate').click();
    await expect(evidence.getByRole('row').filter({ hasText: 'brook-gate-hz' })).toContainText('63');
    await expectNoSidewaysScroll(page);
  } finally {
    await server.stop();
  }
});

test('the guide stays while something is missing, and a field is put on the map from it', async ({ page }) => {
  const server = await startEmptyServer();
  try {
    await page.goto(server.url);
    const form = page.getByRole('dialog');
    const add = async (name: string) => {
      await page.getByRole('button', { name: 'Add a field' }).click();
      await form.getByLabel('Farm').fill('Brook');
      await form.getByLabel('Field name').fill(name);
      await form.getByLabel('Crop').fill('sweet corn');
      await form.getByRole('button', { name: 'Save', exact: true }).click();
      await expect(form).toHaveCount(0);
    };
    await add('Brook Meadow');
    // A second of the same name gets a short name of its own.
    await add('Brook Meadow');
    const fields = async () =>
      (await (await page.request.get(`${server.url}/api/records/fields`)).json()) as {
        value: { fieldId: string; latitude: number | null; longitude: number | null };
      }[];
    expect((await fields()).map(({ value }) => value.fieldId).sort()).toEqual(['brook-meadow', 'brook-meadow-2']);
    const step = (title: string) => page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: title }) });
    await expect(step('Where they are')).toContainText('0 of 2');
    await expect(step('Weather')).toContainText('0 of 2');
    await step('Where they are').getByRole('link', { name: 'Open the map' }).click();
    await page.getByRole('button', { name: 'Put on the map: Brook Meadow' }).first().click();
    const ground = page.locator('.ground');
    await expect(ground).toContainText('Move the map until Brook Meadow is under the cross');
    expect(await accessibilityProblems(page)).toEqual([]);
    await ground.getByRole('button', { name: 'It is here' }).click();
    await expect(page.getByRole('button', { name: 'Put on the map: Brook Meadow' })).toHaveCount(1);
    const placed = (await fields()).filter(({ value }) => value.latitude !== null);
    // The middle of what is shown at first.
    expect(placed).toHaveLength(1);
    expect(Math.abs(placed[0]!.value.longitude! - 12.5)).toBeLessThan(1);
    await page.goto(server.url);
    await expect(step('Where they are')).toContainText('1 of 2');
  } finally {
    await page.goto('about:blank');
    await server.stop();
  }
});
