import { readdirSync } from 'node:fs';
import type { Page } from '@playwright/test';
import * as core from '../packages/core/src/index.ts';
import { expect, expectNoSidewaysScroll, test, weekOf } from './page.ts';
import { SURFACES, type Surface, show } from './surfaces.ts';

const WORDS = new URL('../packages/web/src/text/', import.meta.url);
/** Fewer words than this may be names, or Spanish too. */
const FEWEST_WORDS = 4;

const isSentence = (text: string) => (text.match(/\p{L}{2,}/gu) ?? []).length >= FEWEST_WORDS;

/** What is left of a message between the values it is given. */
const pieces = (message: (...values: unknown[]) => unknown): string[] => {
  try {
    const values = Array.from({ length: message.length }, (_, index) => 1_000_003 + index * 7);
    return String(message(...values)).split(/[\d.,]*1[.,]?000[.,]?0\d\d/);
  } catch {
    return [];
  }
};

function messages(texts: unknown): string[] {
  if (typeof texts === 'string') return [texts];
  if (typeof texts === 'function') return pieces(texts as (...values: unknown[]) => unknown);
  if (typeof texts !== 'object' || texts === null) return [];
  return Object.values(texts).flatMap(messages);
}

/** English of every text that has a Spanish side. */
function localTexts(value: unknown, seen = new Set<unknown>()): string[] {
  if (typeof value !== 'object' || value === null || seen.has(value)) return [];
  seen.add(value);
  const { en, es } = value as { en?: unknown; es?: unknown };
  if (typeof en === 'string' && typeof es === 'string') return [en];
  return Object.values(value).flatMap((each) => localTexts(each, seen));
}

async function englishSentences(): Promise<string[]> {
  const files = readdirSync(WORDS).filter((file) => /^(\w+\.)?en\.ts$/.test(file));
  const words = await Promise.all(files.map((file) => import(new URL(file, WORDS).href)));
  const catalogue = Object.values(core).flatMap((each) => localTexts(each));
  const practice = core.english({ temperature: 'F' });
  return [...new Set([...words.flatMap(messages), ...messages(practice.standing), ...catalogue])]
    .map((text) => text.trim())
    .filter(isSentence);
}

/** All that is seen or heard, but for names, figures and what is cited in its own language. */
const heard = (page: Page) =>
  page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found: string[] = [];
    for (let node = walker.nextNode(); node; node = walker.nextNode())
      if (!node.parentElement!.closest('script, style, noscript, [lang="en"], code')) found.push(node.textContent!.trim());
    for (const element of document.querySelectorAll('[aria-label], [aria-description], [placeholder], [title]'))
      for (const attribute of ['aria-label', 'aria-description', 'placeholder', 'title'])
        found.push(element.getAttribute(attribute) ?? '');
    return found.filter(Boolean);
  });

test.describe('in Spanish', () => {
  // A page that is not there is told of in the console too; and one without a graphics processor how slow WebGL is.
  test.use({ locale: 'es-MX', mayComplain: true });
  const map: Surface = { name: 'the map', path: () => '/map', ready: '.station-mark' };
  for (const surface of [...SURFACES, map]) {
    const { name, open = [] } = surface;
    test(`${name}: no sentence is left in English`, async ({ page, request }) => {
      const english = await englishSentences();
      expect(english.length).toBeGreaterThan(300);
      await show(page, surface, await weekOf(request));
      await expect(page.locator('html')).toHaveAttribute('lang', 'es');
      const left = async () => {
        const lines = await heard(page);
        expect(lines.length).toBeGreaterThan(3);
        return lines.filter((line) => english.some((text) => line.includes(text)));
      };
      expect(await left()).toEqual([]);
      for (const step of open) {
        await step(page);
        expect(await left()).toEqual([]);
      }
      await expectNoSidewaysScroll(page);
    });
  }
});

test('the language chosen in the settings stays, and units and dates follow their own choice', async ({ page }) => {
  await page.goto('/settings');
  await page.getByRole('radio', { name: 'Español' }).click();
  await expect(page.getByRole('heading', { name: 'Ajustes' })).toBeVisible();
  await page.getByRole('radio', { name: '°C, °C·d' }).check();
  await page.getByRole('radio', { name: 'English' }).click();
  await expect(page.getByRole('heading', { name: 'Settings' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Settings' })).toBeVisible();
  await page.getByRole('radio', { name: 'July 13, 2026' }).click();
  await expect(page.getByText('Such as Monday, July 13, 2026.')).toBeVisible();
  await page.goto('/');
  await expect(page.locator('.sub')).toContainText(/, 2026/);
  await page.locator('.cell.verb-decide').first().click();
  await expect(page.locator('.open-evidence')).not.toContainText(/heat to [^.]* of [\d.–]+ °F·d/);
});
