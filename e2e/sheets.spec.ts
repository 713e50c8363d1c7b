/** Every untidy sheet that is kept with what it must become, through the page: seen, answered, and what it becomes. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type SheetReading, sheetEnglish } from '../packages/core/src/index.ts';
import { startEmptyServer } from './own-server.ts';
import { expect, test } from './page.ts';

const folder = fileURLToPath(new URL('../packages/exchange/fixtures/', import.meta.url));
const expected = JSON.parse(readFileSync(`${folder}expected.json`, 'utf8')) as Record<string, SheetReading>;

/** As somebody answers who knows the program; else what is offered is taken. */
const ANSWERS: Readonly<Record<string, string>> = {
  insect: 'helicoverpa-zea',
  design: 'mesh-cone',
  crop: 'sweet-corn',
  farm: 'Invented Farm',
  field: 'each-trap',
  condition: 'fit',
  hungOn: '2020-04-20',
  year: '2025',
};

test('each untidy sheet becomes in the page what it must', async ({ page }) => {
  const server = await startEmptyServer();
  try {
    await page.goto(`${server.url}/program/data/import`);
    for (const file of readdirSync(folder).filter((name) => name !== 'expected.json')) {
      await test.step(file, async () => {
        const reading = expected[file]!;
        await page.getByLabel('Choose files').setInputFiles(folder + file);
        const understood = page.getByRole('region', { name: 'What was understood' });
        await expect(understood.locator('.import-line')).toHaveText(sheetEnglish.reading(reading));
        const open = page.locator('.import-questions [data-name]');
        for (let at = 0; at < (await open.count()); at++) {
          const question = open.nth(at);
          const answer = ANSWERS[(await question.getAttribute('data-name'))!];
          const list = question.locator('select');
          if (answer === undefined) await question.getByRole('button', { name: /^Perhaps/ }).click();
          else if (await list.count()) await list.selectOption(answer);
          else await question.locator('input').fill(answer);
        }
        await page.getByRole('button', { name: 'See what it becomes' }).click();
        const becomes = page.getByRole('region', { name: 'What it becomes' });
        await expect(becomes.locator('.import-line')).toContainText(
          reading.kind === 'weather' ? `${reading.days} days of weather` : `${reading.checks} checks; ${reading.traps} new traps`,
        );
      });
    }
  } finally {
    await page.goto('about:blank');
    await server.stop();
  }
});
