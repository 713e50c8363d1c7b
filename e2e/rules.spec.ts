import { test } from './own-test.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll } from './page.ts';

interface Said {
  readonly value: { readonly region?: string | null; readonly chosenRules?: readonly string[] | null };
}

test('the region and a rule chosen under Settings are the program’s, and say so to whoever reads it next', async ({
  page,
  request,
}, { project }) => {
  const settings = async (): Promise<Said['value']> =>
    ((await (await request.get('/api/records/settings')).json()) as Said[])[0]!.value;
  await page.goto('/program/rules');
  await expect(page.getByRole('heading', { name: 'Region and rules' })).toBeVisible();
  const region = page.getByLabel('Region of the program');
  const wanted = project.name === 'phone' ? 'New Hampshire' : 'Maine';
  await region.selectOption(wanted);
  await expect.poll(async () => (await settings()).region).toBe(wanted);
  await expect(region).toHaveValue(wanted);

  const armyworm = page.getByLabel('Catch of fall armyworm in sweet corn');
  await armyworm.selectOption({ label: '3 per week (Maine): sends people to look' });
  await expect.poll(async () => (await settings()).chosenRules).toEqual(['sweet-corn-fall-armyworm-catch-maine']);
  await armyworm.selectOption({ label: 'as the region says' });
  await expect.poll(async () => (await settings()).chosenRules ?? []).toEqual([]);
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
});
