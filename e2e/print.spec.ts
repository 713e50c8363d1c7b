/** Every page on paper: nothing of it missing, no sheet blank, no tool of the screen left. */
import { rendered } from '../packages/server/src/documents/rendered.testing.ts';
import { expect, test, weekOf } from './page.ts';

test.skip(({ isMobile }) => isMobile, 'paper is the same whatever prints it');

const PAGES = [
  ['/', '.week', 'This week'],
  ['/?on=2026-07-08', '.week', 'As known on Wednesday, July 8, 2026'],
  ['/bulletin', '.bulletin-sheet h3', 'Before anything is done'],
  ['/fields', '.traps tbody tr', 'CR2-MC-26'],
  ['/fields/quernstead-kiln', 'main h2', 'Kiln Strip'],
  ['/traps/CR2-MC-26', '.trap-facts', 'CR2-MC-26'],
  ['/questions', 'main h2', 'An unlikely count'],
  ['/rounds', '.rounds-due', 'Plan rounds'],
  ['/rounds/scouting', '.scouting-table', 'Scouting'],
  ['/flights', 'main[aria-busy="false"] table', 'Flights'],
  ['/season', '.insect-plan', 'Season'],
  ['/season/review', 'main h2', ''],
  ['/program/people', 'main h1', 'People'],
  ['/program/rules', '.sources', 'Rules and insects'],
  ['/program/settings', '.setting', 'Settings'],
  ['/help', '.help-part', 'How to read each page'],
] as const;

// Paper is made of a page that stands: each is gone to in one window, in two halves for two processors.
for (const half of [0, 1])
  test(`every page is whole on A4, from its first sheet on, half ${half + 1}`, async ({ page }) => {
    for (const [path, ready, words] of PAGES.filter((_, nth) => nth % 2 === half))
      await test.step(path, async () => {
        await page.goto(path);
        await expect(page.locator(ready).first()).toBeVisible();
        await expect(page.locator('main[aria-busy="true"]')).toHaveCount(0);
        await expect(page.locator('body')).toContainText(words);
        const title = ((await page.locator('main h1').first().textContent()) ?? '').trim();
        const sheets = await rendered(await page.pdf({ format: 'A4' }));
        const flat = (text: string) => text.replaceAll(/\s+/g, ' ');
        expect(flat(sheets[0]!.text)).toContain(title);
        // The head of a page alone on a sheet would be a sheet for nothing.
        for (const [nth, { text }] of sheets.entries())
          expect(text.trim().length, `sheet ${nth + 1} of ${sheets.length}`).toBeGreaterThan(nth === 0 ? 150 : 15);
        const all = flat(sheets.map(({ text }) => text).join(' '));
        expect(all).toContain(words);
        for (const tool of ['Back to today', 'How to read this page', 'Copy or save']) expect(all).not.toContain(tool);
      });
  });

test('the week on paper is a sheet for the wall, one for the cab and one of every field, on A4 and on Letter', async ({
  page,
  request,
}) => {
  const { due, fields } = await weekOf(request);
  await page.goto('/');
  await page.getByRole('link', { name: 'Print' }).click();
  await expect(page.locator('.sheet-grid')).toBeVisible();
  for (const format of ['A4', 'Letter'] as const) {
    const sheets = await rendered(await page.pdf({ format }));
    const [wall, cab, all, ...more] = sheets.map(({ text }) => text.replaceAll(/\s+/g, ' '));
    expect(more, format).toEqual([]);
    for (const { name } of [...due.decisions, ...due.scouting]) expect(wall, format).toContain(name);
    for (const { dueSince } of due.decisions) if (dueSince) expect(wall).toMatch(/\d days? late/);
    for (const { station } of due.checks) expect(cab, format).toContain(station);
    for (const { trapId } of due.lures) expect(cab, format).toContain(trapId);
    for (const { name, farm } of fields) for (const said of [name, farm]) expect(all, format).toContain(said);
  }
});

test('this week as it stands, printed, names every decision, field to scout, trap to check and lure that is due', async ({
  page,
  request,
}) => {
  const { due } = await weekOf(request);
  await page.goto('/');
  await expect(page.locator('.week')).toBeVisible();
  const sheets = await rendered(await page.pdf({ format: 'A4' }));
  const all = sheets.map(({ text }) => text.replaceAll(/\s+/g, ' ')).join(' ');
  for (const { name } of [...due.decisions, ...due.scouting]) expect(all).toContain(name);
  for (const { station } of [...due.checks, ...due.lures]) expect(all).toContain(station);
  expect(all).not.toMatch(/and \d+ more/);
});
