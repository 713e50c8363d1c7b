/** A decision that is due is answered where it is listed: treated, or not, with the reason. */
import { daysLateOn } from '../packages/core/src/index.ts';
import { freshTest } from './own-test.ts';
import { accessibilityProblems, expect, fieldOf, record, weekOf } from './page.ts';

freshTest(
  'decided not to treat, because …: the late decision is answered on this week and is gone from it',
  async ({ page, request }) => {
    const { on, due } = await weekOf(request);
    const late = due.decisions.find(({ dueSince }) => daysLateOn(on, dueSince) > 0)!;
    await page.goto('/');
    const line = page.locator('.due-late').filter({ hasText: late.name });
    await expect(line).toContainText(/days? late, unanswered since/);
    await line.getByRole('button', { name: /^Answer/ }).click();
    const panel = page.getByRole('dialog', { name: new RegExp(`^Answer: ${late.name}`) });
    await panel.getByRole('radio', { name: 'Decided not to treat, because …' }).check({ force: true });
    await expect(panel).toContainText(`${late.name}, ${late.farm}`);
    await panel.getByRole('button', { name: 'Save' }).click();
    await expect(panel.locator('.faults')).toHaveCount(1);
    await panel.getByLabel(/^Because/).selectOption('natural-enemies');
    expect(await accessibilityProblems(page, 'dialog[open]')).toEqual([]);
    await panel.getByRole('button', { name: 'Save' }).click();
    await expect(page.getByText('Saved: decision not to act')).toBeVisible();
    await expect(page.locator('.due-decisions').filter({ hasText: late.name })).toHaveCount(0);
    const after = (await weekOf(request)).due.decisions;
    expect(after).toHaveLength(due.decisions.length - 1);
    const { insects } = await fieldOf(request, late.fieldId);
    const insect = insects.find((each) => each.insect.id === late.insect)!;
    expect(insect.decisions.at(-1)).toMatchObject({ decidedOn: on, decision: 'not-treated', reason: 'natural-enemies' });
    await page.goto(`/fields/${late.fieldId}#${late.insect}`);
    await expect(page.locator('.verdict')).toContainText('natural enemies are at work');
    await expect(page.locator('.season-log')).toContainText('not to treat, natural enemies are at work');
  },
);

freshTest(
  'a treatment asks for its product or that nobody knows it, and is kept for each of several insects',
  { tag: '@desk' },
  async ({ page, request }) => {
    const fieldId = 'quernstead-kiln';
    await page.goto(`/fields/${fieldId}#helicoverpa-zea`);
    await record(page, 'Treatment');
    const form = page.getByRole('dialog', { name: 'Record a treatment' });
    await expect(form.locator('.record-of')).toContainText('Kiln Strip, Quernstead · sweet corn · corn earworm');
    await expect(form).toContainText('The product label is the law');
    await form.getByRole('button', { name: 'Save' }).click();
    await expect(form.locator('[data-name="product"] .faults')).toHaveCount(1);
    await form.getByLabel('Nobody knows which product').check();
    await expect(form.locator('[data-name="product"] .faults')).toHaveCount(0);
    await form.getByLabel('Nobody knows which product').uncheck();
    await form.locator('[data-name="product"] input').fill('Product D (invented)');
    await form.getByLabel('Begun at').fill('06:30');
    await form.locator('[data-name="rate"] input').fill('0.7');
    await form.getByRole('button', { name: 'Save' }).click();
    await expect(form.locator('[data-name="rateUnit"] .faults')).toHaveCount(1);
    await form.getByLabel('Unit of the rate').selectOption('l-per-ha');
    await form.getByLabel('Applied by').fill('Ida Brook');
    await form.getByLabel('Protects, days').fill('4');
    await form.getByLabel('Re-entry, hours').fill('12');
    await form.getByLabel('Pre-harvest, days').fill('3');
    await form.getByRole('checkbox', { name: 'European corn borer' }).check();
    await form.getByRole('button', { name: 'Save' }).click();
    await expect(page.getByText('Saved: treatment')).toBeVisible();
    const { on, insects } = await fieldOf(request, fieldId);
    for (const id of ['helicoverpa-zea', 'ostrinia-nubilalis'])
      expect(insects.find(({ insect }) => insect.id === id)!.treatments).toContainEqual(
        expect.objectContaining({
          appliedOn: on,
          appliedAt: '06:30',
          product: 'Product D (invented)',
          rate: 0.7,
          rateUnit: 'l-per-ha',
        }),
      );
    await expect(page.locator('.field-evidence')).toContainText('18:30');
    await expect(page.locator('.season-log')).toContainText('Product D (invented), 0.7 l/ha, 06:30');
  },
);

freshTest('a product that nobody knows is kept as a fact, and never as a word', { tag: '@desk' }, async ({ page, request }) => {
  const fieldId = 'dunnoch-sparrow';
  await page.goto(`/fields/${fieldId}#helicoverpa-zea`);
  await record(page, 'Treatment');
  const form = page.getByRole('dialog', { name: 'Record a treatment' });
  await form.getByLabel('Nobody knows which product').check();
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Saved: treatment')).toBeVisible();
  const kept = await (await request.get('/api/records/treatments')).json();
  expect(kept.map(({ value }: { value: object }) => value)).toContainEqual(
    expect.objectContaining({ fieldId, product: '', productUnknown: true }),
  );
  await expect(page.locator('.season-log')).toContainText('product not known');
});

/** A picture of one grey pixel. */
const PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
);

freshTest('a check takes a photo from the camera or from a file, and keeps it by its name', async ({ page, request }) => {
  await page.goto('/traps/DU1-HZ-26');
  await page.getByRole('button', { name: 'Record a check' }).click();
  const form = page.getByRole('dialog', { name: 'Record a check' });
  await expect(form.locator('.record-of')).toContainText('DU1-HZ-26 · Dunnoch End 1 · corn earworm');
  await expect(form.locator('input[type="file"][capture]')).toHaveCount(1);
  await form.getByLabel('Target moths').fill('3');
  await form
    .getByLabel('Choose a file')
    .setInputFiles({ name: 'not-a-picture.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no') });
  await expect(form.getByText('This browser cannot read that as a picture.')).toBeVisible();
  await form.getByLabel('Choose a file').setInputFiles({ name: 'trap.png', mimeType: 'image/png', buffer: PIXEL });
  await expect(form.getByText('Kept; it goes with the check.')).toBeVisible();
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Saved: check')).toBeVisible();
  type Kept = { readonly value: { readonly trapId: string; readonly photo?: string } };
  // Saved is kept on this machine: the photo goes to the server first, and then the check.
  const kept = async (): Promise<string> => {
    const checks: readonly Kept[] = await (await request.get('/api/records/checks')).json();
    return checks.find(({ value }) => value.trapId === 'DU1-HZ-26' && value.photo)?.value.photo ?? '';
  };
  await expect.poll(kept).toMatch(/^[0-9a-f]{64}$/);
  const photo = await kept();
  await expect.poll(async () => (await request.get(`/api/photos/${photo}`)).status()).toBe(200);
});
