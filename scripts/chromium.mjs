/** Finds a Chromium for the browser tests, or installs one. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';
import { node, root, run, tool } from './lib.mjs';

/** The lightest first: a Chromium that has no window to draw takes a quarter less of the processor for the same pages. */
export const NAMES = ['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** The path of a Chromium that starts; null, with the reason on stderr, when there is none and none could be had. */
export async function findChromium() {
  const found = present();
  if (found) return found;
  console.error('No Chromium found; installing one for the browser tests …');
  await node([tool('@playwright/test/cli.js'), 'install', 'chromium']);
  const own = present();
  if (own) return own;
  if (process.getuid?.() === 0 && onPath('apt-get')) {
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    await run('apt-get', ['update', '-q'], { env });
    // Not every release of Debian has the lighter one.
    for (const name of NAMES.slice(0, 2))
      if (!present()) await run('apt-get', ['install', '-y', '-q', '--no-install-recommends', name], { env });
  }
  const installed = present();
  if (!installed) console.error('The browser tests need a Chromium: install one, or name its path in CHROMIUM_PATH.');
  return installed;
}

function present() {
  return [process.env.CHROMIUM_PATH, ...NAMES.map(onPath), playwrightsOwn()].find((path) => path && starts(path)) ?? null;
}

function onPath(name) {
  return (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));
}

function playwrightsOwn() {
  try {
    return createRequire(join(root, 'package.json'))('playwright-core').chromium.executablePath();
  } catch {
    return null;
  }
}

function starts(path) {
  try {
    execFileSync(path, ['--version'], { stdio: 'ignore', timeout: 30_000 });
    return true;
  } catch {
    return false;
  }
}
