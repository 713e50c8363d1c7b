import { catalogue, type RulesView, ruleById } from '../packages/core/src/index.ts';
import { test } from './own-test.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll } from './page.ts';

interface Said {
  readonly value: { readonly region?: string | null; readonly chosenRules?: readonly string[] | null };
}

test('the region and a rule chosen under Settings are the program’s, and say so to whoever reads it next', {
  tag: '@desk',
}, async ({ page, request }) => {
  const settings = async (): Promise<Said['value']> =>
    ((await (await request.get('/api/records/settings')).json()) as Said[])[0]!.value;
  await page.goto('/program/rules');
  await expect(page.getByRole('heading', { name: 'Region and rules' })).toBeVisible();
  const region = page.getByLabel('Region of the program');
  await region.selectOption('Maine');
  await expect.poll(async () => (await settings()).region).toBe('Maine');
  await expect(region).toHaveValue('Maine');

  const armyworm = page.getByLabel('Catch of fall armyworm in sweet corn');
  await armyworm.selectOption({ label: '3 per week (Maine): sends people to look' });
  await expect.poll(async () => (await settings()).chosenRules).toEqual(['sweet-corn-fall-armyworm-catch-maine']);
  await armyworm.selectOption({ label: 'as the region says' });
  await expect.poll(async () => (await settings()).chosenRules ?? []).toEqual([]);
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
});

test('a rule of one’s own speaks of an insect that the catalogue does not hold, and can be taken back', async ({
  page,
  request,
}) => {
  const own = async () =>
    ((await (await request.get('/api/records/rules')).json()) as { value: Record<string, unknown> }[])
      .map(({ value }) => value)
      .find(({ insect }) => insect === 'acleris-minuta');
  await page.goto('/program/rules');
  await page.getByRole('button', { name: 'Add a rule of your own' }).click();
  const form = page.getByRole('dialog', { name: 'Add a rule of your own' });
  await form.locator('[data-name="crop"] input').fill('sweet-corn');
  await form.locator('[data-name="insect"] select').selectOption({ label: 'Another insect, by its scientific name …' });
  await form.locator('[data-name="insect"] input').fill('Acleris minuta');
  await form.locator('[data-name="threshold"] input').fill('3');
  await form.getByRole('radio', { name: 'night' }).check();
  await form.getByRole('radio', { name: 'send people to look' }).check();
  await form.getByRole('button', { name: 'Save', exact: true }).click();
  const row = page.locator('.own-rules tbody tr').filter({ hasText: 'Acleris minuta' });
  await expect(row).toContainText('3 per night');
  await expect(row).toContainText('This machine');
  expect(await own()).toMatchObject({ crop: 'sweet-corn', threshold: 3, per: 'night', may: 'send-scouting' });
  expect(await accessibilityProblems(page, '.own-rules')).toEqual([]);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(row).toHaveCount(0);
  expect(await own()).toBeUndefined();
});

test('a rule is switched off with a reason, speaks for no field, is named in the evidence, and comes back', {
  tag: '@desk',
}, async ({ page, request }) => {
  const { speaking } = (await (await request.get('/api/rules')).json()) as RulesView;
  const { ruleId, fields } = speaking.find(({ fields: of }) => of.some(({ verb }) => verb === 'decide'))!;
  const rule = ruleById(ruleId)!;
  await page.goto('/program/rules');
  // The program's own rules stand before the published ones.
  const ownRules = ((await (await request.get('/api/records/rules')).json()) as unknown[]).length;
  const index = ownRules + catalogue.rules.findIndex(({ id }) => id === ruleId);
  const own = page.locator('.all-rules-table tbody tr').nth(index);
  await expect(own).toContainText(`${fields.length} field`);
  await own.getByRole('button', { name: /^Switch off/ }).click();
  const sheet = page.getByRole('dialog', { name: 'Switch a rule off' });
  await sheet.getByRole('button', { name: 'Switch off' }).click();
  await expect(sheet.getByText('Say why')).toBeVisible();
  await sheet.getByLabel('Why').fill('agreed with our adviser');
  await sheet.getByRole('button', { name: 'Switch off' }).click();
  await expect(own).toContainText('off: agreed with our adviser');
  await expect(own).toContainText('no field today');
  const { fieldId, insect } = fields.find(({ verb }) => verb === 'decide')!;
  const advice = await (await request.get(`/api/advice/${fieldId}/${insect}`)).json();
  expect(advice.because).toContainEqual({ kind: 'rule-off', ruleId, region: rule.region, reason: 'agreed with our adviser' });
  expect(await accessibilityProblems(page, '.all-rules')).toEqual([]);
  await own.getByRole('button', { name: /^Switch on/ }).click();
  await expect(own).toContainText('yes');
  await expect
    .poll(async () => ((await (await request.get('/api/rules')).json()) as RulesView).speaking.map((each) => each.ruleId))
    .toContain(ruleId);
});
