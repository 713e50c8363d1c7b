/**
 * Import of 100,000 checks: a CSV file on disk, read, checked and stored with its history in a new SQLite file,
 * against bare prepared inserts of the very same rows into the same table with the same indexes and durability.
 * Target: at most 3 times as long.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const require = createRequire(import.meta.url);
const CHECKS = 100_000;
const TRAPS = 400;
const RUNS = 7;
const TARGET = 3;

/** @returns {Promise<{ name: string, milliseconds: number, referenceMilliseconds: number, ratio: number, target: number, met: boolean, note: string }>} */
export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-import-'));
  try {
    const packages = await packagesFromSource(folder);
    const csv = join(folder, 'checks.csv');
    writeFileSync(csv, inventedChecks());
    const { columns, rows } = await rowsOf(packages, csv, join(folder, 'rows.duskwatch'));
    if (rows.length !== CHECKS) throw new Error(`${rows.length} rows of ${CHECKS} were stored`);

    const own = [];
    const bare = [];
    for (let i = -1; i < RUNS; i++) {
      const imported = await timed(folder, packages, (store) => importCsv(packages, store, csv));
      const inserted = await timed(folder, packages, (_, file) => insertRows(file, columns, rows));
      if (i < 0) continue; // the compiler of the engine warms up
      own.push(imported);
      bare.push(inserted);
    }
    const milliseconds = median(own.map((t) => t.processor));
    const referenceMilliseconds = median(bare.map((t) => t.processor));
    const wall = (times) => median(times.map((t) => t.wall)).toFixed(0);
    const ratio = milliseconds / referenceMilliseconds;
    return {
      name: 'import of 100,000 checks of 400 traps from CSV, against bare prepared inserts of the same rows',
      milliseconds,
      referenceMilliseconds,
      ratio,
      target: TARGET,
      met: ratio <= TARGET,
      note: `processor time, median of ${RUNS} alternated runs; by the clock ${wall(own)} ms and ${wall(bare)} ms; full synchronisation on both sides`,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Work on a new store. Processor time is what is judged, so that a busy machine does not decide. */
async function timed(folder, { openStore }, work) {
  const file = join(folder, 'timed.duskwatch');
  const store = await openStore(file);
  globalThis.gc?.();
  const start = performance.now();
  const before = process.cpuUsage();
  await work(store, file);
  const { user, system } = process.cpuUsage(before);
  const wall = performance.now() - start;
  await store.close();
  for (const suffix of ['', '-wal', '-shm']) rmSync(file + suffix, { force: true });
  return { processor: (user + system) / 1_000, wall };
}

async function importCsv({ readTable }, store, csv) {
  const read = readTable('checks', readFileSync(csv, 'utf8'), csv);
  if (!read.ok) throw new Error(JSON.stringify(read.problems.slice(0, 3)));
  let shown = 0;
  const onProgress = ({ done }) => {
    shown = done;
  };
  const imported = await store.importProgram(
    { checks: read.value.records },
    { author: 'bench', at: '2026-07-14T21:00:00Z', onProgress },
  );
  if (!imported.ok || imported.value.added !== CHECKS || shown !== CHECKS) throw new Error('the import is not whole');
}

/** The columns in the order of the table, on a second connection with the store's own pragmas. */
function insertRows(file, columns, rows) {
  const database = new DatabaseSync(file);
  database.exec('pragma synchronous = FULL; pragma foreign_keys = ON');
  const insert = database.prepare(`insert into revisions (${columns.join(', ')}) values (${columns.map(() => '?').join(', ')})`);
  database.exec('begin');
  for (const row of rows) insert.run(...row);
  database.exec('commit');
  database.close();
}

/** What an import leaves in the table. */
async function rowsOf(packages, csv, file) {
  const store = await packages.openStore(file);
  await importCsv(packages, store, csv);
  await store.close();
  const database = new DatabaseSync(file, { readOnly: true });
  const query = database.prepare('select * from revisions order by sequence');
  query.setReturnArrays(true);
  const columns = query.columns().map((column) => column.name);
  const rows = query.all();
  database.close();
  return { columns, rows };
}

/** Invented counts, by a fixed rule: every trap visited each day, round after round. */
function inventedChecks() {
  const lines = ['trap_id,checked_on,target_count,other_count,condition,emptied,note'];
  for (let n = 0; n < CHECKS; n++) {
    const round = Math.floor(n / TRAPS);
    const day = new Date(Date.UTC(2026, 0, 1 + round)).toISOString().slice(0, 10);
    const note = n % 50 === 0 ? '"weeds under the trap, cleared"' : '';
    lines.push(
      `trap-${String(n % TRAPS).padStart(3, '0')},${day},${(n * 7 + round) % 23},${n % 3 === 0 ? n % 5 : ''},fit,yes,${note}`,
    );
  }
  return `${lines.join('\n')}\n`;
}

async function packagesFromSource(folder) {
  const outfile = join(folder, 'packages.cjs');
  const modules = join(here, '../../packages');
  await build({
    stdin: {
      contents: `export { readTable } from './exchange/src/index.ts'; export { openStore } from './store/src/index.ts';`,
      resolveDir: modules,
    },
    outfile,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    external: ['pg', 'hucre'],
  });
  return require(outfile);
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

if (process.argv[1] === fileURLToPath(import.meta.url)) console.log(await run());
