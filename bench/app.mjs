/** What the benches of the app share: the demo behind a server of its own, and a browser in front of it. */
import { chromium } from '@playwright/test';
import { findChromium } from '../scripts/chromium.mjs';
import { served } from '../scripts/served.mjs';

/** Serves the demo program while something is done with it, and takes both away. */
export async function withDemo(port, use) {
  const server = await served(port, '--demo');
  try {
    return await use(server.address);
  } finally {
    await server.stop();
  }
}

export async function withBrowser(use) {
  const browser = await chromium.launch({
    executablePath: (await findChromium()) ?? undefined,
    args: ['--no-sandbox', '--disable-gpu'],
  });
  try {
    return await use(browser);
  } finally {
    await browser.close();
  }
}
