/** What the benches of the app share: the demo behind a server of its own, and a browser in front of it. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { findChromium } from '../scripts/chromium.mjs';

/** Serves the demo program while something is done with it, and takes both away. */
export async function withDemo(port, use) {
  const data = mkdtempSync(join(tmpdir(), 'duskwatch-bench-'));
  const server = spawn(
    process.execPath,
    ['packages/cli/bin/duskwatch.mjs', 'serve', '--demo', '--port', String(port), '--data', data],
    { stdio: ['ignore', 'pipe', 'ignore'] },
  );
  try {
    await new Promise((resolve, reject) => {
      server.stdout.on('data', (part) => String(part).includes('http://') && resolve());
      server.once('exit', (code) => reject(new Error(`the server ended with ${code}`)));
    });
    return await use(`http://127.0.0.1:${port}`);
  } finally {
    server.kill('SIGTERM');
    if (server.exitCode === null) await once(server, 'exit');
    rmSync(data, { recursive: true, force: true });
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
