/** The help: reached from every page at its part, complete, and there without a connection. */
import { catalogue } from '../packages/core/src/index.ts';
import { expect, test } from './page.ts';

const PARTS = [
  ['/', 'This week'],
  ['/fields', 'List of fields and traps'],
  ['/fields/quernstead-kiln', 'A field'],
  ['/traps/CR2-MC-26', 'A trap'],
  ['/fields/quernstead-kiln/scouting/helicoverpa-zea', 'A sampling plan'],
  ['/season', 'Season plan'],
  ['/season/review', 'Review'],
  ['/program/people', 'People'],
] as const;

test('every page leads to its part of the help', async ({ page }) => {
  for (const [path, part] of PARTS) {
    await page.goto(path);
    await page.getByRole('link', { name: 'How to read this page' }).click();
    await expect(page).toHaveURL(/\/help/);
    await expect(page.getByRole('heading', { level: 3, name: part, exact: true })).toBeInViewport();
  }
});

for (const locale of ['en-US', 'es-MX'] as const)
  test.describe(locale, () => {
    test.use({ locale });
    test('every caution of the catalogue stands in the help, with its source', async ({ page }) => {
      const cautions = catalogue.practices.filter(({ weight }) => weight === 'caution');
      expect(cautions.length).toBeGreaterThan(6);
      await page.goto('/help#cautions');
      await expect(page.locator('main h1')).toBeVisible();
      const said = await page.locator('main').textContent();
      for (const { text } of cautions) expect(said).toContain(text[locale === 'en-US' ? 'en' : 'es']);
    });
  });

test.describe('without a connection', () => {
  test.use({ mayComplain: true, serviceWorkers: 'allow' });
  test('the help opens, also where it was never opened before', async ({ page, context }) => {
    await page.goto('/');
    await page.evaluate(() => navigator.serviceWorker.register('/service-worker.js'));
    await page.evaluate(() => navigator.serviceWorker.ready);
    await context.setOffline(true);
    await page.goto('/help#glossary');
    await expect(page.getByRole('heading', { level: 1, name: 'Help' })).toBeVisible();
    await expect(page.getByText('Degree-day', { exact: true })).toBeVisible();
  });
});
