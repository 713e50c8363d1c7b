import { randomBytes } from 'node:crypto';
import type { APIRequestContext, Page } from '@playwright/test';
import { test } from './own-test.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, fieldOf, partOf, record } from './page.ts';

interface Said {
  readonly revisionId: string;
  readonly recordId: string;
  readonly value: Record<string, unknown> | null;
  readonly standing: string;
}

/** UUIDv7 (RFC 9562), as a phone makes them. */
function uuidv7(): string {
  const hex = Date.now().toString(16).padStart(12, '0') + randomBytes(10).toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-7${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

const historyOf = async (request: APIRequestContext, kind: string, key: string): Promise<Said[]> =>
  (await request.get(`/api/records/${kind}/${encodeURIComponent(key)}/history`)).json();

/** Somebody else's revision, as another machine would send it. */
async function say(request: APIRequestContext, baseURL: string, revision: object): Promise<void> {
  const answer = await request.post('/api/revisions', {
    headers: { origin: baseURL },
    data: { sentAt: new Date().toISOString(), revisions: [revision] },
  });
  expect(answer.status()).toBe(200);
  expect((await answer.json()).refused).toEqual([]);
}

const recordButton = (page: Page) => page.getByRole('button', { name: 'Record', exact: true });

test('a stage recorded from the field page stands in its season, and its history tells who and when', async ({ page, request }, {
  project,
}) => {
  const fieldId = project.name === 'phone' ? 'tollyacre-garden' : 'wetherbank-ram';
  await page.goto(`/fields/${fieldId}`);
  await record(page, 'Stage seen');
  const form = page.getByRole('dialog', { name: 'Record a stage' });
  await expect(form).toContainText('Keep off a treated field');
  await form.getByLabel('Seen on').fill('2026-07-13');
  await form.getByRole('radio').last().check();
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(form).toHaveCount(0);
  await expect(page.getByText('Saved: stage')).toBeVisible();
  const stages = (await fieldOf(request, fieldId)).stages;
  expect(stages.map(({ observedOn }) => observedOn)).toContain('2026-07-13');
  await page
    .getByRole('button', { name: /^History of stage .*July 13/ })
    .first()
    .click();
  const history = page.getByRole('dialog', { name: /^History of stage/ });
  await expect(history).toContainText('This machine');
  await expect(history).toContainText('holds now');
  expect(await accessibilityProblems(page)).toEqual([]);
  await history.getByRole('button', { name: 'Remove' }).click();
  await expect(page.getByText('Removed: stage')).toBeVisible();
  expect((await fieldOf(request, fieldId)).stages.map(({ observedOn }) => observedOn)).not.toContain('2026-07-13');
});

test('a sample is asked for as the rule asks for it', { tag: '@desk' }, async ({ page, request }) => {
  const fieldId = 'quernstead-kiln';
  const sampledOn = '2026-07-12';
  await page.goto(`/fields/${fieldId}`);
  await record(page, 'Sample');
  const form = page.getByRole('dialog', { name: 'Record a sample' });
  await form.getByLabel('Insect').first().selectOption('helicoverpa-zea');
  await expect(form).toContainText('Examine 100 ears: 20 in each of 5 places.');
  await form.getByLabel('Sampled on').fill(sampledOn);
  await form.getByRole('radio', { name: 'ears' }).check({ force: true });
  await form.getByLabel('Examined').fill('100');
  await form.getByLabel('Infested').fill('120');
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(form.locator('.faults')).toContainText('120 infested of 100 examined');
  await form.getByLabel('Infested').fill('3');
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Saved: sample')).toBeVisible();
  const insect = (await fieldOf(request, fieldId)).insects.find((each) => each.insect.id === 'helicoverpa-zea')!;
  expect(insect.samples).toContainEqual({ sampledOn, kind: 'ears', examined: 100, infested: 3, total: null, photo: null });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Undone.')).toBeVisible();
});

test.describe('without a server', () => {
  // The browser itself reports refused connections in the console.
  test.use({ mayComplain: true });

  test('a treatment keeps the label’s figures, without a server too, and is sent when there is one', async ({
    page,
    context,
    request,
  }, { project }) => {
    const fieldId = project.name === 'phone' ? 'pightle-little' : 'yarrowfold-top';
    await page.goto(`/fields/${fieldId}`);
    await expect(recordButton(page)).toBeVisible();
    await page.waitForLoadState('networkidle');
    await context.route('**/api/**', (route) => route.abort('connectionrefused'));
    await record(page, 'Treatment');
    const form = page.getByRole('dialog', { name: 'Record a treatment' });
    await expect(form).toContainText('read them there');
    await expect(form).toContainText('The product label is the law');
    await form.getByLabel('Insect').selectOption('helicoverpa-zea');
    await form.getByLabel('Applied on').fill('2026-07-14');
    await form.getByLabel('Product', { exact: false }).first().fill('Product T (invented)');
    await form.getByLabel('Protects, days').fill('5');
    await form.getByLabel('Re-entry, hours').fill('24');
    await form.getByRole('button', { name: 'Save' }).click();
    await expect(page.getByText('Kept on this machine until it can be sent.')).toBeVisible();
    await expect(page.locator('.field-records .not-sent')).toHaveText('1 not yet sent');
    await context.unroute('**/api/**');
    await page.evaluate(() => dispatchEvent(new Event('online')));
    const key = `${fieldId}|helicoverpa-zea|2026-07-14|Product T (invented)`;
    await expect.poll(async () => (await historyOf(request, 'treatments', key)).length).toBe(1);
    expect((await historyOf(request, 'treatments', key))[0]!.value).toMatchObject({
      protectsDays: 5,
      reentryHours: 24,
      preharvestDays: null,
    });
    await page.goto(`/fields/${fieldId}`);
    await page
      .getByRole('button', { name: /Product T/ })
      .first()
      .click();
    await page.getByRole('dialog').getByRole('button', { name: 'Remove' }).click();
    await expect(page.getByText('Removed: treatment')).toBeVisible();
  });
});

test('a check is corrected, its change is shown, and one click restores what was before', { tag: '@desk' }, async ({
  page,
  request,
}) => {
  const trapId = 'WE1-HZ-26';
  await page.goto(`/traps/${trapId}`);
  const first = page.getByRole('group', { name: 'Checks' }).locator('tbody tr').first();
  const before = (await first.locator('td:nth-child(2)').textContent())!;
  await first.getByRole('button', { name: /^History of check/ }).click();
  const panel = page.getByRole('dialog');
  await panel.getByRole('button', { name: 'Edit' }).click();
  await panel.getByLabel('Target moths').fill('77');
  await panel.getByRole('button', { name: 'Save' }).click();
  await expect(panel.locator('.version').first()).toContainText('Target moths');
  await expect(panel.locator('.version').first()).toContainText('77');
  await expect(panel.locator('.version').first().locator('.was')).toHaveText(before);
  await expect(first.locator('td:nth-child(2)')).toHaveText('77');
  await panel
    .getByRole('button', { name: /^Restore this/ })
    .first()
    .click();
  await expect(page.getByText('Restored: check')).toBeAttached();
  await expect(first.locator('td:nth-child(2)')).toHaveText(before);
  const key = (await historyOf(request, 'checks', `${trapId}|2026-07-14|1`)).length;
  expect(key === 0 || key >= 3).toBe(true);
  await expectNoSidewaysScroll(page);
});

test('two people on one record: both are shown, one is kept, the other can take its place', async ({ page, request, baseURL }, {
  project,
}) => {
  const fieldId = project.name === 'phone' ? 'marlterrace-foot' : 'dunnoch-clay';
  const [field] = await historyOf(request, 'fields', fieldId);
  const { revisionId: baseRevisionId, recordId, value } = field!;
  const edit = (harvestOn: string, at: string) => ({
    revisionId: uuidv7(),
    recordId,
    kind: 'fields',
    baseRevisionId,
    at,
    value: { ...value, harvestOn },
  });
  await say(request, baseURL!, edit('2026-08-21', new Date(Date.now() - 60_000).toISOString()));
  await say(request, baseURL!, edit('2026-08-22', new Date().toISOString()));
  await page.goto('/fields');
  await page.getByRole('link', { name: /^Conflicts/ }).click();
  const block = page.locator('.conflict').filter({ hasText: String(value!.name) });
  await expect(block.locator('.side')).toHaveCount(2);
  await expect(block.locator('.side').first()).toContainText('August 22');
  await expect(block.locator('.differs dd').first()).toContainText('August 22');
  await expect(block.locator('.side').nth(1)).toContainText('August 21');
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
  await block
    .locator('.side')
    .nth(1)
    .getByRole('button', { name: /^Keep this/ })
    .click();
  await expect(block).toHaveCount(0);
  const held = async () =>
    (await historyOf(request, 'fields', fieldId)).find(({ standing }) => standing === 'current')!.value!.harvestOn;
  expect(await held()).toBe('2026-08-21');
  await page.getByRole('button', { name: 'Keep the other instead' }).click();
  await expect.poll(held).toBe('2026-08-22');
  expect((await historyOf(request, 'fields', fieldId)).length).toBeGreaterThanOrEqual(5);
});

test('a form that is closed gives the focus back to the menu that opened it', { tag: '@desk' }, async ({ page }) => {
  await page.goto('/fields/quernstead-kiln');
  for (const name of ['Stage seen', 'Sample', 'Treatment', 'Monthly normals', 'Field, planting, harvest']) {
    await record(page, name);
    await expect(page.getByRole('dialog')).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(recordButton(page)).toBeFocused();
  }
});

test('earlier seasons lie behind the season, and as a table', { tag: '@desk' }, async ({ page, request }) => {
  const view = await fieldOf(request, 'quernstead-kiln');
  const insect = view.insects.find((each) => each.insect.id === 'helicoverpa-zea')!;
  expect(insect.earlierSeasons.map(({ year }) => year)).toEqual([2025, 2024]);
  await page.goto('/fields/quernstead-kiln#helicoverpa-zea');
  const section = partOf(page, 'helicoverpa-zea');
  await expect(section.locator('.earlier-line')).toHaveCount(2);
  await section.getByText('Table of earlier seasons').click();
  const points = insect.earlierSeasons.flatMap((season) => season.points);
  await expect(section.getByRole('group', { name: /^Table of earlier seasons/ }).locator('tbody tr')).toHaveCount(points.length);
});
