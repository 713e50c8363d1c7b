import { en } from '../packages/web/src/words/en.ts';
import { historyEn } from '../packages/web/src/words/history.en.ts';
import { mapEn } from '../packages/web/src/words/map.en.ts';
import { peopleEn } from '../packages/web/src/words/people.en.ts';
import { recordEn } from '../packages/web/src/words/record.en.ts';
import { roundEn } from '../packages/web/src/words/round.en.ts';
import { settingsEn } from '../packages/web/src/words/settings.en.ts';
import { stationsEn } from '../packages/web/src/words/stations.en.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, test, weekOf } from './page.ts';

/** Messages of one letter or mark, or that Spanish has too. */
const SHARED = new Set(['no', 'Duskwatch', 'N', '°F, °F·d', '°C, °C·d', 'km', 'm']);

function messages(texts: object): string[] {
  return Object.values(texts).flatMap((text) =>
    typeof text === 'string' ? [text] : typeof text === 'object' && text !== null ? messages(text) : [],
  );
}
const english = [en, peopleEn, settingsEn, stationsEn, mapEn, historyEn, recordEn, roundEn]
  .flatMap(messages)
  .filter((text) => text.length > 2 && !SHARED.has(text) && !text.startsWith('npx '));

test.use({ locale: 'es-MX' });

for (const [name, path] of [
  ['Esta semana', '/'],
  ['Trampas', '/traps'],
  ['Mapa', '/map'],
  ['Conflictos', '/conflicts'],
  ['Personas', '/people'],
  ['Ajustes', '/settings'],
  ['Ronda', '/round'],
  ['Sin página', '/nowhere'],
  ['Parcela', '/fields/'],
] as const)
  test.describe(name, () => {
    // A browser without a graphics processor notes in its console how slow WebGL is.
    test.use({ mayComplain: path === '/map' });
    test(`${name} is Spanish through and through`, async ({ page, request }) => {
      const { due } = await weekOf(request);
      await page.goto(path === '/fields/' ? `/fields/${due.decisions[0]!.fieldId}` : path);
      await expect(page.locator('html')).toHaveAttribute('lang', 'es');
      await expect(page.locator('main h1').first()).toBeVisible();
      await expect(page.locator('main[aria-busy="true"]')).toHaveCount(0);
      if (path === '/') await page.locator('.cell.verb-decide').first().click();
      // Each line that is seen or heard, but for names, figures and what is cited in its own language.
      const lines = await page.evaluate(() => {
        const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        const found: string[] = [];
        for (let node = walker.nextNode(); node; node = walker.nextNode())
          if (!node.parentElement!.closest('script, style, noscript, [lang="en"], code')) found.push(node.textContent!.trim());
        for (const element of document.querySelectorAll('[aria-label], [placeholder], [title]'))
          for (const attribute of ['aria-label', 'placeholder', 'title']) found.push(element.getAttribute(attribute) ?? '');
        return found.filter(Boolean);
      });
      expect(lines.length).toBeGreaterThan(3);
      expect(lines.filter((line) => english.includes(line))).toEqual([]);
      await expectNoSidewaysScroll(page);
      expect(await accessibilityProblems(page)).toEqual([]);
    });
  });

test('the language chosen in the settings stays, and units and dates follow their own choice', async ({ page }) => {
  await page.goto('/settings');
  await page.getByRole('radio', { name: 'English' }).click();
  await expect(page.getByRole('heading', { name: 'Settings' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Settings' })).toBeVisible();
  await page.getByRole('radio', { name: 'July 13, 2026' }).click();
  await expect(page.getByText('Such as Monday, July 13, 2026.')).toBeVisible();
  await page.getByRole('radio', { name: 'Español' }).click();
  await page.getByRole('radio', { name: '°C, °C·d' }).check();
  await page.goto('/');
  await expect(page.getByRole('heading', { name: 'Esta semana' })).toBeVisible();
  await expect(page.locator('.sub')).toContainText('de 2026');
});
