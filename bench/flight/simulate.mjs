/** How well flights are read back from seasons whose flights are known. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

/** Bundles the flight room with its simulated seasons. */
export async function flightFromSource() {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-flight-'));
  try {
    const outfile = join(folder, 'flight.mjs');
    const files = [
      'earlier-season',
      'expected-flights',
      'fit-region',
      'flight-likelihood',
      'flight-moments',
      'flight-prior',
      'generations',
      'heat-spans',
      'normal',
      'simulate.testing',
    ];
    await build({
      stdin: {
        contents: files.map((file) => `export * from './${file}.ts';`).join('\n'),
        resolveDir: fileURLToPath(new URL('../../packages/core/src/flight', import.meta.url)),
      },
      bundle: true,
      format: 'esm',
      outfile,
    });
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export const CUTS = [0.15, 0.3, 0.5, 0.7, 0.85];
/** How flights of one region differ from year to year in these seasons. */
export const YEARS = { peak: 60, width: 0.12, moths: 0.7 };
const HUNG_APART = 3;
const PLACES_LOG_SD = 0.7;

/** The catch of a region's traps in one year, until `until` degree-days. */
function caughtIn(core, random, curves, { traps, night, skewed, k = 3, rhythm = null }, until) {
  const heat = core.inventedHeat(random);
  let [through, now] = [0, 0];
  while (through < heat.length && now < until) now += heat[through++];
  const weather = night > 0 ? core.nightWeather(random, heat.length, night) : null;
  const shape = skewed ? core.skewedFlight : core.normalCdf;
  const seasons = Array.from({ length: traps }, () =>
    core.inventedSeason(
      random,
      heat,
      { curves, strayPerNight: 0.1, k, shape },
      {
        through,
        weather,
        weekly: rhythm === null ? random.uniform() < 0.5 : rhythm === 7,
        late: traps > 1 ? Math.floor(HUNG_APART * random.uniform()) : 0,
        abundance: traps > 1 ? Math.exp(PLACES_LOG_SD * random.normal() - PLACES_LOG_SD ** 2 / 2) : 1,
      },
    ),
  );
  return { caught: core.joined(seasons), now };
}

const read = new Map();

/** Past years of the region, read back from their own catch as the program reads them. */
function pastOf(core, seed, usual, years, cell) {
  const { flights, traps, night, skewed, k, rhythm, past } = cell;
  const key = JSON.stringify([seed, flights, traps, night, skewed, k, rhythm, past, years]);
  if (!read.has(key)) {
    const seasons = Array.from({ length: past }, (_, ago) => {
      const random = core.randomFrom(1_000_003 * (ago + 1) + seed);
      const { caught } = caughtIn(core, random, core.inAnotherYear(random, usual, years), cell, Infinity);
      return core.fitRegion(caught, { unit: 'F' });
    });
    read.set(key, core.experienceOf(seasons, 'F'));
  }
  return read.get(key);
}

/** A season of a region until its last flight has flown `cut` of itself (null: to the end), and what was to be expected. */
export function seasonOf(core, seed, cell) {
  const { flights, skewed, model = false, years = YEARS, cut } = cell;
  const random = core.randomFrom(seed);
  const usual = core.inventedFlights(random, flights);
  const curves = core.inAnotherYear(random, usual, years);
  const shape = skewed ? core.skewedFlight : core.normalCdf;
  const last = curves.at(-1);
  const until = cut === null ? Infinity : last.peak + last.width * core.whenFlown(cut, shape);
  const { caught, now } = caughtIn(core, random, curves, cell, until);
  const { seasons, skews, stray } = pastOf(core, seed, usual, years, cell);
  const published = model ? usual.map(({ peak }) => peak * (1 + core.PUBLISHED_TOLERANCE * random.normal())) : [];
  const { logWidth: width } = core.flightPrior('F', 1, 1);
  const expected = core.expectedFlights(
    seasons.map((season) => season.flights),
    published,
    { unit: 'F', width },
  );
  return { caught, known: { unit: 'F', expected, skews, stray }, curves, shape, now };
}

/** The running flight at one cut point, over `seeds` seasons. What is shown is judged, and how often it is shown counted. */
export function midFlight(core, seeds, cell) {
  const none = () => ({ n: 0, bias: 0, held: 0 });
  const t = { found: 0, fewer: 0, more: 0, figure: none(), interval: none(), width: 0, shown: 0, peak: 0, peakHeld: 0 };
  const wrong = { over: 0, running: 0, nothing: 0, unsure: 0 };
  for (let seed = 1; seed <= seeds; seed++) {
    const { caught, known, curves, shape, now } = seasonOf(core, seed * 31 + cell.flights, cell);
    const { fits, flights } = core.fitRegion(caught, known);
    const last = flights.at(-1);
    const read = last ? core.readFlown(last, now, known.expected) : null;
    if (flights.length < curves.length) t.fewer++;
    else if (flights.length > curves.length) t.more++;
    if (flights.length !== curves.length) {
      const status = read ? core.statusOf(read) : null;
      wrong[status === 'over' || status === 'running' ? status : 'nothing']++;
      if (fits.length > 1 && fits[1].bic - fits[0].bic < core.UNSURE_BELOW) wrong.unsure++;
      continue;
    }
    t.found++;
    const truth = curves.at(-1);
    const flown = shape((now - truth.peak) / truth.width);
    const said = { share: t.figure, between: t.interval, 'cannot-tell': null }[read.told];
    if (said) {
      said.n++;
      said.bias += read.share - flown;
      if (read.low <= flown && flown <= read.high) said.held++;
      t.shown++;
      t.width += read.high - read.low;
    }
    const peak = core.heatOfMoment(last, 0);
    t.peak += peak.heat - truth.peak;
    if (peak.low <= truth.peak && truth.peak <= peak.high) t.peakHeld++;
  }
  return { ...t, wrong };
}

/** Whole seasons: number of flights and peaks, and how often the last flight is missed by how far it came before autumn. */
export function wholeSeasons(core, seeds, cell) {
  const t = { right: 0, fewer: 0, more: 0, unsure: 0, sure: 0, rightWhenSure: 0, peaks: 0, bias: 0, held: 0 };
  const last = { whole: 0, wholeMissed: 0, cutOff: 0, cutOffMissed: 0 };
  for (let seed = 1; seed <= seeds; seed++) {
    const { caught, known, curves, shape, now } = seasonOf(core, seed * 31 + cell.flights, { ...cell, cut: null });
    const { fits, flights } = core.fitRegion(caught, known);
    const sure = fits.length < 2 || fits[1].bic - fits[0].bic >= core.UNSURE_BELOW;
    const missed = flights.length < curves.length;
    const right = flights.length === curves.length;
    if (right) t.right++;
    else if (missed) t.fewer++;
    else t.more++;
    if (sure) t.sure++;
    else t.unsure++;
    if (sure && right) t.rightWhenSure++;
    const end = curves.at(-1);
    if (end) {
      const came = shape((now - end.peak) / end.width) >= 0.5 ? 'whole' : 'cutOff';
      last[came]++;
      if (missed) last[`${came}Missed`]++;
    }
    if (!right) continue;
    for (const [g, truth] of curves.entries()) {
      const peak = core.heatOfMoment(flights[g], 0);
      t.peaks++;
      t.bias += peak.heat - truth.peak;
      if (peak.low <= truth.peak && truth.peak <= peak.high) t.held++;
    }
  }
  return { ...t, ...last };
}
