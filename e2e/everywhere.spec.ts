/**
 * What must hold on every page, with all on it open that can be. A page is visited once at each size and in each
 * language, and all of it looked at there: axe by day and by night in English (the sizes of targets among its rules), no
 * English left in Spanish, and in both nothing cut off and nothing that scrolls sideways.
 */
import type { Page } from '@playwright/test';
import { cutOff } from './cut-off.ts';
import { englishSentences, heard, leftInEnglish } from './heard.ts';
import { test as base, expect, expectNoSidewaysScroll, passesInBothThemes, weekOf } from './page.ts';
import { SURFACES, type Surface, show } from './surfaces.ts';

/** Without a graphics processor it says in the console how slow WebGL is. */
const MAP: Surface = { name: 'the map', path: () => '/map', ready: '.station-mark' };

/** Nothing is kept on these visits, so that a worker makes them all in one page of each language. */
const test = base.extend<object, { pageIn: (locale: string) => Promise<Page> }>({
  pageIn: [
    async ({ browser }, use, { project }) => {
      const { viewport, isMobile, hasTouch, timezoneId, baseURL } = project.use;
      const pages = new Map<string, Page>();
      await use(async (locale) => {
        const page =
          pages.get(locale) ??
          (await browser.newPage({ viewport, isMobile, hasTouch, timezoneId, baseURL, locale, deviceScaleFactor: 2 }));
        pages.set(locale, page);
        // Whatever the visit before came to.
        await page.setViewportSize(viewport!);
        await page.emulateMedia({ colorScheme: 'light' });
        return page;
      });
      for (const page of pages.values()) await page.close();
    },
    { scope: 'worker' },
  ],
  page: async ({ pageIn, locale }, use) => use(await pageIn(locale!)),
});

/** A page that is not there is told of in the console too. */
test.use({ mayComplain: true });

test.describe('in English', () => {
  for (const surface of SURFACES)
    test(`${surface.name}: passes axe by day and by night, and nothing is cut off, also twice as large`, async ({
      page,
      request,
    }, { project }) => {
      await show(page, surface, await weekOf(request));
      await withAllOpen(page, surface, async (within) => {
        await passesInBothThemes(page, within);
        await nothingIsCutOff(page, within);
        // What a desk of 1440 × 900 shows at 200 %.
        if (project.name === 'desk') await at(page, { width: 720, height: 450 }, () => nothingIsCutOff(page, within));
      });
    });
});

test.describe('in Spanish', () => {
  test.use({ locale: 'es-MX' });
  for (const surface of [...SURFACES, MAP])
    test(`${surface.name}: no sentence is left in English, and nothing is cut off, down to 320 pixels`, async ({
      page,
      request,
    }, { project }) => {
      const english = await englishSentences();
      expect(english.length).toBeGreaterThan(300);
      await show(page, surface, await weekOf(request));
      await expect(page.locator('html')).toHaveAttribute('lang', 'es');
      await withAllOpen(page, surface, async (within) => {
        const lines = await heard(page);
        expect(lines.length).toBeGreaterThan(3);
        expect.soft(leftInEnglish(lines, english)).toEqual([]);
        await nothingIsCutOff(page, within);
        if (project.name === 'desk') await at(page, { width: 320, height: 640 }, () => nothingIsCutOff(page, within));
      });
    });
});

/** What a step may open; the first that is there is the one. */
const OPENED = ['dialog[open]', '.open-evidence', '.program-pages:not([hidden])'];

/** Looks at the page as it comes, and again after each thing that can be opened on it, at what that opened. */
async function withAllOpen(page: Page, { open = [] }: Surface, look: (within?: string) => Promise<void>) {
  await look();
  for (const step of open) {
    await step(page);
    const there = await page.evaluate((all) => all.find((each) => document.querySelector(each) !== null), OPENED);
    expect(there, 'what was opened').toBeDefined();
    await look(there);
  }
}

async function nothingIsCutOff(page: Page, within?: string) {
  await expectNoSidewaysScroll(page);
  const { width } = page.viewportSize()!;
  expect.soft(await cutOff(page, within), `in a window ${width} pixels wide`).toEqual([]);
}

/** At another size; what was open must be so there too, or it would not be looked at. */
async function at(page: Page, size: { width: number; height: number }, look: () => Promise<void>) {
  const before = page.viewportSize()!;
  const open = page.locator(OPENED.join());
  const opened = await open.count();
  await page.setViewportSize(size);
  await expect(open).toHaveCount(opened);
  await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
  await look();
  await page.setViewportSize(before);
  await expect(open).toHaveCount(opened);
}
