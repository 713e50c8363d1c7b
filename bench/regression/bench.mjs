/**
 * Negative binomial regression of 10,000 checks against R's `MASS::glm.nb` on the same rows, in one run.
 * Target: at most twice R's wall time. R starts and reads the rows outside the clock; both build the design inside it.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const ROWS = 10_000;
const TRAPS = 8;
const BLOCKS = 25;
const RUNS = 7;
const TARGET = 2;

/** @returns {Promise<{ name: string, milliseconds: number, referenceMilliseconds: number | null, ratio: number | null, target: number, met: boolean | null, note: string }>} */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-regression-'));
  const reference = hasMass() ? startR(folder) : null;
  try {
    const { negativeBinomialRegression, randomFrom } = await coreFromSource(folder);
    const rows = inventedChecks(randomFrom(2026));
    writeFileSync(join(folder, 'rows.csv'), csvOf(rows));

    const own = [];
    const theirs = [];
    let difference = 0;
    for (let i = -2; i < RUNS; i++) {
      const begun = performance.now();
      const fit = negativeBinomialRegression(designOf(rows));
      const milliseconds = performance.now() - begun;
      if (!fit.ok) throw new Error(JSON.stringify(fit.problems));
      const answer = await reference?.once();
      if (answer)
        difference = Math.max(difference, Math.abs(fit.value.k / answer.theta - 1), largestDifference(fit.value, answer));
      if (i < 0) continue; // both warm up
      own.push(milliseconds);
      if (answer) theirs.push(answer.milliseconds);
    }
    if (!(difference < 1e-4)) throw new Error(`the two fits disagree by ${difference}`);

    const milliseconds = median(own);
    const referenceMilliseconds = reference ? median(theirs) : null;
    const ratio = referenceMilliseconds === null ? null : milliseconds / referenceMilliseconds;
    return {
      name: `negative binomial regression, ${ROWS.toLocaleString('en')} checks, ${TRAPS + BLOCKS} columns, against R's glm.nb`,
      milliseconds,
      referenceMilliseconds,
      ratio,
      target: TARGET,
      met: ratio === null ? null : ratio <= TARGET,
      note: reference
        ? `median of ${RUNS} alternated runs; largest difference of an estimate ${difference.toExponential(1)}`
        : 'no R with MASS here: nothing to compare with',
    };
  } finally {
    reference?.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function coreFromSource(folder) {
  const outfile = join(folder, 'statistics.mjs');
  await build({
    stdin: {
      contents:
        "export { negativeBinomialRegression } from './negative-binomial-regression.ts'; export { randomFrom } from './random.testing.ts';",
      resolveDir: join(here, '../../packages/core/src/statistics'),
    },
    bundle: true,
    format: 'esm',
    target: 'es2023',
    outfile,
  });
  return import(pathToFileURL(outfile).href);
}

/** Seeded counts with known effects of trap, night and lure age. */
function inventedChecks(random) {
  const trapEffects = Array.from({ length: TRAPS }, () => 0.5 * random.normal());
  const blockEffects = Array.from({ length: BLOCKS }, () => 0.8 * random.normal());
  return Array.from({ length: ROWS }, () => {
    const trap = Math.floor(random.uniform() * TRAPS);
    const block = Math.floor(random.uniform() * BLOCKS);
    const lureAge = Math.floor(random.uniform() * 28);
    const nights = 1 + Math.floor(random.uniform() * 7);
    const mean = nights * Math.exp(0.5 + trapEffects[trap] + blockEffects[block] - 0.03 * lureAge);
    return { trap, block, lureAge, nights, count: random.negativeBinomial(mean, 1.5) };
  });
}

function designOf(rows) {
  const indicator = (key, level) => Float64Array.from(rows, (row) => (row[key] === level ? 1 : 0));
  const levels = (key, count) => Array.from({ length: count - 1 }, (_, j) => [`${key}${j + 1}`, indicator(key, j + 1)]);
  const columns = [
    ['(Intercept)', new Float64Array(rows.length).fill(1)],
    ...levels('trap', TRAPS),
    ...levels('block', BLOCKS),
    ['lureAge', Float64Array.from(rows, (row) => row.lureAge)],
  ];
  return {
    y: rows.map((row) => row.count),
    X: columns.map(([, column]) => column),
    names: columns.map(([name]) => name),
    offset: rows.map((row) => Math.log(row.nights)),
  };
}

const csvOf = (rows) =>
  [Object.keys(rows[0]).join(','), ...rows.map((row) => Object.values(row).join(','))].join('\n').concat('\n');

function hasMass() {
  return spawnSync('Rscript', ['-e', 'library(MASS)'], { stdio: 'ignore' }).status === 0;
}

/** One R process that fits the rows each time it is asked. */
function startR(folder) {
  let child;
  let lines;
  const start = () => {
    child = spawn('Rscript', [join(here, 'reference.R'), join(folder, 'rows.csv')], { stdio: ['pipe', 'pipe', 'inherit'] });
    lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  };
  return {
    async once() {
      if (!child) start();
      child.stdin.write('fit\n');
      const { value, done } = await lines.next();
      if (done) throw new Error('R ended without an answer');
      const [milliseconds, theta, ...estimates] = value.trim().split(/\s+/).map(Number);
      return { milliseconds, theta, estimates };
    },
    stop: () => child?.stdin.end(),
  };
}

function largestDifference({ coefficients }, { estimates }) {
  return Math.max(...coefficients.map(({ estimate }, j) => Math.abs(estimate - estimates[j])));
}

function median(values) {
  return values.toSorted((a, b) => a - b)[values.length >> 1];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { name, milliseconds, referenceMilliseconds, ratio, target, note } = await run();
  console.log(name);
  console.log(`  Duskwatch ${milliseconds.toFixed(1)} ms`);
  if (ratio !== null)
    console.log(`  glm.nb    ${referenceMilliseconds.toFixed(1)} ms\n  ratio     ${ratio.toFixed(2)} (target ${target})`);
  console.log(`  ${note}`);
}
