/** The checks that run nothing of Duskwatch: style, types, who imports whom, and what nobody uses. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { node, root, tool } from './lib.mjs';

const CHECKS = [
  ['format and lint (Biome)', tool('@biomejs/biome/bin/biome'), 'ci', '.'],
  ...typeScriptConfigs().map((config) => [`types (${config})`, tool('@typescript/native/bin/tsc'), '-p', config]),
  [
    'which package imports which (dependency-cruiser)',
    tool('dependency-cruiser/bin/dependency-cruiser.mjs'),
    '--config',
    'dependency-rules.cjs',
    'packages',
  ],
  ['what nothing uses (knip)', tool('knip/bin/knip.js')],
];

const AT_ONCE = 2;

/** Runs them, some at a time. `done` gets the name of each, whether it passed, and what it printed; see `run` for `behind`. */
export async function runChecks(done, { behind = false } = {}) {
  const waiting = [...CHECKS];
  const work = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const [name, ...args] = next;
      let output = '';
      const code = await node(args, {
        behind,
        heard: (part) => {
          output += part;
        },
      });
      done({ name, passed: code === 0, output });
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
}

function typeScriptConfigs() {
  return readdirSync(join(root, 'packages'))
    .flatMap((name) => readdirSync(join(root, 'packages', name)).map((file) => `packages/${name}/${file}`))
    .filter((path) => /\/tsconfig(\..+)?\.json$/.test(path))
    .sort();
}
