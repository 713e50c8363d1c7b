import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineConfig } from '@playwright/test';
import { NAMES } from './scripts/chromium.mjs';

/** A Chromium that is there already; without one, Playwright looks for its own. */
const chromium = [process.env.CHROMIUM_PATH, ...NAMES.map((name) => join('/usr/bin', name))].find(
  (path) => path && existsSync(path),
);

// Workers read this file again: the first reading chooses, and they inherit its choice.
process.env.DUSKWATCH_E2E_PORT ??= String(await freePort());
process.env.DUSKWATCH_E2E_DATA ??= gone(mkdtempSync(join(tmpdir(), 'duskwatch-e2e-')));
const baseURL = `http://127.0.0.1:${process.env.DUSKWATCH_E2E_PORT}`;

const launchOptions = {
  ...(chromium && { executablePath: chromium }),
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
};

/** Told once: the ground of the map is the same at every size, and programs are begun and documents printed at a desk. */
const DESK_ONLY = /(base-map|bulletin|counts|documents|first-advice|import|programs|sheets|weather|workbook-walk)\.spec\.ts$/;
/** Rounds, codes and scouting are for phones; a desk that never walks a round keeps nothing for a day without a network. */
const PHONE_ONLY = /(offline-week|round|round-troubles|round-visit|scan|scout|updates|walks)\.spec\.ts$/;

/** Of what is told at both sizes, the tests of what does not change with the size, in a state that `everywhere` sweeps at both. */
const TOLD_AT_A_DESK = /@desk/;

export default defineConfig({
  testDir: 'e2e',
  outputDir: 'test-results',
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  // A shared machine can starve a browser: where nobody watches, what fails is tried once more, and named if it then passes.
  retries: process.env.CI ? 1 : 0,
  // For a machine that is busy with others: no test is judged by the clock, and only what never comes fails by it. The
  // longest test takes 20 s on two processors.
  timeout: 240_000,
  expect: { timeout: 90_000 },
  // Following a test picture by picture takes a third of the processor: only what failed once is followed. Or `--trace on`.
  use: { baseURL, launchOptions, locale: 'en-US', timezoneId: 'America/New_York', trace: 'on-first-retry' },
  projects: [
    { name: 'desk', testIgnore: PHONE_ONLY, use: { viewport: { width: 1440, height: 900 } } },
    {
      name: 'phone',
      testIgnore: DESK_ONLY,
      grepInvert: TOLD_AT_A_DESK,
      use: { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true },
    },
  ],
  webServer: {
    command: `node packages/cli/bin/duskwatch.mjs serve --demo --port ${process.env.DUSKWATCH_E2E_PORT} --data "${process.env.DUSKWATCH_E2E_DATA}"`,
    url: `${baseURL}/api/health`,
    timeout: 300_000,
    reuseExistingServer: false,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 30_000 },
  },
});

/** A folder that goes with this process: the running demo's data; what is beside it by its name, the workers keep there. */
function gone(folder: string): string {
  process.once('exit', () => {
    for (const each of [folder, `${folder}-demo`]) rmSync(each, { recursive: true, force: true });
  });
  return folder;
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => (address && typeof address === 'object' ? resolve(address.port) : reject(new Error('no port'))));
    });
  });
}
