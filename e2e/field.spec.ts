import type { APIRequestContext } from '@playwright/test';
import { figure } from '../packages/core/src/index.ts';
import { expect, expectNoSidewaysScroll, fieldOf, test, weekOf } from './page.ts';

const decided = async (request: APIRequestContext) => (await weekOf(request)).due.decisions[0]!;

test('the table behind the chart holds the numbers of the API', async ({ page, request }) => {
  const { fieldId, insect } = await decided(request);
  const view = (await fieldOf(request, fieldId)).insects.find((each) => each.insect.id === insect)!;
  await page.goto(`/fields/${fieldId}`);
  const section = page.locator(`[id="${insect}"]`);
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

test('arrow keys move the reading of the season by a day, on every chart at once', async ({ page, request }) => {
  const { fieldId, insect } = await decided(request);
  const view = await fieldOf(request, fieldId);
  const check = view.insects.find((each) => each.insect.id === insect)!.checks.at(-1)!;
  await page.goto(`/fields/${fieldId}`);
  const slider = page.locator(`[id="${insect}"]`).getByRole('slider');
  const days = (Date.parse(view.on) - Date.parse(check.on)) / 86_400_000;
  await slider.focus();
  for (let pressed = 0; pressed < days; pressed++) await page.keyboard.press('ArrowLeft');
  await expect(slider).toHaveAttribute('aria-valuetext', new RegExp(`check ${check.trapId}: ${check.count} in`));
  const readings = await page.locator('.reading b').allTextContents();
  expect(new Set(readings).size).toBe(1);
  await page.keyboard.press('Home');
  await expect(slider).toHaveAttribute('aria-valuenow', (await slider.getAttribute('aria-valuemin'))!);
});

test('a pointer on the chart reads out that day', async ({ page, request }) => {
  const { fieldId, insect } = await decided(request);
  await page.goto(`/fields/${fieldId}`);
  const slider = page.locator(`[id="${insect}"]`).getByRole('slider');
  const before = await slider.getAttribute('aria-valuenow');
  await slider.click({ position: { x: 120, y: 80 } });
  await expect(slider).not.toHaveAttribute('aria-valuenow', before!);
});

test('every event of a heat model is listed with its published sum, in the unit chosen', async ({ page, request }) => {
  const { fields } = await weekOf(request);
  const field = fields.find((each) => each.crop === 'sweet-corn')!;
  const insect = (await fieldOf(request, field.fieldId)).insects.find((each) =>
    each.heat.some((heat) => heat.events.length > 4),
  )!;
  await page.goto(`/fields/${field.fieldId}`);
  const section = page.locator(`[id="${insect.insect.id}"]`);
  const summed = insect.heat.filter((heat) => heat.days.length > 0);
  await expect(section.locator('.events li')).toHaveCount(summed.flatMap((heat) => heat.events).length);
  await expect(section.locator('.events').first()).toContainText('°F·d');
  await page.goto('/program/settings');
  await page.getByRole('radio', { name: '°C, °C·d' }).check();
  await page.goto(`/fields/${field.fieldId}`);
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

test.describe('what goes wrong', () => {
  // The browser itself reports a refused answer in the console.
  test.use({ mayComplain: true });

  test('an unknown field says so and leads home', async ({ page }) => {
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
    await page.goto('/');
    await expect(page.getByRole('heading', { name: 'Your first advice' })).toBeVisible();
    await expect(page.getByText('duskwatch import')).toBeVisible();
  });
});
