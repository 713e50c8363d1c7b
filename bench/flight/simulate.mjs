/**
 * `npm run skill -- flight`: how well flights are read back from seasons whose flights are known, 500 seeds a cell.
 * Intervals are stated to hold 80 %.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { markdownTable, percent } from '../markdown.mjs';

/** Bundles the flight room with its simulated seasons. */
export async function flightFromSource() {
  const folder = mkdtempSync(join(tmpdir(), 'duskwatch-bench-flight-'));
  try {
    const outfile = join(folder, 'flight.mjs');
    const files = [
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

const CUTS = [0.15, 0.3, 0.5, 0.7, 0.85];
/** How flights of one region differ from year to year in these seasons. */
const YEARS = { peak: 60, width: 0.12, moths: 0.7 };
const HUNG_APART = 3;
const PLACES_LOG_SD = 0.7;

/** A season of a region: its traps' catch until the last flight has flown `cut` of itself (null: to the end). */
function seasonOf(core, seed, { flights, traps, night, skewed, past, model = false, k = 3, years = YEARS, rhythm = null, cut }) {
  const random = core.randomFrom(seed);
  const heat = core.inventedHeat(random);
  const usual = core.inventedFlights(random, flights);
  const curves = core.inAnotherYear(random, usual, years);
  const shape = skewed ? core.skewedFlight : core.normalCdf;
  const last = curves.at(-1);
  const until = cut === null ? Infinity : last.peak + last.width * core.whenFlown(cut, shape);
  let [through, now] = [0, 0];
  while (through < heat.length && now < until) now += heat[through++];
  const weather = night > 0 ? core.nightWeather(random, heat.length, night) : null;
  const caught = core.joined(
    Array.from({ length: traps }, () =>
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
    ),
  );
  const width = core.flightPrior('F', 1, 1).logWidth;
  const seasons = core.inventedPast(random, usual, years, past);
  const published = model ? usual.map(({ peak }) => peak * (1 + core.PUBLISHED_TOLERANCE * random.normal())) : [];
  const expected = core.expectedFlights(seasons, published, { unit: 'F', width });
  return { caught, expected, curves, shape, now };
}

const signed = (value, digits) => `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(digits)}`;
const mean = (sum, n, digits) => (n === 0 ? '–' : signed(sum / n, digits));

/** The running flight at one cut point, over `seeds` seasons. */
export function midFlight(core, seeds, cell, firstSeed = 0) {
  const t = { found: 0, fewer: 0, more: 0, bias: 0, held: 0, width: 0, share: 0, between: 0, peak: 0, peakHeld: 0 };
  for (let seed = 1; seed <= seeds; seed++) {
    const { caught, expected, curves, shape, now } = seasonOf(core, firstSeed + seed * 31 + cell.flights, cell);
    const fit = core.fitRegion(caught, { unit: 'F', expected });
    if (fit.flights.length < curves.length) t.fewer++;
    else if (fit.flights.length > curves.length) t.more++;
    if (fit.flights.length !== curves.length) continue;
    t.found++;
    const running = fit.flights.at(-1);
    const truth = curves.at(-1);
    const flown = shape((now - truth.peak) / truth.width);
    const read = core.readFlown(running, now, expected);
    t.bias += read.share - flown;
    t.width += read.high - read.low;
    if (read.low <= flown && flown <= read.high) t.held++;
    if (read.told === 'share') t.share++;
    if (read.told === 'between') t.between++;
    const peak = core.heatOfMoment(running, 0);
    t.peak += peak.heat - truth.peak;
    if (peak.low <= truth.peak && truth.peak <= peak.high) t.peakHeld++;
  }
  return t;
}

const cellRow = (cell, seeds, t) => ({
  flights: cell.flights,
  traps: cell.traps,
  'nights alike': cell.night === 0 ? 'no' : cell.night,
  curve: cell.skewed ? 'skewed' : 'normal',
  flown: `${Math.round(100 * cell.cut)} %`,
  found: percent(t.found, seeds),
  'one too few, too many': `${percent(t.fewer, seeds)}, ${percent(t.more, seeds)}`,
  'bias of share': mean(t.bias, t.found, 3),
  'share held': percent(t.held, t.found),
  'width of share': t.found === 0 ? '–' : (t.width / t.found).toFixed(2),
  'figure, interval only, cannot tell': [t.share, t.between, t.found - t.share - t.between]
    .map((n) => percent(n, t.found))
    .join(', '),
  'peak bias, °F·d': mean(t.peak, t.found, 0),
  'peak held': percent(t.peakHeld, t.found),
});

/** Whole seasons: number of flights and peaks. */
function wholeSeasons(core, seeds, cell) {
  const t = { right: 0, fewer: 0, more: 0, unsure: 0, sure: 0, rightWhenSure: 0, peaks: 0, bias: 0, held: 0 };
  for (let seed = 1; seed <= seeds; seed++) {
    const { caught, curves } = seasonOf(core, seed * 31 + cell.flights, { ...cell, cut: null });
    const { fits, flights } = core.fitRegion(caught, { unit: 'F' });
    const sure = fits.length < 2 || fits[1].bic - fits[0].bic >= core.UNSURE_BELOW;
    const right = flights.length === curves.length;
    if (right) t.right++;
    else if (flights.length < curves.length) t.fewer++;
    else t.more++;
    if (sure) t.sure++;
    else t.unsure++;
    if (sure && right) t.rightWhenSure++;
    if (!right) continue;
    for (const [g, truth] of curves.entries()) {
      const peak = core.heatOfMoment(flights[g], 0);
      t.peaks++;
      t.bias += peak.heat - truth.peak;
      if (peak.low <= truth.peak && truth.peak <= peak.high) t.held++;
    }
  }
  return {
    'true flights': cell.flights,
    traps: cell.traps,
    'nights alike': cell.night === 0 ? 'no' : cell.night,
    curve: cell.skewed ? 'skewed' : 'normal',
    right: percent(t.right, seeds),
    missed: percent(t.fewer, seeds),
    'too many': percent(t.more, seeds),
    unsure: percent(t.unsure, seeds),
    'right when sure': percent(t.rightWhenSure, t.sure),
    'peak bias, °F·d': mean(t.bias, t.peaks, 1),
    'peak held': percent(t.held, t.peaks),
  };
}

const crossed = (choices) =>
  Object.entries(choices).reduce(
    (cells, [name, values]) => cells.flatMap((cell) => values.map((value) => ({ ...cell, [name]: value }))),
    [{}],
  );

const EVERY = { traps: [1, 3], night: [0, 0.7], skewed: [false, true] };

/** The tables of the document. */
export async function skill({ seeds }) {
  const core = await flightFromSource();
  const parts = [`${seeds} seasons a cell; intervals are stated to hold 80 %.`];
  const table = (title, rows) => parts.push(`### ${title}`, markdownTable(rows));
  const cut = (title, choices, more = {}) =>
    table(
      title,
      crossed({ ...EVERY, ...choices, cut: CUTS }).map((cell) =>
        cellRow(cell, seeds, midFlight(core, seeds, { ...cell, ...more })),
      ),
    );
  cut('With three past seasons', { flights: [1] }, { past: 3 });
  cut('Nothing known beforehand', { flights: [1] }, { past: 0 });
  const odd = { traps: [1], night: [0.7], skewed: [false], flights: [1] };
  cut('The second of two flights', { ...odd, skewed: [false, true], flights: [2] }, { past: 3 });
  cut('With the model alone, published peaks good to a tenth', odd, { past: 0, model: true });
  cut('With one past season', odd, { past: 1 });
  cut('With ten past seasons', odd, { past: 10 });
  cut('Years that differ by 100 °F·d where 70 is believed', odd, { past: 3, years: { ...YEARS, peak: 100 } });
  cut('Visits that scatter much, k 1', odd, { past: 3, k: 1 });
  cut('Visits that scatter little, k 8', odd, { past: 3, k: 8 });
  cut('Checked every seven days', odd, { past: 3, rhythm: 7 });
  cut('Checked every three or four days', odd, { past: 3, rhythm: 3 });
  table(
    'Whole seasons',
    crossed({ flights: [0, 1, 2, 3], ...EVERY }).map((cell) => wholeSeasons(core, seeds, { ...cell, past: 0 })),
  );
  return parts.join('\n\n');
}
