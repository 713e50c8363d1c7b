import type { Page } from '@playwright/test';
import { type OwnServer, startServer } from './own-server.ts';
import { expect, test } from './page.ts';
import { archive, type Colour, startTiles } from './tiny-map.ts';

// A software renderer talks of its own slowness, and a tile that is not there is noted, in the console.
test.use({ mayComplain: true });
// One map server for the file.
test.describe.configure({ mode: 'serial' });

const PLUM: Colour = [142, 36, 110];
const TEAL: Colour = [20, 132, 128];

let tiles: Awaited<ReturnType<typeof startTiles>>;
let server: OwnServer;
test.beforeAll(async () => {
  tiles = await startTiles(TEAL);
  server = await startServer('--map-origin', tiles.url);
});
test.afterAll(async () => {
  await server.stop();
  await tiles.stop();
});

test.beforeEach(async ({ page }) => {
  await page.goto(`${server.url}/map`);
  await expect(page.locator('.station-mark').first()).toBeVisible();
  await page.getByText('Base map', { exact: true }).click();
});

/** The part of the ground, as it is seen, that has this colour. */
async function share(page: Page, colour: Colour): Promise<number> {
  const picture = (await page.locator('div.ground').screenshot()).toString('base64');
  // Another page decodes it: the app's content policy refuses data addresses.
  const decoder = await page.context().newPage();
  const found = await decoder.evaluate(
    async ([base64, wanted]) => {
      const image = new Image();
      image.src = `data:image/png;base64,${base64}`;
      await image.decode();
      const { width, height } = image;
      const brush = new OffscreenCanvas(width, height).getContext('2d')!;
      brush.drawImage(image, 0, 0);
      const { data } = brush.getImageData(0, 0, width, height);
      let alike = 0;
      for (let at = 0; at < data.length; at += 4) if (wanted.every((value, i) => Math.abs(data[at + i]! - value) <= 2)) alike++;
      return alike / (width * height);
    },
    [picture, colour] as const,
  );
  await decoder.close();
  return found;
}

const drawn = (page: Page, colour: Colour) => expect.poll(() => share(page, colour).catch(() => 0)).toBeGreaterThan(0.6);

async function use(page: Page, address: string) {
  await page.getByLabel('An address').fill(address);
  await page.getByRole('button', { name: 'Use it' }).click();
}

test('a PMTiles file of this device is drawn under the stations, with its credit, and goes when it is put away', async ({
  page,
}) => {
  expect(await share(page, PLUM)).toBe(0);
  await page.getByLabel('A PMTiles file of this device').setInputFiles({
    name: 'county.pmtiles',
    mimeType: 'application/octet-stream',
    buffer: archive(PLUM, '© Invented surveyors'),
  });
  await drawn(page, PLUM);
  await expect(page.locator('.ground-credit')).toHaveText('© Invented surveyors');
  await expect(page.locator('.station-mark').first()).toBeVisible();
  await expect(page.locator('.ground-fault')).toHaveCount(0);
  await page.getByRole('button', { name: 'None: plain paper' }).click();
  await expect.poll(() => share(page, PLUM).catch(() => 1)).toBe(0);
});

test('tiles of a region are drawn from an address that the server allows, and again at the next visit', async ({ page }) => {
  await use(page, `${tiles.url}/{z}/{x}/{y}.png`);
  await drawn(page, TEAL);
  // The first may be drawn before the second has been asked for.
  const ofRegion = () => tiles.asked().filter((path) => /^\/([3-9]|1\d)\/\d+\/\d+\.png$/.test(path));
  await expect.poll(() => ofRegion().length).toBeGreaterThan(1);
  await page.reload();
  await drawn(page, TEAL);
});

test('a PMTiles file at an address is read in parts', async ({ page }) => {
  await use(page, `${tiles.url}/world.pmtiles`);
  await drawn(page, TEAL);
  await expect(page.locator('.ground-credit')).toHaveText('A credit inside');
});

test('a base map that is not there, or is none, is told, and the stations stand all the same', async ({ page }) => {
  const fault = page.locator('.ground-fault');
  const stations = await page.locator('.station-mark').count();
  await use(page, `${tiles.url}/elsewhere.pmtiles`);
  await expect(fault).toContainText('The base map could not be read: 404');
  await use(page, `${tiles.url}/nowhere/{z}/{x}/{y}.png`);
  await expect(fault).toContainText('could not be read');
  await page.getByLabel('A PMTiles file of this device').setInputFiles({
    name: 'notes.pmtiles',
    mimeType: 'application/octet-stream',
    buffer: Buffer.from('not a map at all '.repeat(20)),
  });
  await expect(fault).toContainText('notes.pmtiles');
  await expect(page.locator('.station-mark')).toHaveCount(stations);
  await page.getByText('Table behind the map').click();
  await page.locator('.behind .row-button').first().click();
  await expect(page.locator('.map-panel h2')).toBeVisible();
  await expect(page).toHaveURL(/field=/);
});
