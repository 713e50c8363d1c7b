import type { APIRequestContext, Page } from '@playwright/test';
import type { DecisionRecord, SampleRecord, ScoutingView } from '../packages/core/src/index.ts';
import { freshTest as test } from './own-test.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, fieldOf } from './page.ts';
import { keptOnPhone } from './round.ts';

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
  await expect.poll(() => keptOnPhone(page, 'scouting')).toBeDefined();
}

/** A second touch within a quarter of a second is taken for the same one. */
const STEADY_MS = 300;

/** Says that the next place is reached, where the walk leads to one. */
async function arrive(page: Page) {
  const here = page.getByRole('button', { name: /^I am at place|^Estoy en el punto/ });
  if (!(await here.isVisible())) return;
  await here.click();
  await page.waitForTimeout(STEADY_MS);
}

async function tap(page: Page, name: RegExp, times: number) {
  for (let i = 0; i < times; i++) {
    await arrive(page);
    await page.getByRole('button', { name }).click();
    await page.waitForTimeout(STEADY_MS);
  }
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
  await arrive(page);
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

  let taps = 0;
  while (!(await answer(page).textContent())?.startsWith('Stop') && taps++ < plan.maxSamples) {
    await arrive(page);
    await page.getByRole('button', { name: marked }).focus();
    await page.keyboard.press('Enter');
    await expect(tally(page)).toHaveText(new RegExp(`^${7 + taps} `));
    await page.waitForTimeout(STEADY_MS);
  }
  await expect(answer(page)).toHaveText('Stop: above');
  await expect(page.locator('.scout-standing')).toContainText('A decision is due, with the grower and a licensed adviser.');
  await expect(page.locator('.scout-standing')).toContainText(`Whoever farms ${field.farm}, today, and the coordinator`);
  await page.getByRole('button', { name: 'Take back the last' }).click();
  await expect(answer(page)).not.toHaveText('Stop: above');
  await page.waitForTimeout(STEADY_MS);
  await tap(page, marked, 1);
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

test('a second touch in a quarter of a second is one, and between places there is one thing to do', async ({ page, request }) => {
  const { field, pair, plan } = await target(request);
  await open(page, address(field.fieldId, pair.insect));
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  await page.getByRole('button', { name: 'Clean', exact: true }).dblclick();
  await expect(tally(page)).toHaveText(/^1 /);
  await page.waitForTimeout(STEADY_MS);
  await tap(page, /^Clean$/, plan.walk.perPlace - 1);
  await expect(answer(page)).toHaveText('Walk to place 2');
  await expect(page.getByRole('button', { name: 'Clean', exact: true })).toHaveCount(0);
  expect(await accessibilityProblems(page)).toEqual([]);
  await arrive(page);
  await expect(answer(page)).toHaveText('Go on');
});

test('a decision not to treat is recorded with its reason where the walk ends', async ({ page, request }) => {
  const { field, pair, plan } = await target(request);
  await open(page, address(field.fieldId, pair.insect));
  await page.getByRole('button', { name: 'Start', exact: true }).click();
  for (let n = 0; n < plan.maxSamples && !(await page.getByRole('button', { name: 'Save the sample' }).isVisible()); n++) {
    await tap(page, /^(Infested|With eggs|Damaged)$/, 1);
  }
  expect(await accessibilityProblems(page)).toEqual([]);
  await page.getByRole('button', { name: 'Save the sample' }).click();
  await page.getByRole('button', { name: 'Decided not to treat, because …' }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('button', { name: 'Another reason' }).click();
  await sheet.getByRole('button', { name: 'Save the decision' }).click();
  await expect(sheet.getByRole('alert')).toHaveText('Say what the other reason was.');
  await sheet.getByRole('button', { name: 'Harvest is near' }).click();
  await sheet.getByRole('button', { name: 'Save the decision' }).click();
  await expect(page.getByRole('link', { name: /All sent$/ })).toBeVisible();
  const { on } = await scoutingOf(request);
  const decisions = (await (await request.get('/api/records/decisions')).json()) as { value: DecisionRecord }[];
  expect(decisions.map(({ value }) => value)).toContainEqual({
    fieldId: field.fieldId,
    insect: pair.insect,
    decidedOn: on,
    decision: 'not-treated',
    reason: 'harvest-near',
    note: null,
  });
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
