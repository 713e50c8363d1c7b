/** The walk of somebody with ten years of counts in a workbook: from an empty program to a first advice that says why. */
import { workbookOf } from '../packages/exchange/src/testing/workbook-of.ts';
import { startEmptyServer } from './own-server.ts';
import { accessibilityProblems, expect, expectNoSidewaysScroll, test } from './page.ts';

const WEEK_MS = 7 * 86_400_000;
const SITES = ['Oak gate', 'Mill pond', 'Weir', 'North shed'];
/** More than this and she would stay with the workbook: clicks, choices and boxes, the file among them. */
const MOST_ACTS = 12;

/** A sheet per year, a week per column, a site per row, a total below, remarks among the counts; to the day before today. */
function tenYears(today: Date): Uint8Array {
  const year = today.getUTCFullYear();
  const sheets = Array.from({ length: 11 }, (_, ago) => {
    const last = Date.UTC(year - ago, today.getUTCMonth(), today.getUTCDate()) - 86_400_000;
    const days = Array.from({ length: 12 }, (_, week) => new Date(last - (11 - week) * WEEK_MS));
    const rows = SITES.map((site, at) => [
      site,
      ...days.map((_, week) => (week === 3 && at === 1 ? 'trap down' : Math.round(6 * week * (1 + at / 4)))),
    ]);
    const totals = ['Total', ...days.map((_, week) => rows.reduce((sum, row) => sum + (Number(row[week + 1]) || 0), 0))];
    return [`${year - ago}`, { rows: [['Site', ...days], ...rows, totals] }] as const;
  });
  return workbookOf(Object.fromEntries(sheets.reverse()));
}

test('ten years of a workbook become a first advice in a few acts', async ({ page }) => {
  const server = await startEmptyServer();
  let acts = 0;
  const act = async (what: Promise<unknown>) => {
    acts++;
    await what;
  };
  try {
    await page.goto(server.url);
    await act(page.getByRole('link', { name: 'Import a sheet' }).click());
    const buffer = Buffer.from(tenYears(new Date()));
    const mimeType = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
    await act(page.getByLabel('Choose files').setInputFiles({ name: 'counts 2016-2026.xlsx', mimeType, buffer }));
    // Eleven sheets of four traps and twelve weeks; the totals are no trap, and the trap that was down was looked at.
    await expect(page.locator('.import-reading .import-line')).toContainText('4 traps, 528 checks');
    await act(page.getByRole('button', { name: /^Take what is likely/ }).click());
    const given: Readonly<Record<string, string>> = {
      insect: 'helicoverpa-zea',
      design: 'mesh-cone',
      crop: 'sweet-corn',
      farm: 'Brook Farm',
      hungOn: 'first-date',
    };
    for (const [id, answer] of Object.entries(given)) {
      const question = page.locator(`.import-questions [data-name="${id}"]`);
      const list = question.locator('select');
      await act((await list.count()) ? list.selectOption(answer) : question.locator('input').fill(answer));
    }
    await act(page.getByRole('button', { name: 'See what it becomes' }).click());
    await expect(page.locator('.import-becomes .import-line')).toContainText('528 checks; 4 new traps; 4 new fields');
    await act(page.getByRole('button', { name: 'Import', exact: true }).click());
    await expect(page.getByText(/records added/)).toBeVisible();

    await act(page.getByRole('link', { name: 'This week', exact: true }).click());
    const cells = page.locator('.cell');
    await expect(cells).toHaveCount(4);
    // No stage is known: the catch is above the rule, and somebody is sent to look.
    await act(cells.first().click());
    const evidence = page.locator('.open-evidence');
    await expect(evidence).toContainText('it may be at silk');
    await expect(evidence).toContainText('Nobody has recorded the crop’s stage');
    expect(acts).toBeLessThanOrEqual(MOST_ACTS);
    expect(await accessibilityProblems(page)).toEqual([]);
    await expectNoSidewaysScroll(page);
  } finally {
    await page.goto('about:blank');
    await server.stop();
  }
});
