/** The way through the desk: five places, one menu, and every old address. */
import { expect, expectNoSidewaysScroll, test } from './page.ts';

const current = (page: import('@playwright/test').Page) =>
  page.getByRole('navigation', { name: 'Pages' }).locator('[aria-current]').textContent();

const MOVED = [
  ['/traps?insect=helicoverpa-zea&state=all', '/fields?insect=helicoverpa-zea&state=all'],
  ['/scouting', '/rounds/scouting'],
  ['/learn?part=years&insect=helicoverpa-zea', '/season/review?part=years&insect=helicoverpa-zea'],
  ['/people', '/program/people'],
  ['/settings#page', '/program/settings#page'],
] as const;

test('every address of old leads on to where its page is now', async ({ page }) => {
  for (const [old, now] of MOVED) {
    await page.goto(old);
    await expect(page.locator('main h1')).toBeVisible();
    const parts = (address: string) => {
      const { pathname, searchParams, hash } = new URL(address, page.url());
      return { pathname, asked: Object.fromEntries(searchParams), hash };
    };
    await expect.poll(() => parts(page.url())).toEqual(parts(now));
  }
});

test.describe('a field called map', () => {
  /** A field that is not there is told of in the console too. */
  test.use({ mayComplain: true });
  test('would have the address at which the map stood; without one that leads on to the map', async ({ page }) => {
    await page.goto('/fields/map?insect=helicoverpa-zea&on=2026-07-08');
    await expect(page).toHaveURL(/\/map\?insect=helicoverpa-zea&on=2026-07-08$/);
    await expect(page.locator('.station-mark').first()).toBeVisible();
  });
});

test('the place is marked wherever one is in it', async ({ page, isMobile }) => {
  for (const [path, place, onPhone] of [
    ['/', 'This week', 'Week'],
    ['/fields/quernstead-kiln', 'Fields & traps', 'Week'],
    ['/traps/CR2-MC-26', 'Fields & traps', 'Week'],
    ['/questions', 'Fields & traps', 'Questions'],
    ['/fields/quernstead-kiln/scouting/helicoverpa-zea', 'Rounds', 'Week'],
    ['/season/review', 'Season', 'More'],
  ] as const) {
    await page.goto(path);
    await expect(page.locator('main h1')).toBeVisible();
    expect(await current(page), path).toContain(isMobile ? onPhone : place);
  }
});

test('the program menu opens by key, walks, and closes when left', async ({ page }) => {
  await page.goto('/');
  const button = page.getByRole('button', { name: 'Program', exact: true });
  await button.focus();
  await page.keyboard.press('Enter');
  const menu = page.getByRole('navigation', { name: 'Program' });
  await expect(menu).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(menu.getByRole('link').first()).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(menu).toBeHidden();
  await expect(button).toBeFocused();
  await button.click();
  await menu.getByRole('link', { name: 'Settings' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Settings' })).toBeVisible();
  await expect(menu).toBeHidden();
  await expect(button).toHaveAttribute('aria-current', 'true');
});

for (const locale of ['en-US', 'es-MX'])
  test.describe(locale, () => {
    test.use({ locale });
    test('the program’s name stands whole in one or two lines at every width of a desk', async ({ page, isMobile }) => {
      test.skip(isMobile, 'a desk’s masthead');
      await page.goto('/');
      const name = page.locator('.masthead-program > span').first();
      await expect(name).not.toBeEmpty();
      // It takes room from the name, and comes a moment later.
      await expect(page.locator('.masthead-nav .count')).toBeVisible();
      // So does the typeface, which is narrower than the one that stands in for it.
      await page.evaluate(() => document.fonts.ready.then(() => undefined));
      for (const width of [1024, 1280, 1440]) {
        await page.setViewportSize({ width, height: 800 });
        const { lines, cut } = await name.evaluate((element) => ({
          lines: Math.round(element.getBoundingClientRect().height / Number.parseFloat(getComputedStyle(element).lineHeight)),
          cut: element.scrollHeight > element.clientHeight + 1,
        }));
        expect(lines, `${width} pixels`).toBeLessThanOrEqual(2);
        expect(cut, `${width} pixels`).toBe(false);
        expect((await page.locator('.masthead').boundingBox())!.height).toBeLessThanOrEqual(64);
        await expectNoSidewaysScroll(page);
      }
    });
  });
