import type { APIRequestContext } from '@playwright/test';
import { figure, english as inEnglish } from '../packages/core/src/index.ts';
import { expect, expectNoSidewaysScroll, fieldOf, partOf, test, weekOf } from './page.ts';

const english = inEnglish({ temperature: 'F' });
const decided = async (request: APIRequestContext) => (await weekOf(request)).due.decisions[0]!;

test('the table behind the chart holds the numbers of the API', { tag: '@desk' }, async ({ page, request }) => {
  const { fieldId, insect } = await decided(request);
  const view = (await fieldOf(request, fieldId)).insects.find((each) => each.insect.id === insect)!;
  await page.goto(`/fields/${fieldId}#${insect}`);
  const section = partOf(page, insect);
  await expect(section.locator('svg.rate path.rate-line').first()).toHaveAttribute('d', /M.+L/);
  await section.getByText('Table of nightly rates').click();
  const rows = section.getByRole('group', { name: /^Table of nightly rates/ }).locator('tbody tr');
  const points = view.lines.flatMap((line) => [...line.points].reverse());
  await expect(rows).toHaveCount(points.length);
  const shown = await rows.locator('td:nth-child(3)').allTextContents();
  expect(shown).toEqual(points.map((point) => (point.perNight === null ? 'no fit trap' : figure(point.perNight))));
  await section.getByText(/^Table of \d+ checks?$/).click();
  await expect(section.getByRole('group', { name: /^Table of \d+ checks?/ }).locator('tbody tr')).toHaveCount(view.checks.length);
  await expectNoSidewaysScroll(page);
});

test('arrow keys move the reading of the season by a day', async ({ page, request }) => {
  const { fieldId, insect } = await decided(request);
  const view = await fieldOf(request, fieldId);
  const check = view.insects.find((each) => each.insect.id === insect)!.checks.at(-1)!;
  await page.goto(`/fields/${fieldId}#${insect}`);
  const slider = partOf(page, insect).getByRole('slider');
  const days = (Date.parse(view.on) - Date.parse(check.on)) / 86_400_000;
  await slider.focus();
  for (let pressed = 0; pressed < days; pressed++) await page.keyboard.press('ArrowLeft');
  await expect(slider).toHaveAttribute('aria-valuetext', new RegExp(`check ${check.trapId}: ${check.count} in`));
  await page.keyboard.press('Home');
  await expect(slider).toHaveAttribute('aria-valuenow', (await slider.getAttribute('aria-valuemin'))!);
});

test('a pointer on the chart reads out that day', async ({ page, request }) => {
  const { fieldId, insect } = await decided(request);
  await page.goto(`/fields/${fieldId}#${insect}`);
  const slider = partOf(page, insect).getByRole('slider');
  const before = await slider.getAttribute('aria-valuenow');
  await slider.click({ position: { x: 120, y: 80 } });
  await expect(slider).not.toHaveAttribute('aria-valuenow', before!);
});

test('every event of a heat model is listed with its published sum, in the unit chosen', { tag: '@desk' }, async ({
  page,
  request,
}) => {
  const { fields } = await weekOf(request);
  const field = fields.find((each) => each.crop === 'sweet-corn')!;
  const insect = (await fieldOf(request, field.fieldId)).insects.find((each) =>
    each.heat.some((heat) => heat.events.length > 4),
  )!;
  await page.goto(`/fields/${field.fieldId}#${insect.insect.id}`);
  const section = partOf(page, insect.insect.id);
  const summed = insect.heat.filter((heat) => heat.days.length > 0);
  await expect(section.locator('.events li')).toHaveCount(summed.flatMap((heat) => heat.events).length);
  await expect(section.locator('.events').first()).toContainText('°F·d');
  await page.goto('/program/settings');
  await page.getByRole('radio', { name: '°C, °C·d' }).check();
  await page.goto(`/fields/${field.fieldId}#${insect.insect.id}`);
  await expect(section.locator('.events').first()).toContainText('°C·d');
  await page.reload();
  await expect(section.locator('.events').first()).toContainText('°C·d');
});

test('a decision due leads to its insect on the field page, and back', async ({ page, request }) => {
  const { name, insect } = await decided(request);
  await page.goto('/');
  await page.getByRole('region', { name: 'Due today' }).getByRole('link', { name }).first().click();
  await expect(page.getByRole('heading', { level: 1, name })).toBeVisible();
  await expect(page).toHaveURL(new RegExp(`#${insect}$`));
  await page
    .getByRole('link', { name: /This week$/ })
    .first()
    .click();
  await expect(page.getByRole('heading', { level: 1, name: 'This week' })).toBeVisible();
});

test('the verdict comes first, in the tab of the most pressing insect, and every insect’s tab says its own verb', async ({
  page,
  request,
}) => {
  const { fieldId, insect } = await decided(request);
  const { insects } = await fieldOf(request, fieldId);
  await page.goto(`/fields/${fieldId}`);
  await expect(page.locator('.verdict-verb')).toContainText('Decide');
  await expect(page.getByRole('tab', { selected: true })).toContainText('Decide');
  await expect(page.getByRole('tab')).toHaveCount(insects.length);
  for (const each of insects)
    if (each.advice.verb !== 'none')
      await expect(page.getByRole('tab').filter({ hasText: each.insect.commonName.en })).toContainText(
        english.verb[each.advice.verb],
      );
  const above = await page.evaluate(() => {
    const top = (selector: string) => document.querySelector(selector)!.getBoundingClientRect().top;
    return [top('.verdict'), top('.strips')];
  });
  expect(above[0]).toBeLessThan(above[1]!);
  const other = insects.find((each) => each.insect.id !== insect && each.advice.verb !== 'none')!;
  await page.getByRole('tab').filter({ hasText: other.insect.commonName.en }).click();
  await expect(partOf(page, other.insect.id)).toBeVisible();
  await expect(page).toHaveURL(new RegExp(`#${other.insect.id}$`));
  await page.reload();
  await expect(partOf(page, other.insect.id)).toBeVisible();
});

test('each trap design has a strip of its own with its rule written on the line, and an interval off it says how far it goes', async ({
  page,
  request,
}) => {
  const { fields } = await weekOf(request);
  const views = await Promise.all(fields.map(({ fieldId }) => fieldOf(request, fieldId)));
  const [view, insect] = views
    .flatMap((view) => view.insects.map((insect) => [view, insect] as const))
    .find(([, { lines }]) => lines.length > 1 && lines.every(({ thresholdPerNight }) => thresholdPerNight !== null))!;
  await page.goto(`/fields/${view.field.fieldId}#${insect.insect.id}`);
  const part = partOf(page, insect.insect.id);
  await expect(part.locator('svg.rate')).toHaveCount(insect.lines.length);
  const said = await part.locator('.rule-word').allTextContents();
  expect(said).toEqual(
    insect.lines.map(({ thresholdPerNight }) => expect.stringContaining(`from ${figure(thresholdPerNight!)} a night`)),
  );
  // The top of each scale holds every rate and the rule, with a third to spare; what is beyond it is open.
  for (const [index, line] of insect.lines.entries()) {
    const top = 1.35 * Math.max(0.1, line.thresholdPerNight!, ...line.points.map(({ perNight }) => perNight ?? 0));
    const open = line.points.filter(({ perNight, high }) => perNight !== null && high! > top);
    await expect(part.locator('svg.rate').nth(index).locator('.open-end')).toHaveCount(open.length);
    const furthest = Math.max(0, ...open.map(({ high }) => high!));
    if (furthest > 0) await expect(part.locator('svg.rate').nth(index)).toContainText(`up to ${figure(furthest)}`);
  }
  expect(insect.lines.some(({ points }) => points.some(({ high }) => high !== null))).toBe(true);
});

test('words of a chart do not lie over one another', async ({ page, request }) => {
  const { fieldId, insect } = await decided(request);
  await page.goto(`/fields/${fieldId}#${insect}`);
  await expect(page.locator('svg.rate .rule-word').first()).toBeVisible();
  for (const strip of await page.locator('svg.strip.rate, svg.strip.decisions').all()) {
    const over = await strip.locator('text').evaluateAll((all) => {
      const boxes = all.map((each) => ({ text: each.textContent!, box: each.getBoundingClientRect() }));
      return boxes.flatMap((a, index) =>
        boxes
          .slice(index + 1)
          .filter(
            (b) =>
              Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left) > 1 &&
              Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top) > 4,
          )
          .map((b) => `${a.text} over ${b.text}`),
      );
    });
    expect.soft(over).toEqual([]);
  }
});

test('the rule stands with the step in force marked, with what would change the verb and what other rules say', {
  tag: '@desk',
}, async ({ page, request }) => {
  const { due } = await weekOf(request);
  const views = await Promise.all(due.decisions.map(({ fieldId }) => fieldOf(request, fieldId)));
  const insect = due.decisions
    .map((each, index) => views[index]!.insects.find(({ insect }) => insect.id === each.insect)!)
    .find(({ rules }) => rules.some(({ inUse, steps }) => inUse && steps.length > 1))!;
  const view = views.find(({ insects }) => insects.includes(insect))!;
  const rule = insect.rules.find(({ inUse }) => inUse)!;
  await page.goto(`/fields/${view.field.fieldId}#${insect.insect.id}`);
  const part = partOf(page, insect.insect.id);
  await expect(part.locator('.steps tbody tr')).toHaveCount(rule.steps.length);
  const step = rule.steps.find(({ inForce }) => inForce)!;
  expect(insect.advice.rate!).toBeGreaterThanOrEqual(step.fromPerNight);
  await expect(part.locator('.steps .in-force')).toContainText(`every ${step.intervalDays} days`);
  await expect(part.locator('.otherwise li')).toHaveCount(insect.otherwise.length);
  await expect(part.locator('.otherwise')).toContainText(`under ${figure(rule.steps[0]!.fromPerNight)} a night`);
  await expect(part.locator('.other-rules li')).toHaveCount(insect.rules.length - 1);
});

test('the next field with something due is one step away', { tag: '@desk' }, async ({ page, request }) => {
  const { due } = await weekOf(request);
  const [first] = due.decisions;
  const next = due.decisions.find(({ fieldId }) => fieldId !== first!.fieldId)!;
  await page.goto(`/fields/${first!.fieldId}#${first!.insect}`);
  await expect(page.locator('.walk')).toContainText(`decision 1 of ${due.decisions.length}`);
  await page.getByRole('link', { name: `next: ${next.name}` }).click();
  await expect(page.getByRole('heading', { level: 1, name: next.name })).toBeVisible();
  await expect(partOf(page, next.insect)).toBeVisible();
});

test.describe('what goes wrong', () => {
  // The browser itself reports a refused answer in the console.
  test.use({ mayComplain: true });

  test('an unknown field says so and leads home', { tag: '@desk' }, async ({ page }) => {
    await page.goto('/fields/nowhere');
    await expect(page.getByRole('heading', { name: 'There is no such field' })).toBeVisible();
    await page.getByRole('link', { name: 'Go to This week' }).click();
    await expect(page.locator('.cell').first()).toBeVisible();
  });

  test('a server that is down is named, and the page recovers when it is back', async ({ page }) => {
    await page.route('**/api/week**', (route) => route.abort('connectionrefused'));
    await page.goto('/');
    await expect(page.getByRole('heading', { name: 'The server does not answer' })).toBeVisible();
    await page.unroute('**/api/week**');
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect(page.locator('.cell').first()).toBeVisible();
  });

  for (const [locale, heading, advice] of [
    ['en-GB', 'The server cannot read or keep its data', 'Ask whoever runs the server to make room.'],
    ['es-MX', 'El servidor no puede leer o guardar sus datos', /libere espacio/],
  ] as const) {
    test.describe(locale, () => {
      test.use({ locale });

      test('a server that cannot keep its data says what is wrong with them and whom to ask', async ({ page }) => {
        const said = {
          where: {},
          got: 'a disk of the server that is full',
          expected: 'data that can be read and kept',
          fix: 'Ask whoever runs the server to make room.',
          fault: { kind: 'storage', trouble: 'disk-full' },
        };
        await page.route('**/api/week**', (route) => route.fulfill({ status: 507, json: { problems: [said] } }));
        await page.goto('/');
        await expect(page.getByRole('heading', { name: heading })).toBeVisible();
        await expect(page.getByText(advice)).toBeVisible();
      });
    });
  }

  test('a program with no fields teaches how to begin', async ({ page, request }) => {
    const week = await weekOf(request);
    await page.route('**/api/week**', (route) => route.fulfill({ json: { ...week, countsTo: null, fields: [] } }));
    const program = await (await request.get('/api/program')).json();
    await page.route('**/api/program', (route) => route.fulfill({ json: { ...program, farms: [] } }));
    const steps = await (await request.get('/api/first-steps')).json();
    await page.route('**/api/first-steps', (route) => route.fulfill({ json: { ...steps, beginning: true } }));
    await page.goto('/');
    await expect(page.getByRole('heading', { name: 'Your first advice' })).toBeVisible();
    await expect(page.getByRole('link', { name: 'Import a sheet' })).toBeVisible();
  });
});
