import { expect, test } from './page.ts';

// Without a network the console complains of each answer that does not come.
test.use({ mayComplain: true });

test('without signal the week stands as it was last read, with the evidence of what sends somebody out', async ({
  page,
  context,
}) => {
  await page.goto('/round');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.goto('/');
  await expect(page.locator('.cell').first()).toBeVisible();
  const sent = page.locator('.cell.verb-decide, .cell.verb-scout');
  const kept = () =>
    page.evaluate(async () => {
      const cache = await caches.open('duskwatch-answers');
      return (await cache.keys()).filter(({ url }) => url.includes('/api/advice/')).length;
    });
  await expect.poll(kept).toBe(await sent.count());

  await context.setOffline(true);
  await page.reload();
  await sent.last().click();
  await expect(page.locator('.open-evidence').getByRole('heading', { name: 'Because' })).toBeVisible();
  await page.locator('.cell.verb-watch').first().click();
  await expect(page.getByRole('alert')).toHaveText(/not kept on this device/);
  await context.setOffline(false);
  await page.getByRole('alert').getByRole('button', { name: 'Try again' }).click();
  await expect(page.locator('.open-evidence').getByRole('heading', { name: 'Because' })).toBeVisible();
});
