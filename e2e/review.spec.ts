import type { QuestionsView, ReviewView } from '../packages/core/src/index.ts';
import { test } from './own-test.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll } from './page.ts';

test.describe.configure({ mode: 'serial' });

test('each lesson shows its figures or says what is missing, and passes axe', async ({ page, request }) => {
  const review: ReviewView = await (await request.get('/api/review')).json();
  await page.goto('/season/review');
  await expect(page.getByRole('heading', { name: 'Flights' })).toBeVisible();
  await expect(page.getByText(`Scout ${review.program.calls.given.scout} times`)).toBeVisible();
  const { answered } = review.program.calls;
  await expect(page.getByText(`${answered.inTime} answered in time, ${answered.late} late`)).toBeVisible();
  const late = review.program.rows.filter(({ outcome }) => outcome === 'late');
  expect(late.length).toBe(answered.late);
  for (const { answer } of late) expect(answer!.daysLate!).toBeGreaterThan(0);
  await expectNoSidewaysScroll(page);
  expect(await accessibilityProblems(page)).toEqual([]);
  await page.getByLabel('Farm').selectOption('Quernstead');
  await expect(page.getByRole('heading', { name: /^Quernstead/ })).toBeVisible();
  await page.getByLabel('A lure').fill('4');
  await expect(page.getByText(/^Unknown while/)).not.toContainText('A lure;');

  await page.getByRole('tab', { name: 'Designs side by side' }).click();
  await expect(page.getByText(/(wire|mesh) cone catches [\d.]+ times what (wire|mesh) cone does/)).toBeVisible();
  expect(await accessibilityProblems(page)).toEqual([]);
  await page.getByRole('tab', { name: 'Lure age' }).click();
  await expect(page.getByText('catch against a fresh lure').first()).toBeVisible();
  await page.getByRole('tab', { name: 'Years', exact: true }).click();
  await page.getByLabel('Insect').selectOption('ostrinia-nubilalis');
  await expect(page.getByText(/^2025 · .*half by/)).toBeVisible();
  await page.getByRole('radio', { name: 'Heat' }).check();
  await expect(page.getByText(/degree-days/).first()).toBeVisible();
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
});

test('a threshold is used only after a yes, then the advice names it, and undo takes it back', async ({ page, request }) => {
  const advised = async () => {
    const advice: { insect: string; field: string; rule: { id: string } | null }[] = await (
      await request.get('/api/advice')
    ).json();
    return advice.filter(({ rule }) => rule?.id.startsWith('learned')).map(({ field }) => field);
  };
  await page.goto('/season/review?part=infestation');
  await page.getByRole('button', { name: 'Use it as our own rule …' }).click();
  const asked = page.getByRole('dialog', { name: 'A rule of our own' });
  await expect(asked).toContainText('A decision is not a treatment.');
  await expect(asked).toContainText(/Our own: \d+ samples of plants/);
  expect(await accessibilityProblems(page)).toEqual([]);
  await asked.getByRole('button', { name: 'No, leave things as they are' }).click();
  expect(await advised()).toEqual([]);

  await page.getByRole('button', { name: 'Use it as our own rule …' }).click();
  await asked.getByRole('button', { name: 'Yes, make it our rule' }).click();
  await expect(page.getByText('The rule is in force.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Undone.')).toBeVisible();
  // A server that is slow has it a moment later: what is kept on the machine is told as undone at once.
  await expect.poll(advised).toEqual([]);

  await page.getByRole('button', { name: 'Use it as our own rule …' }).click();
  await asked.getByRole('button', { name: 'Yes, make it our rule' }).click();
  await expect(page.getByText(/made this a rule on/)).toBeVisible();
  const rules: { revisionId: string; recordId: string; value: { ruleId: string; source: string } }[] = await (
    await request.get('/api/records/rules')
  ).json();
  const own = rules.find(({ value }) => value.ruleId.startsWith('learned'))!;
  expect(await (await request.get('/api/advice')).text()).toContain(own.value.source);
});

test('a question opens its check, and once answered is not asked again', async ({ page, request, isMobile }) => {
  const questions = async (): Promise<QuestionsView> => (await request.get('/api/questions')).json();
  const [open] = (await questions()).open;
  expect(open?.question).toMatchObject({ kind: 'unlikely-count', checks: [{ trapId: 'MA3-ON-26' }] });
  await page.goto('/');
  // A phone has the questions on its bar; a desk has them within their place.
  if (isMobile) await page.locator('a[href^="/questions"]').last().click();
  else {
    await page.getByRole('link', { name: 'Fields & traps 1 question or conflict to answer' }).click();
    await page.getByRole('link', { name: 'Questions 1' }).click();
  }
  await expect(page.getByRole('heading', { name: 'An unlikely count' })).toBeVisible();
  await page.getByText('Evidence', { exact: true }).click();
  await page.getByRole('button', { name: /^Correct it: the check of MA3-ON-26/ }).click();
  await expect(page.getByRole('dialog', { name: 'Edit the check' })).toBeVisible();
  await page.keyboard.press('Escape');
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
  await page.getByRole('button', { name: 'It is right' }).click();
  await expect(page.getByRole('heading', { name: 'Nothing to ask' })).toBeVisible();
  expect((await questions()).open).toEqual([]);
  await page.reload();
  await expect(page.getByText(/it is right$/)).toBeVisible();
  await page.getByRole('button', { name: 'Ask again' }).click();
  await expect(page.getByRole('button', { name: 'It is right' })).toBeVisible();
});

test('speaks Spanish throughout', { tag: '@desk' }, async ({ browser, server }) => {
  const context = await browser.newContext({ locale: 'es-MX', baseURL: server.url });
  const page = await context.newPage();
  await page.goto('/season/review?part=infestation');
  await expect(page.getByRole('heading', { name: 'Balance', level: 1 })).toBeVisible();
  await expect(page.getByText(/la captura habla del cultivo/i)).toBeVisible();
  await page.goto('/questions');
  await expect(page.getByRole('heading', { name: 'Un conteo poco probable' })).toBeVisible();
  await context.close();
});
