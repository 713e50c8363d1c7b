/**
 * The round of a program with 5,000 traps at 5,000 stations, asked of a server whose other thread finds the order: how
 * much processor time of the main thread it takes, once the program is prepared.
 * Target: 100 ms of the main thread. Reference in the same run: writing the answer as JSON text once more.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const TRAPS = 5_000;
const TARGET = 100;
const ON = '2026-07-15';

export async function run() {
  const folder = mkdtempSync(join(here, '../../node_modules/.cache-bench-round-'));
  try {
    await bundled(folder);
    const { buildServer, workInThreads } = await import(pathToFileURL(join(folder, 'server.mjs')).href);
    const program = inventedProgram();
    const store = {
      loadProgram: async () => program,
      changesSince: async () => [],
      counts: async () => ({ lastSequence: 1 }),
      history: async () => [],
    };
    const app = buildServer({ store, work: workInThreads(pathToFileURL(join(folder, 'worker.mjs'))) });
    // The program is read, and its traps' visits with it, as for any page.
    await app.inject(`/api/traps?on=${ON}`);
    const asked = await timed(() => app.inject(`/api/round?on=${ON}`));
    const again = await timed(() => app.inject(`/api/round?on=${ON}`));
    const round = asked.result.json();
    if (round.stops.length !== TRAPS) throw new Error(`${round.stops.length} stops of ${TRAPS}`);
    const reference = await timed(async () => JSON.stringify(round));
    await app.close();
    return {
      name: `main-thread time of the round past ${TRAPS} stations`,
      milliseconds: asked.cpu,
      referenceMilliseconds: reference.cpu,
      ratio: asked.cpu / reference.cpu,
      target: TARGET,
      met: asked.cpu <= TARGET,
      note: `answered after ${asked.elapsed.toFixed(0)} ms; asked again ${again.cpu.toFixed(0)} ms of the main thread`,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Processor time of this thread alone, and time that passed, in milliseconds. */
async function timed(act) {
  const used = process.threadCpuUsage();
  const begun = performance.now();
  const result = await act();
  const { user, system } = process.threadCpuUsage(used);
  return { result, cpu: (user + system) / 1_000, elapsed: performance.now() - begun };
}

async function bundled(folder) {
  const from = (file) => join(here, '../../packages', file);
  await build({
    entryPoints: { server: from('server/src/index.ts'), worker: from('server/src/work/worker.ts') },
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'es2023',
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    packages: 'external',
    alias: { '@duskwatch/core': from('core/src/index.ts'), '@duskwatch/store': from('store/src/index.ts') },
  });
}

/** An invented state: a trap at each station, one field for every two, ten checks each. */
function inventedProgram() {
  let state = 7;
  const uniform = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  const fields = Array.from({ length: TRAPS / 2 }, (_, f) => ({
    fieldId: `F${f}`,
    farm: `Farm ${f >> 2}`,
    name: `Field ${f}`,
    crop: 'sweet-corn',
    growthHabit: null,
    plantedOn: null,
    harvestOn: null,
    latitude: 45,
    longitude: -30,
    timeZone: null,
    weatherSource: null,
  }));
  const traps = Array.from({ length: TRAPS }, (_, t) => ({
    trapId: `T${t}`,
    station: `S${t}`,
    insect: 'helicoverpa-zea',
    design: 'mesh-cone',
    latitude: 44 + uniform() * 2,
    longitude: -31 + uniform() * 2,
    hungOn: '2026-06-01',
    takenDownOn: null,
    informs: [`F${t >> 1}`],
  }));
  const checks = traps.flatMap(({ trapId }) =>
    Array.from({ length: 10 }, (_, c) => ({
      trapId,
      checkedOn: `2026-0${6 + (c > 7)}-${String(c > 7 ? (c - 7) * 4 : 2 + c * 3).padStart(2, '0')}`,
      visit: 1,
      targetCount: Math.floor(uniform() ** 3 * 30),
      otherCount: null,
      condition: 'fit',
      emptied: true,
      note: null,
    })),
  );
  const none = [
    'stages',
    'lures',
    'weather',
    'samples',
    'treatments',
    'rules',
    'seasons',
    'plans',
    'prices',
    'stock',
    'answers',
    'decisions',
  ];
  return {
    settings: { name: 'Invented state', invented: true, pinnedOn: ON },
    ...Object.fromEntries(none.map((kind) => [kind, []])),
    fields,
    traps,
    checks,
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) console.log(await run());
