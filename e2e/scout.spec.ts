import type { APIRequestContext, Page } from '@playwright/test';
import type { SampleRecord, ScoutingView } from '../packages/core/src/index.ts';
import { freshTest as test } from './own-test.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, fieldOf } from './page.ts';

/** Scouting writes, and works without a network, which a console complains of. */
test.use({ mayComplain: true });

const scoutingOf = async (request: APIRequestContext): Promise<ScoutingView> => (await request.get('/api/scouting')).json();
const samplesOf = async (request: APIRequestContext): Promise<SampleRecord[]> =>
  ((await (await request.get('/api/records/samples')).json()) as { value: SampleRecord }[]).map(({ value }) => value);

/** A field that may be entered, with an insect that is not yet to be decided on and a rule that speaks now. */
async function target(request: APIRequestContext) {
  const view = await scoutingOf(request);
  for (const field of view.fields) {
    const pair = field.pairs.find(({ verb, rules }) => ['scout', 'watch', 'blind'].includes(verb) && rules[0]?.match === 'now');
    const plan = view.plans.find(({ ruleId }) => ruleId === pair?.rules[0]?.ruleId);
    if (pair && plan && plan.sign !== 'egg-masses' && field.keepOut.length === 0) return { field, pair, plan };
  }
  throw new Error('the demo has no field to scout');
}

const address = (field: string, insect: string) => `/scout?field=${encodeURIComponent(field)}&insect=${insect}`;
const answer = (page: Page) => page.locator('.scout-standing .scout-answer');
const tally = (page: Page) => page.locator('.scout-tally');

async function open(page: Page, url: string) {
  await page.goto(url);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
}

async function tap(page: Page, name: RegExp, times: number) {
  for (let i = 0; i < times; i++) await page.getByRole('button', { name }).click();
}

test('a field walked without signal, with a reload and a dead battery on the way, is judged, sent later, and the advice follows', async ({
  page: first,
  context,
  request,
}) => {
  const { field, pair, plan } = await target(request);
  await open(first, '/scout');
  await context.setOffline(true);
  let page = first;
  await page.reload();
  const section = page.locator('section').filter({ has: page.getByRole('heading', { name: field.name }) });
  await section.getByRole('button').nth(field.pairs.indexOf(pair)).click();
  await expect(page.getByRole('heading', { name: 'Where to walk' })).toBeVisible();
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
  await page.getByRole('button', { name: 'Start', exact: true }).click();

  const marked = /^(Infested|With eggs|Damaged)$/;
  await tap(page, /^Clean$/, 7);
  await expect(answer(page)).toHaveText('Go on');
  await expect(page.locator('.scout-standing')).toContainText(`${plan.maxSamples - 7} `);
  await page.reload();
  await expect(tally(page)).toHaveText(/^7 /);
  expect(await accessibilityProblems(page)).toEqual([]);
  await expectNoSidewaysScroll(page);
  await page.close();
  page = await context.newPage();
  await page.goto(address(field.fieldId, pair.insect));
  await expect(tally(page)).toHaveText(/^7 /);

  await page.getByRole('button', { name: marked }).focus();
  let taps = 0;
  while ((await answer(page).textContent()) === 'Go on' && taps++ < plan.maxSamples) {
    await page.keyboard.press('Enter');
    await expect(tally(page)).toHaveText(new RegExp(`^${7 + taps} `));
  }
  await expect(answer(page)).toHaveText('Stop: above');
  await expect(page.locator('.scout-standing')).toContainText('A decision is due, with the grower and a licensed adviser.');
  await page.getByRole('button', { name: 'Take back the last' }).click();
  await expect(answer(page)).toHaveText('Go on');
  await page.getByRole('button', { name: marked }).click();
  await page.getByRole('button', { name: 'Save the sample' }).click();
  await expect(page.getByRole('heading', { name: /^Last result/ })).toBeVisible();
  await expect(page.getByRole('link', { name: /1 kept here, not sent$/ })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(answer(page)).toHaveText('Stop: above');
  await page.getByRole('button', { name: 'Save the sample' }).click();
  await expect(page.getByRole('heading', { name: /^Last result/ })).toBeVisible();
  const before = (await samplesOf(request)).length;

  await context.setOffline(false);
  await expect(page.getByRole('link', { name: /All sent$/ })).toBeVisible();
  const samples = await samplesOf(request);
  expect(samples).toHaveLength(before + 1);
  const kept = samples.find((each) => each.fieldId === field.fieldId && each.insect === pair.insect && each.kind === plan.unit);
  expect(kept).toMatchObject({ unitsExamined: 7 + taps, unitsInfested: taps, totalCount: null });
  const after = (await fieldOf(request, field.fieldId)).insects.find(({ insect }) => insect.id === pair.insect)!;
  expect(after.advice.verb).toBe('decide');
  expect(after.advice.because[0]).toMatchObject({ kind: 'sample', verdict: 'above', examined: 7 + taps });
});

test('a scout who reads Spanish is led and answered in Spanish', async ({ page, request }) => {
  const { field, pair, plan } = await target(request);
  await page.addInitScript(() => localStorage.setItem('duskwatch.language', 'es'));
  await open(page, address(field.fieldId, pair.insect));
  await expect(page.getByRole('heading', { name: 'Por dónde caminar' })).toBeVisible();
  await page.getByRole('button', { name: 'Empezar' }).click();
  await tap(page, /^Sin nada$/, 1);
  await expect(answer(page)).toHaveText('Siga');
  await expect(page.locator('.scout-standing')).toContainText(`A lo sumo ${plan.maxSamples - 1} `);
});
