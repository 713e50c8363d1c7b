/**
 * Flights of one trap-season, and of a program of 400 traps with four insects' seasons, in processor time.
 * Targets: 30 ms for one, 10 s for all; a second run after one trap changed refits that trap alone.
 * Reference in the same run, where R is at hand: optim() on one number of flights out of the five tried here.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { flightFromSource } from './simulate.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const TRAPS = 400;
const TARGET_ONE = 30;
const TARGET_ALL = 10_000;
const FOR_R = 20;

export async function run() {
  const core = await flightFromSource();
  const seasons = Array.from({ length: TRAPS }, (_, trap) => {
    const random = core.randomFrom(trap + 1);
    const truth = { curves: core.inventedFlights(random, trap % 4), strayPerNight: 0.1, k: 2 };
    return {
      id: `T${trap}`,
      caught: core.inventedSeason(random, core.inventedHeat(random), truth),
      options: { k: 2, unit: 'F' },
    };
  });
  fitAll(core, seasons.slice(0, 40), new Map()); // the compiler of the engine warms up

  const cache = new Map();
  const all = fitAll(core, seasons, cache);
  const [first] = seasons;
  const changed = { ...first.caught, spans: first.caught.spans.map((span, i) => (i === 10 ? { ...span, count: 7 } : span)) };
  const again = fitAll(core, seasons.with(0, { ...first, caught: changed }), cache);
  if (again.fitted !== 1) throw new Error(`one trap changed and ${again.fitted} were fitted`);

  const twoFlights = seasons.filter((_, trap) => trap % 4 === 2).slice(0, FOR_R);
  const each = fitAll(core, twoFlights, new Map()).milliseconds / twoFlights.length;
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
      name: `flights of ${TRAPS} trap-seasons, and again after one trap changed (the reference), from the cache`,
      milliseconds: all.milliseconds,
      referenceMilliseconds: again.milliseconds,
      ratio: all.milliseconds / again.milliseconds,
      target: TARGET_ALL,
      met: all.milliseconds <= TARGET_ALL,
      note: `target ${TARGET_ALL} ms; processor time on one core; ${all.fitted} fitted, then ${again.fitted}`,
    },
  ];
}

function fitAll(core, seasons, cache) {
  const begun = process.cpuUsage();
  let fitted = 0;
  for (const one of core.fitSeasons(seasons, cache)) if (one.fitted) fitted++;
  const { user, system } = process.cpuUsage(begun);
  return { fitted, milliseconds: (user + system) / 1000 };
}

function byR(seasons) {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-flight-'));
  try {
    const file = join(folder, 'seasons.csv');
    const rows = seasons.flatMap(({ id, caught }) =>
      caught.spans.map(({ from, to, nights, count }) => [id, from, to, nights, count].join(',')),
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
