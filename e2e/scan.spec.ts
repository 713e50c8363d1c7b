import type { Page } from '@playwright/test';
import { freshTest as test } from './own-test.ts';
import { expect } from './page.ts';
import { roundOf, save } from './round.ts';

// Without a network, a console complains.
test.use({ mayComplain: true });

/** The round is kept here, and the phone then has no signal. */
async function keptOffline(page: Page) {
  await page.goto('/round');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await expect(page.getByRole('button', { name: 'Start the round' })).toBeVisible();
  await page.context().setOffline(true);
}

async function expectPad(page: Page, trapId: string) {
  const outside = page.getByRole('button', { name: /stands outside/ });
  await expect(save(page).or(outside)).toBeVisible();
  if (await outside.isVisible()) await outside.click();
  await expect(save(page)).toBeVisible();
  await expect(page.locator('#page')).toContainText(trapId);
}

test('a label scanned without signal opens that trap, in a round and before one', async ({ page, request }) => {
  const { stops } = await roundOf(request);
  const due = stops.filter((stop) => stop.due);
  const [first, second] = [due[0]!.traps.find((trap) => trap.due)!, due[1]!.traps.find((trap) => trap.due)!];
  await keptOffline(page);
  await page.goto(`/round?trap=${encodeURIComponent(first.trapId)}`);
  await expect(page.getByText('This trap is due.')).toBeVisible();
  await page.getByRole('button', { name: 'Check this trap' }).click();
  await expectPad(page, first.trapId);
  // Now there is a round: the next code opens at once.
  await page.goto(`/round?trap=${encodeURIComponent(second.trapId)}`);
  await expectPad(page, second.trapId);
});

test('a trap that today’s round does not pass joins it, and an unknown one is named', async ({ page, request }) => {
  const { stops } = await roundOf(request);
  const other = stops.find((stop) => !stop.due);
  expect(other, 'a station that is not due').toBeDefined();
  const { trapId } = other!.traps[0]!;
  await keptOffline(page);
  await page.getByRole('button', { name: 'Start the round' }).click();
  const listed = await page.locator('.stops > li').count();
  await page.goto(`/round?trap=${encodeURIComponent(trapId)}`);
  await expect(page.getByText(/^Not due until/)).toBeVisible();
  await page.getByRole('button', { name: 'Check this trap' }).click();
  await expectPad(page, trapId);
  await page.goto('/round');
  await expect(page.locator('.stops > li')).toHaveCount(listed + 1);
  await page.goto('/round?trap=nobody%20hung%20this');
  await expect(page.getByRole('heading', { name: 'No trap nobody hung this here' })).toBeVisible();
  await page.getByRole('button', { name: 'To the round' }).click();
  await expect(page.locator('.stops > li')).toHaveCount(listed + 1);
});
