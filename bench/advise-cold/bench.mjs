/** How long `duskwatch advise` on the demo takes as a command, from the shell and back, beside an empty Node. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const TARGET_MS = 1_000;
const RUNS = 9;
const command = fileURLToPath(new URL('../../packages/cli/bin/duskwatch.mjs', import.meta.url));

export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-'));
  try {
    const demo = join(folder, 'demo');
    timeOf([command, 'demo', '--folder', demo]);
    const advise = [];
    const empty = [];
    for (let turn = 0; turn < RUNS; turn++) {
      empty.push(timeOf(['-e', '0']));
      advise.push(timeOf([command, 'advise', demo, '--on', '2026-07-15', '--json']));
    }
    const milliseconds = median(advise);
    const referenceMilliseconds = median(empty);
    return {
      name: 'duskwatch advise on the demo as a command, from cold, against an empty Node',
      milliseconds,
      referenceMilliseconds,
      ratio: milliseconds / referenceMilliseconds,
      target: TARGET_MS,
      met: milliseconds <= TARGET_MS,
      note: `median of ${RUNS} runs; target ${TARGET_MS} ms`,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function timeOf(args) {
  const start = performance.now();
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`);
  return performance.now() - start;
}

const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1];
