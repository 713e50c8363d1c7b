/** Every untidy sheet that is kept with what it must become, through the page: seen, answered, and what it becomes. */
import { sheetEnglish } from '../packages/core/src/index.ts';
import { ANSWERS, expected, files, folder } from '../packages/exchange/src/sheet/fixtures.testing.ts';
import { startEmptyServer } from './own-server.ts';
import { expect, test } from './page.ts';

test('each untidy sheet becomes in the page what it must', async ({ page }) => {
  const server = await startEmptyServer();
  try {
    await page.goto(`${server.url}/program/data/import`);
    for (const file of files) {
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
