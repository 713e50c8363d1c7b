/**
 * Flights of one trap-season, of a region of ten traps, and of 400 traps in regions of ten, in processor time.
 * Targets: 30 ms for one trap, 10 s for all. Reference in the same run, where R is at hand: optim() on one number of
 * flights out of the five tried here.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { flightFromSource } from './simulate.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const TRAPS = 400;
const IN_REGION = 10;
const TARGET_ONE = 30;
const TARGET_ALL = 10_000;
const FOR_R = 20;

export async function run() {
  const core = await flightFromSource();
  const seasons = Array.from({ length: TRAPS }, (_, trap) => trapSeason(core, trap + 1, Math.floor(trap / IN_REGION)));
  const regions = Array.from({ length: TRAPS / IN_REGION }, (_, i) =>
    core.joined(seasons.slice(i * IN_REGION, (i + 1) * IN_REGION)),
  );
  const twoFlights = regions
    .flatMap((_, i) => (i % 4 === 2 ? [seasons[i * IN_REGION], seasons[i * IN_REGION + 1]] : []))
    .slice(0, FOR_R);
  fitted(core, seasons.slice(0, 40)); // the compiler of the engine warms up
  const each = fitted(core, twoFlights) / twoFlights.length;
  const all = fitted(core, regions);
  const referenceMilliseconds = byR(twoFlights);
  return [
    {
      name: 'flights of one trap-season of two flights (0 to 4 tried), against one number of flights by optim() in R',
      milliseconds: each,
      referenceMilliseconds,
      ratio: referenceMilliseconds === null ? null : each / referenceMilliseconds,
      target: TARGET_ONE,
      met: each <= TARGET_ONE,
      note: `target ${TARGET_ONE} ms; processor time, mean of ${twoFlights.length}${referenceMilliseconds === null ? '; no R here' : ''}`,
    },
    {
      name: `flights of ${TRAPS} trap-seasons in ${regions.length} regions, against one of the regions`,
      milliseconds: all,
      referenceMilliseconds: all / regions.length,
      ratio: regions.length,
      target: TARGET_ALL,
      met: all <= TARGET_ALL,
      note: `target ${TARGET_ALL} ms; processor time on one core`,
    },
  ];
}

/** One trap of a region whose traps see the same flights in the same weather. */
function trapSeason(core, seed, region) {
  const common = core.randomFrom(9000 + region);
  const heat = core.inventedHeat(common);
  const truth = { curves: core.inventedFlights(common, region % 4), strayPerNight: 0.1, k: 2 };
  const random = core.randomFrom(seed);
  return core.inventedSeason(random, heat, truth, { weekly: seed % 3 === 0, late: seed % 4 });
}

function fitted(core, catches) {
  const begun = process.cpuUsage();
  for (const caught of catches) core.fitRegion(caught, { unit: 'F' });
  const { user, system } = process.cpuUsage(begun);
  return (user + system) / 1000;
}

function byR(seasons) {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-flight-'));
  try {
    const file = join(folder, 'seasons.csv');
    const rows = seasons.flatMap(({ spans }, id) =>
      spans.map(({ from, to, nights, count }) => [id, from, to, nights, count].join(',')),
    );
    writeFileSync(file, ['season,from,to,nights,count', ...rows].join('\n'));
    const ran = spawnSync('Rscript', [join(here, 'reference.R'), file, '2'], { encoding: 'utf8' });
    if (ran.error?.code === 'ENOENT') return null;
    if (ran.status !== 0) throw new Error(ran.stderr);
    return Number(ran.stdout);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
