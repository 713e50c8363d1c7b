/**
 * Driving order of 100 stations against the Held–Karp bound, which no order can undercut, on invented landscapes:
 * scattered, and in clusters about farms.
 * Target: at most 5 % above the bound on every one.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const STATIONS = 100;
const LANDSCAPES = 4;
const TARGET = 1.05;

/** @returns {Promise<{ name: string, milliseconds: number, ratio: null, target: number, met: boolean, note: string }[]>} */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-route-'));
  try {
    const search = await coreFromSource(folder);
    return [
      judge(search, 'scattered stations, open way', scattered, { start: null, returns: false }),
      judge(search, 'clusters of stations, from the farm and back', clustered, { start: 0, returns: true }),
      judge(search, 'clusters of stations, from the farm, open way', clustered, { start: 0, returns: false }),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function judge({ shortPath, pathCost, lowerBound }, name, landscape, options) {
  const ratios = [];
  let milliseconds = 0;
  for (let seed = 1; seed <= LANDSCAPES; seed++) {
    const cost = distances(landscape(randomFrom(seed)));
    const begun = process.cpuUsage();
    const path = shortPath(cost, options);
    const { user, system } = process.cpuUsage(begun);
    milliseconds += (user + system) / 1_000 / LANDSCAPES;
    ratios.push(pathCost(cost, path, options.returns) / lowerBound(cost, options, path));
  }
  const worst = Math.max(...ratios);
  return {
    name: `driving order of ${STATIONS} ${name}`,
    milliseconds,
    ratio: null,
    target: TARGET,
    met: worst <= TARGET,
    note: `length over the bound: ${ratios.map((ratio) => ratio.toFixed(4)).join(', ')} (target ${TARGET}); processor time per order`,
  };
}

const scattered = (random) => Array.from({ length: STATIONS }, () => [random() * 20, random() * 20]);

function clustered(random) {
  const farms = Array.from({ length: 8 }, () => [random() * 20, random() * 20]);
  return Array.from({ length: STATIONS }, (_, i) => farms[i % farms.length].map((at) => at + random() + random() - 1));
}

const distances = (points) => points.map(([x, y]) => points.map(([u, v]) => Math.hypot(x - u, y - v)));

function randomFrom(seed) {
  let state = seed * 20_260;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    const mixed = Math.imul(state ^ (state >>> 16), 0x45d9f3b);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
}

async function coreFromSource(folder) {
  const outfile = join(folder, 'route.mjs');
  await build({
    stdin: {
      contents: "export { shortPath, pathCost } from './path-search.ts'; export { lowerBound } from './route-bound.ts';",
      resolveDir: join(here, '../../packages/core/src/planning'),
    },
    bundle: true,
    format: 'esm',
    target: 'es2023',
    outfile,
  });
  return import(pathToFileURL(outfile).href);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { name, milliseconds, met, note } of await run())
    console.log(`${name}\n  ${milliseconds.toFixed(0)} ms\n  ${note}\n  target ${met ? 'met' : 'MISSED'}`);
}
