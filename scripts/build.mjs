/** Builds the `duskwatch` command and the web app. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hashOf, isMain, node, root, tool } from './lib.mjs';

const shared = ['package-lock.json', 'tsconfig.json', 'packages/core', 'scripts/build.mjs', 'scripts/build-cli.mjs'];

const products = [
  {
    name: 'command',
    folder: 'packages/cli/dist',
    sources: [...shared, 'packages/exchange', 'packages/store', 'packages/server', 'packages/cli'],
    build: () => node(['scripts/build-cli.mjs']),
  },
  {
    name: 'web app',
    folder: 'packages/web/dist',
    sources: [...shared, 'packages/web'],
    build: () => node([tool('vite/bin/vite.js'), 'build', 'packages/web', '--logLevel', 'warn']),
  },
];

/** Builds each product whose sources are not those it was last built from. Returns whether all are built. */
export async function buildWhatChanged({ always = false } = {}) {
  const built = [];
  for (const { name, folder, sources, build } of products) {
    const stampFile = join(root, folder, '.sources');
    const hash = hashOf(sources);
    if (!always && existsSync(stampFile) && readFileSync(stampFile, 'utf8') === hash) continue;
    console.error(`Building the ${name} …`);
    const succeeded = (await build()) === 0;
    built.push(succeeded);
    if (!succeeded) {
      console.error(`Building the ${name} failed.`);
      continue;
    }
    mkdirSync(join(root, folder), { recursive: true });
    writeFileSync(stampFile, hash);
  }
  return built.every(Boolean);
}

if (isMain(import.meta.url)) process.exitCode = (await buildWhatChanged({ always: true })) ? 0 : 1;
