import type { Advice } from '../packages/core/src/index.ts';
import { expect, expectNoSidewaysScroll, test, weekOf } from './page.ts';

test('the week shows every field of the program with its verbs', async ({ page, request }) => {
  const week = await weekOf(request);
  await page.goto('/');
  await expect(page.getByText(week.program.name)).toBeVisible();
  await expect(page.getByText('invented demo')).toBeVisible();
  const advised = week.fields.flatMap((field) => field.cells).filter((cell) => cell.advice.verb === 'decide');
  expect(advised.length).toBeGreaterThan(0);
  await expect(page.locator('.cell.verb-decide')).toHaveCount(advised.length);
  for (const { fieldId, name } of week.fields)
    await expect(page.locator('.week-name a, .week-lines-name a').and(page.locator(`[href="/fields/${fieldId}"]`))).toHaveText(
      name,
    );
  await expectNoSidewaysScroll(page);
});

test('what is due today is counted and listed in full behind its heading', async ({ page, request }) => {
  const { due } = await weekOf(request);
  await page.goto('/');
  const strip = page.getByRole('region', { name: 'Due today' });
  await expect(strip).toContainText(`${due.decisions.length} decisions due`);
  await expect(strip).toContainText(`${due.checks.length} traps to check`);
  for (const summary of await strip.locator('summary').all()) await summary.click();
  for (const trap of due.checks) await expect(strip.getByText(trap.trapId, { exact: true }).first()).toBeVisible();
  await expectNoSidewaysScroll(page);
});

test('a click on a cell opens its evidence in place, and the address keeps it', async ({ page, request }) => {
  const week = await weekOf(request);
  const field = week.fields.find((each) => each.cells.some((cell) => cell.advice.verb === 'decide'))!;
  const index = field.cells.findIndex((each) => each.advice.verb === 'decide');
  const advice: Advice = await (await request.get(`/api/advice/${field.fieldId}/${week.insects[index]!.id}`)).json();
  await page.goto('/');
  await page.locator('.cell.verb-decide').first().click();
  const evidence = page.locator('.open-evidence');
  await expect(evidence.getByRole('heading', { name: 'Because' })).toBeVisible();
  await expect(evidence.locator('.evidence-because > ul > li')).toHaveCount(advice.because.length);
  await expect(evidence).toContainText('licensed adviser');
  if (advice.source) await expect(evidence).toContainText(advice.source);
  await expectNoSidewaysScroll(page);
  await page.reload();
  await expect(evidence).toBeVisible();
});

test('the keyboard opens the evidence and Escape hands the focus back', async ({ page }) => {
  await page.goto('/');
  const cell = page.locator('.cell.verb-decide').first();
  await cell.focus();
  await page.keyboard.press('Enter');
  const evidence = page.locator('.open-evidence');
  await expect(evidence).toBeVisible();
  await expect(cell).toHaveAttribute('aria-expanded', 'true');
  await expect(evidence).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(evidence.getByRole('button', { name: 'Close' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(evidence).toHaveCount(0);
  await expect(cell).toBeFocused();
});

test('a past day shows what was known then', async ({ page, request }) => {
  const past = '2026-06-20';
  const week = await weekOf(request, past);
  await page.goto('/');
  await page.getByLabel('As known on').fill(past);
  await expect(page).toHaveURL(/on=2026-06-20/);
  await expect(page.getByText('Saturday, June 20, 2026')).toBeVisible();
  const watching = week.fields.flatMap((field) => field.cells).filter((cell) => cell.advice.verb === 'watch').length;
  await expect(page.locator('.cell.verb-watch')).toHaveCount(watching);
  await page.getByRole('button', { name: 'A day earlier' }).click();
  await expect(page.getByText('Friday, June 19, 2026')).toBeVisible();
  await page.getByRole('button', { name: 'Newest day' }).click();
  await expect(page).not.toHaveURL(/on=/);
});

test('a verb filter leaves only fields that say it, survives a reload, and can be cleared', async ({ page, request }) => {
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
  await expect(page.locator('.week-row, .week-lines')).toHaveCount(week.fields.length);
});

test('the most urgent fields come first when asked for', async ({ page }) => {
  await page.goto('/?sort=urgency');
  const first = page.locator('.week-row, .week-lines').first();
  await expect(first.locator('.cell.verb-decide').first()).toBeVisible();
});

test('the week copies as a table that a spreadsheet reads', async ({ page, context, request }) => {
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
  const heights = await page
    .locator(`button:visible, select:visible, input:visible, summary:visible${links}`)
    .evaluateAll((all) =>
      all.map((each) => ({ height: each.getBoundingClientRect().height, what: each.outerHTML.slice(0, 90) })),
    );
  expect(heights.filter(({ height }) => height < least - 0.5)).toEqual([]);
});
