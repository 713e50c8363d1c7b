import type { CheckRecord } from '../packages/core/src/index.ts';
import { test } from './own-test.ts';
import { accessibilityProblems, expect } from './page.ts';
import { records, roundOf } from './round.ts';

test('a day of counts is typed with digits and Tab, pasted from a spreadsheet, saved together and taken back together', async ({
  page,
  request,
}) => {
  const view = await roundOf(request);
  const open = view.stops.flatMap(({ traps }) => traps).filter(({ lastVisit }) => lastVisit?.on !== view.on);
  const ofDay = async () => (await records<CheckRecord>(request, 'checks')).filter(({ value }) => value.checkedOn === view.on);
  const before = (await ofDay()).length;
  await page.goto('/rounds/counts');
  const boxes = page.locator('input[data-box="target"]');
  await expect(boxes).toHaveCount(open.length);

  await boxes.first().focus();
  await page.keyboard.type('3');
  await page.keyboard.press('Tab');
  await page.keyboard.type('0');
  await page.keyboard.press('Enter');
  await expect(boxes.nth(2)).toBeFocused();

  const paste = (text: string) =>
    boxes.nth(2).evaluate((box, copied) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', copied);
      box.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
    }, text);
  await paste('4\nabout 5');
  await expect(page.locator('.counts-pasted')).toContainText('line 2, “about 5”');
  await expect(boxes.nth(2)).toHaveValue('');
  expect(await accessibilityProblems(page)).toEqual([]);
  await paste('4\n\n99999');
  await expect(boxes.nth(4)).toHaveValue('99999');
  await expect(page.getByText(/^Far above the last count/)).toBeVisible();

  // Left and come back to: what was typed is still there.
  await page.goto('/rounds');
  await page.goto('/rounds/counts');
  await expect(boxes.nth(4)).toHaveValue('99999');
  await page.getByRole('button', { name: 'Save 4 counts' }).click();
  await expect(page.getByText(/^1 count is far above/)).toBeVisible();
  await expect(boxes.nth(4)).toBeFocused();
  expect((await ofDay()).length).toBe(before);
  await page.getByRole('button', { name: 'Save 4 counts' }).click();
  await expect(page.getByText(/^Saved: 4 checks/)).toBeVisible();
  await expect(boxes).toHaveCount(open.length - 4);
  const counts = new Map((await ofDay()).map(({ value }) => [value.trapId, value.targetCount]));
  expect([0, 1, 2, 4].map((nth) => counts.get(open[nth]!.trapId))).toEqual([3, 0, 4, 99999]);
  expect(counts.has(open[3]!.trapId)).toBe(false);

  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Undone.')).toBeVisible();
  await expect.poll(async () => (await ofDay()).length).toBe(before);
  await expect(boxes).toHaveCount(open.length);
});
