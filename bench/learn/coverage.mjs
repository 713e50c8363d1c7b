/**
 * How often the intervals of what Duskwatch learns hold the truth, over 500 seeded simulations each; 80 % is stated.
 * Run: node bench/learn/coverage.mjs [seeds]
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const seeds = Number(process.argv[2] ?? 500);
const folder = mkdtempSync(join(tmpdir(), 'duskwatch-coverage-'));
try {
  const outfile = join(folder, 'coverage.mjs');
  await build({
    entryPoints: [join(here, '../../packages/core/src/review/coverage.testing.ts')],
    bundle: true,
    format: 'esm',
    target: 'es2023',
    outfile,
  });
  const { ratioCoverage, decayCoverage, lagCoverage, shareCoverage } = await import(pathToFileURL(outfile).href);

  const pair = { ratio: 2.5, k: 2, perNight: 4, blocks: 12 };
  for (const sites of [1, 2, 3, 4, 6, 10]) {
    const at = `ratio, ${sites} ${sites === 1 ? 'site' : 'sites'}`;
    show(`${at}, traps of a design alike`, ratioCoverage(seeds, { ...pair, sites }));
    show(`${at}, traps differ by log-sd 0.25`, ratioCoverage(seeds, { ...pair, sites, trapLogSd: 0.25 }));
    show(`${at}, and lures lose 3 % a day`, ratioCoverage(seeds, { ...pair, sites, trapLogSd: 0.25, ageing: 0.03 }));
  }
  show('ratio, 4 sites, few moths', ratioCoverage(seeds, { ...pair, sites: 4, perNight: 0.6 }));
  show('ratio, 4 sites, Poisson counts', ratioCoverage(seeds, { ...pair, sites: 4, k: Infinity }));

  const lures = { perDay: -0.04, k: 1.5, perNight: 4, change: 'staggered' };
  show('lure decay, 4 traps, 15 checks', decayCoverage(seeds, { ...lures, traps: 4, checks: 15 }));
  show('lure decay, 12 traps, 20 checks', decayCoverage(seeds, { ...lures, traps: 12, checks: 20 }));
  show('no decay, 6 traps, 15 checks', decayCoverage(seeds, { ...lures, perDay: 0, traps: 6, checks: 15 }));

  const crop = { lag: 12, intercept: -3.5, slope: 0.9, examined: 100 };
  for (const [said, more] of [
    ['30 fields once', { pairs: 30 }],
    ['30 fields once, fields differ by 0.6', { pairs: 30, fieldSd: 0.6 }],
    ['8 fields five times, fields differ by 0.6', { pairs: 40, perField: 5, fieldSd: 0.6 }],
    ['12 fields five times, fields differ by 0.6', { pairs: 60, perField: 5, fieldSd: 0.6 }],
  ]) {
    show(`lag of infestation, ${said}`, lagCoverage(Math.ceil(seeds / 4), { ...crop, ...more }));
    show(`share infested, ${said}`, shareCoverage(Math.ceil(seeds / 4), { ...crop, ...more }, 5));
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function show(name, { seeds: tried, answered, held, bias }) {
  console.log(
    `${name.padEnd(56)} held ${(100 * held).toFixed(1).padStart(5)} %  bias ${bias.toFixed(3).padStart(7)}  answered ${answered}/${tried}`,
  );
}
