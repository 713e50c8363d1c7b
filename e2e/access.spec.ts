import { startWithAccounts } from './accounts.ts';
import { test as ownTest } from './own-test.ts';
import { expect, passesInBothThemes, test, weekOf } from './page.ts';

ownTest(
  'keys alone lead from this week to the evidence, the field, a sample, and back out of it',
  { tag: '@desk' },
  async ({ page }) => {
    const focused = () => page.evaluate(() => document.activeElement?.outerHTML.slice(0, 200) ?? '');
    /** Tabs until what is wanted has the focus. */
    const tabTo = async (wanted: string) => {
      for (let tabs = 0; tabs < 250; tabs++) {
        if (await page.evaluate((selector) => document.activeElement?.matches(selector) ?? false, wanted)) return;
        await page.keyboard.press('Tab');
      }
      throw new Error(`no key reaches ${wanted}; the focus is on ${await focused()}`);
    };
    await page.goto('/');
    await expect(page.locator('.cell.verb-decide').first()).toBeVisible();
    await tabTo('.cell.verb-decide, .cell.verb-decide *');
    await page.keyboard.press('Enter');
    await expect(page.locator('.open-evidence')).toBeFocused();
    await tabTo('.evidence-foot a:not([href*="scouting"])');
    await page.keyboard.press('Enter');
    await expect(page.locator('svg.rate').first()).toBeVisible();
    await tabTo('.field-records .menu-button');
    await page.keyboard.press('Enter');
    await page.getByRole('menuitem', { name: 'Sample', exact: true }).focus();
    await page.keyboard.press('Enter');
    const dialog = page.locator('dialog.panel[open]');
    await expect(dialog).toBeVisible();
    await tabTo('[data-name="unitsInfested"] input');
    await page.keyboard.type('1');
    await tabTo('dialog form button[type="submit"]');
    await page.keyboard.press('Enter');
    await expect(dialog).toHaveCount(0);
    await expect(page.locator('.field-records .menu-button')).toBeFocused();
    const undo = page.getByRole('button', { name: 'Undo' });
    await expect(undo).toBeVisible();
    await tabTo('.desk-toast button');
    await page.keyboard.press('Enter');
    await expect(page.getByText('Undone.')).toBeVisible();
  },
);

test.describe('whoever is not signed in yet', () => {
  // A form refused is told of in the console too.
  test.use({ mayComplain: true });
  test('meets pages that pass axe', async ({ page, playwright }) => {
    const server = await startWithAccounts();
    try {
      await page.goto(`${server.url}/first`);
      await expect(page.locator('main h1')).toBeVisible();
      await passesInBothThemes(page);
      const coordinator = await playwright.request.newContext();
      await server.first(coordinator, 'Ida Brook', server.code());
      const link = await server.invite(coordinator, 'scout');
      for (const path of ['/sign-in', link]) {
        await page.goto(`${server.url}${path}`);
        await expect(page.locator('main h1')).toBeVisible();
        await passesInBothThemes(page);
        await page.locator('main form button[type="submit"]').click();
        await passesInBothThemes(page);
      }
      await coordinator.dispose();
    } finally {
      await server.stop();
    }
  });
});

interface Shift extends PerformanceEntry {
  readonly value: number;
  readonly hadRecentInput: boolean;
}

for (const path of ['/', '/fields', '/fields/quernstead-kiln', '/program/settings'])
  test(`${path} stays where it was drawn while it loads`, async ({ page }) => {
    await page.addInitScript(() => {
      const shifts: Shift[] = [];
      Object.assign(window, { shifts });
      new PerformanceObserver((list) => shifts.push(...(list.getEntries() as Shift[]))).observe({
        type: 'layout-shift',
        buffered: true,
      });
    });
    // Whatever arrives does so after the page was drawn without it, on a quick machine too.
    await page.route(/\/api\/|\.woff2/, async (route) => {
      await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
      await route.continue();
    });
    await page.goto(path);
    await expect(page.locator('main[aria-busy="true"]')).toHaveCount(0);
    await expect(page.locator('main h1')).toBeVisible();
    await page.waitForLoadState('networkidle');
    const moved = await page.evaluate(() =>
      (window as unknown as { shifts: Shift[] }).shifts
        .filter(({ hadRecentInput }) => !hadRecentInput)
        .reduce((sum, { value }) => sum + value, 0),
    );
    expect(moved).toBeLessThan(0.05);
  });

test('nothing moves for whoever asked for less motion', async ({ page, request }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`/fields/${(await weekOf(request)).due.decisions[0]!.fieldId}`);
  await expect(page.locator('svg.rate').first()).toBeVisible();
  const moving = await page.evaluate(() => document.getAnimations().filter(({ playState }) => playState === 'running').length);
  expect(moving).toBe(0);
  const slow = await page.evaluate(() =>
    [...document.querySelectorAll('*')]
      .filter((element) => {
        const { transitionDuration, animationDuration } = getComputedStyle(element);
        return [transitionDuration, animationDuration].some((each) => Number.parseFloat(each) > 0.01);
      })
      .map((element) => element.className),
  );
  expect(slow).toEqual([]);
});

test('the theme chosen by hand outlives a reload', async ({ page }) => {
  await page.goto('/');
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const before = await paper();
  await page.getByRole('button', { name: 'Use the dark theme' }).click();
  const after = await paper();
  expect(after).not.toBe(before);
  await page.reload();
  expect(await paper()).toBe(after);
  await expect(page.getByRole('button', { name: 'Use the light theme' })).toBeVisible();
});
