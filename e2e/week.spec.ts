import { type Advice, daysLateOn, needsNothing } from '../packages/core/src/index.ts';
import { expect, expectNoSidewaysScroll, test, weekOf } from './page.ts';

const rows = '.week-row, .week-lines';

test('the week shows every field of the program with its verbs', async ({ page, request }) => {
  const week = await weekOf(request);
  await page.goto('/');
  await expect(page.getByText(week.program.name)).toBeVisible();
  await expect(page.getByText('invented demo')).toBeVisible();
  const advised = week.fields.flatMap((field) => field.cells).filter((cell) => cell.advice.verb === 'decide');
  expect(advised.length).toBeGreaterThan(0);
  await expect(page.locator('.cell.verb-decide')).toHaveCount(advised.length);
  for (const { fieldId, name } of week.fields.filter((field) => !needsNothing(field)))
    await expect(page.locator('.week-name a, .week-lines-name a').and(page.locator(`[href="/fields/${fieldId}"]`))).toHaveText(
      name,
    );
  await expectNoSidewaysScroll(page);
});

test('fields that need nothing are one line of their farm, with names and next check, and come when it is asked for them', async ({
  page,
  request,
}) => {
  const { fields } = await weekOf(request);
  const quiet = fields.filter(needsNothing);
  expect(quiet.length).toBeGreaterThan(3);
  await page.goto('/');
  await expect(page.locator(rows)).toHaveCount(fields.length - quiet.length);
  for (const { name } of quiet) await expect(page.locator('.fold-line').getByText(name)).toHaveCount(1);
  const [first] = quiet;
  const line = page.locator('.fold-line').filter({ hasText: first!.name });
  await expect(line).toContainText('next check');
  await line.click();
  await expect(page.locator(rows).getByRole('link', { name: first!.name, exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Fold what needs nothing' }).click();
  await expect(page.locator(rows)).toHaveCount(fields.length - quiet.length);
});

test('the headline counts what is late, and an insect that does not live on a crop is no more than a dot', async ({
  page,
  request,
}) => {
  const { on, due, fields } = await weekOf(request);
  const late = due.decisions.filter(({ dueSince }) => daysLateOn(on, dueSince) > 0).length;
  expect(late).toBeGreaterThan(1);
  await page.goto('/');
  await expect(page.locator('.week-headline')).toContainText(`${late} decisions are late`);
  await expect(page.locator('.due-late')).toHaveCount(late > 3 && (page.viewportSize()?.width ?? 0) < 900 ? 3 : late);
  const noHost = fields
    .filter((field) => !needsNothing(field))
    .flatMap(({ cells }) => cells)
    .filter(({ advice: { reason } }) => reason?.kind === 'out-of-season' && reason.why === 'not-a-host').length;
  if ((page.viewportSize()?.width ?? 0) >= 900) await expect(page.locator('.no-host')).toHaveCount(noHost);
  await expect(page.locator('.cell').filter({ hasText: 'not a host' })).toHaveCount(0);
});

test('what is due today is counted and listed in full behind its heading', async ({ page, request }) => {
  const { due } = await weekOf(request);
  await page.goto('/');
  const strip = page.getByRole('region', { name: 'Due today' });
  await expect(strip).toContainText(`${due.decisions.length} decisions due`);
  await expect(strip).toContainText(`${due.checks.length} traps to check`);
  for (const summary of await strip.locator('summary').all()) await summary.click();
  for (const { station, trapId } of due.checks) {
    await expect(strip.getByText(station, { exact: true }).first()).toBeVisible();
    await expect(strip.locator(`a[href="/traps/${trapId}"]`).first()).toBeVisible();
  }
  await expectNoSidewaysScroll(page);
});

test('a click on a cell opens its evidence in place, and the address keeps it', async ({ page, request }) => {
  await page.goto('/');
  await page.locator('.cell.verb-decide').first().click();
  await expect(page).toHaveURL(/open=/);
  const [fieldId, insect] = new URL(page.url()).searchParams.get('open')!.split('~');
  const advice: Advice = await (await request.get(`/api/advice/${fieldId}/${insect}`)).json();
  expect(advice.verb).toBe('decide');
  const evidence = page.locator('.open-evidence');
  await expect(evidence.getByRole('heading', { name: 'Because' })).toBeVisible();
  await expect(evidence.locator('.evidence-because > ul > li')).toHaveCount(advice.because.length);
  await expect(evidence).toContainText('licensed adviser');
  if (advice.source) await expect(evidence).toContainText(advice.source);
  await expectNoSidewaysScroll(page);
  await page.reload();
  await expect(evidence).toBeVisible();
});

test('evidence opens in sight, also under the last cell of a window', async ({ page }) => {
  await page.goto('/?sort=name');
  const cell = page.locator('.cell').nth(9);
  await cell.evaluate((element) => scrollTo(0, element.getBoundingClientRect().bottom + scrollY - innerHeight));
  await cell.click();
  const evidence = page.locator('.open-evidence');
  await expect(evidence.getByRole('heading', { name: 'Because' })).toBeInViewport();
});

test('the keyboard opens the evidence and Escape hands the focus back', { tag: '@desk' }, async ({ page }) => {
  await page.goto('/');
  const cell = page.locator('.cell.verb-decide').first();
  await cell.focus();
  await page.keyboard.press('Enter');
  const evidence = page.locator('.open-evidence');
  await expect(evidence).toBeVisible();
  await expect(cell).toHaveAttribute('aria-expanded', 'true');
  await expect(evidence).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(evidence.getByRole('button', { name: /^Answer/ })).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(evidence.getByRole('button', { name: 'Close' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(evidence).toHaveCount(0);
  await expect(cell).toBeFocused();
});

test('a past day shows what was known then', { tag: '@desk' }, async ({ page, request }) => {
  const past = '2026-06-20';
  const week = await weekOf(request, past);
  await page.goto('/');
  await page.getByLabel('As known on').fill(past);
  await expect(page).toHaveURL(/on=2026-06-20/);
  await expect(page.getByText('As known on Saturday, June 20, 2026')).toBeVisible();
  const watching = week.fields
    .filter((field) => !needsNothing(field))
    .flatMap((field) => field.cells)
    .filter((cell) => cell.advice.verb === 'watch').length;
  await expect(page.locator('.cell.verb-watch')).toHaveCount(watching);
  await page.getByRole('button', { name: 'A day earlier' }).click();
  await expect(page.getByText('As known on Friday, June 19, 2026')).toBeVisible();
  await page.getByRole('link', { name: 'Back to today' }).click();
  await expect(page).not.toHaveURL(/on=/);
});

test('a verb filter leaves only fields that say it, survives a reload, and can be cleared', { tag: '@desk' }, async ({
  page,
  request,
}) => {
  const week = await weekOf(request);
  const said = (verb: string) => week.fields.filter((field) => field.cells.some((cell) => cell.advice.verb === verb)).length;
  await page.goto('/');
  await page.locator('.verb-filter').getByRole('button', { name: 'Decide' }).click();
  await expect(page.locator('.week-row, .week-lines')).toHaveCount(said('decide'));
  await page.reload();
  await expect(page.locator('.week-row, .week-lines')).toHaveCount(said('decide'));
  await page.goto('/?verb=decide&crop=no-such-crop');
  await expect(page.getByText('No field matches these filters.')).toBeVisible();
  await page.getByRole('button', { name: 'Clear the filters' }).click();
  await expect(page.locator(rows)).toHaveCount(week.fields.filter((field) => !needsNothing(field)).length);
});

test('the most urgent fields come first when asked for', { tag: '@desk' }, async ({ page }) => {
  await page.goto('/?sort=urgency');
  const first = page.locator('.week-row, .week-lines').first();
  await expect(first.locator('.cell.verb-decide').first()).toBeVisible();
});

test('the week copies as a table that a spreadsheet reads', { tag: '@desk' }, async ({ page, context, request }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const week = await weekOf(request);
  await page.goto('/');
  await page
    .getByRole('button', { name: /^Copy or save/ })
    .first()
    .click();
  await page.getByRole('menuitem', { name: 'Copy as CSV' }).click();
  await expect(page.getByText('Copied.')).toBeVisible();
  const lines = (await page.evaluate(() => navigator.clipboard.readText())).split('\r\n');
  const advised = week.fields.flatMap((field) => field.cells).filter((cell) => cell.advice.verb !== 'none');
  expect(lines).toHaveLength(advised.length + 1);
  expect(lines[0]).toContain('moths per trap per night');
});

test('targets are 44 pixels high for a finger, and never below the 24 that WCAG 2.2 asks for', async ({ page }, { project }) => {
  const [least, links] = project.name === 'phone' ? [44, ', .week-lines a:visible, .due a:visible'] : [24, ''];
  await page.goto('/');
  await expect(page.locator('.cell').first()).toBeVisible();
  // A menu's button stands in for it until its script is here, and is measured after that.
  await expect(page.locator('.menu-button:disabled')).toHaveCount(0);
  const heights = await page
    .locator(`button:visible, select:visible, input:visible, summary:visible${links}`)
    .evaluateAll((all) =>
      all.map((each) => ({ height: each.getBoundingClientRect().height, what: each.outerHTML.slice(0, 90) })),
    );
  expect(heights.filter(({ height }) => height < least - 0.5)).toEqual([]);
});

test('on a small desk the due lists leave every name room to be read', { tag: '@desk' }, async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 768 });
  await page.goto('/');
  const names = page.locator('.due-field');
  await expect(names.first()).toBeVisible();
  const narrowest = await names.evaluateAll((all) => Math.min(...all.map((name) => name.getBoundingClientRect().width)));
  expect(narrowest).toBeGreaterThan(100);
});
