/**
 * Bulk degree-days against plain C: single sine, horizontal cutoff, 10,000 station-years, in one run.
 * Target: at most 1.5 times the time of the same loop compiled with `cc -O3`.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const STATIONS = 1_000;
const DAYS = 3_652; // ten years
const RUNS = 15;
const TARGET = 1.5;
const RULE = { method: 'single-sine', cutoff: 'horizontal', lower: 50, upper: 88, unit: 'F' };

/** @returns {Promise<{ name: string, milliseconds: number, referenceMilliseconds: number | null, ratio: number | null, target: number, met: boolean | null, note: string }>} */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-heat-'));
  try {
    const { dailyDegreeDays, thresholdsOf } = await coreFromSource(folder);
    const stations = inventedStations();
    const reference = compileReference(folder, stations, thresholdsOf(RULE));

    const heat = stations.map(() => new Float64Array(DAYS));
    const own = [];
    const c = [];
    let difference = 0;
    for (let i = -2; i < RUNS; i++) {
      const pass = () =>
        stations.forEach((series, s) => {
          dailyDegreeDays(RULE, series, heat[s]);
        });
      pass(); // as the C program does, the second of two passes is timed
      const milliseconds = processorTime(pass);
      const answer = reference?.();
      if (answer) difference = Math.max(difference, largestDifference(heat, answer.heat));
      if (i < 0) continue; // the compiler of the engine warms up
      own.push(milliseconds);
      if (answer) c.push(answer.milliseconds);
    }
    if (!(difference <= 1e-9)) throw new Error(`the two loops disagree by ${difference} °C·d`);

    const milliseconds = median(own);
    const referenceMilliseconds = reference ? median(c) : null;
    const ratio = referenceMilliseconds === null ? null : milliseconds / referenceMilliseconds;
    return {
      name: 'bulk single sine, horizontal cutoff, 10,000 station-years, against C at -O3',
      milliseconds,
      referenceMilliseconds,
      ratio,
      target: TARGET,
      met: ratio === null ? null : ratio <= TARGET,
      note: reference
        ? `processor time, median of ${RUNS} alternated runs; largest difference ${difference.toExponential(1)} °C·d`
        : 'no C compiler here: nothing to compare with',
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function coreFromSource(folder) {
  const outfile = join(folder, 'heat.mjs');
  await build({
    stdin: {
      contents: "export { dailyDegreeDays } from './daily.ts'; export { thresholdsOf } from './rule.ts';",
      resolveDir: join(here, '../../packages/core/src/heat'),
    },
    bundle: true,
    format: 'esm',
    target: 'es2023',
    outfile,
  });
  return import(pathToFileURL(outfile).href);
}

/** Seeded seasons of an invented mid-latitude climate: most days of the growing season cross one threshold. */
function inventedStations() {
  let state = 20_260;
  const uniform = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  return Array.from({ length: STATIONS }, (_, s) => {
    const tminC = new Float64Array(DAYS);
    const tmaxC = new Float64Array(DAYS);
    for (let i = 0; i < DAYS; i++) {
      const mean = 12 - 11 * Math.cos((2 * Math.PI * i) / 365.25) + 10 * (uniform() - 0.5);
      const amplitude = 3 + 6 * uniform();
      tminC[i] = mean - amplitude;
      tmaxC[i] = mean + amplitude;
    }
    return { sourceId: `invented-${s}`, start: 0, tminC, tmaxC };
  });
}

/** The C loop as a function that runs it once, or null without a compiler. */
function compileReference(folder, stations, { lowerC, upperC }) {
  const program = join(folder, 'reference');
  const compiled = spawnSync('cc', ['-O3', '-o', program, join(here, 'reference.c'), '-lm'], { encoding: 'utf8' });
  if (compiled.error?.code === 'ENOENT') return null;
  if (compiled.status !== 0) throw new Error(compiled.stderr);

  const input = join(folder, 'input');
  const output = join(folder, 'output');
  const columns = ['tminC', 'tmaxC'].flatMap((column) => stations.map((series) => bytes(series[column])));
  const head = [bytes(BigInt64Array.of(BigInt(STATIONS), BigInt(DAYS))), bytes(Float64Array.of(lowerC, upperC))];
  writeFileSync(input, Buffer.concat([...head, ...columns]));
  return () => {
    const ran = spawnSync(program, [input, output], { encoding: 'utf8' });
    if (ran.status !== 0) throw new Error(`the C loop failed with status ${ran.status}`);
    const read = readFileSync(output);
    return { milliseconds: Number(ran.stdout), heat: new Float64Array(read.buffer, read.byteOffset, read.byteLength / 8) };
  };
}

function bytes(array) {
  return Buffer.from(array.buffer, array.byteOffset, array.byteLength);
}

/** Milliseconds of processor time, on all threads: a busy machine slows both sides, but does not decide between them. */
function processorTime(work) {
  const begun = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1_000;
}

function largestDifference(byStation, flat) {
  let largest = 0;
  byStation.forEach((heat, s) => {
    for (let i = 0; i < DAYS; i++) largest = Math.max(largest, Math.abs(heat[i] - flat[s * DAYS + i]));
  });
  return largest;
}

function median(values) {
  return values.toSorted((a, b) => a - b)[values.length >> 1];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { name, milliseconds, referenceMilliseconds, ratio, target, note } = await run();
  console.log(name);
  console.log(`  Duskwatch ${milliseconds.toFixed(1)} ms`);
  if (ratio !== null)
    console.log(`  C         ${referenceMilliseconds.toFixed(1)} ms\n  ratio     ${ratio.toFixed(2)} (target ${target})`);
  console.log(`  ${note}`);
}
