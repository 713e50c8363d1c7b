/**
 * `npm run skill -- flight`: seasons whose flights are known, 500 seeds of each kind, and how well they
 * are read back. Stated level of the intervals: 80 %.
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
    await build({
      stdin: {
        contents: [
          'fit-flights',
          'fit-seasons',
          'flight-likelihood',
          'flight-moments',
          'generations',
          'normal',
          'simulate.testing',
        ]
          .map((file) => `export * from './${file}.ts';`)
          .join('\n'),
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

function simulate(core, { flights, cutOff, k, skewed }, seeds) {
  const tally = { right: 0, unsure: 0, sure: 0, rightWhenSure: 0, missed: 0, extra: 0 };
  const peaks = { n: 0, bias: 0, held: 0 };
  const flown = { n: 0, bias: 0, held: 0, width: 0 };
  const shape = skewed ? core.skewedFlight : core.normalCdf;
  for (let seed = 1; seed <= seeds; seed++) {
    const random = core.randomFrom(seed * 31 + flights);
    const heat = core.inventedHeat(random);
    const curves = core.inventedFlights(random, flights);
    const through = cutOff ? Math.floor(60 + 100 * random.uniform()) : heat.length;
    const now = heat.subarray(0, through).reduce((sum, one) => sum + one, 0);
    const season = core.inventedSeason(
      random,
      heat,
      { curves, strayPerNight: 0.1, k, shape },
      { through, weekly: seed % 2 === 0 },
    );
    const { fits } = core.fitFlights(season, { k: 2, unit: 'F' });
    // A flight of which less than a twentieth has flown can hardly be seen.
    const begun = curves.filter(({ peak, width }) => shape((now - peak) / width) > 0.05);
    const found = fits.length === 0 ? 0 : core.flightCount(fits[0].unknowns);
    const sure = fits.length < 2 || fits[1].bic - fits[0].bic >= core.UNSURE_BELOW;
    if (found === begun.length) tally.right++;
    else if (found < begun.length) tally.missed++;
    else tally.extra++;
    if (sure) tally.sure++;
    else tally.unsure++;
    if (sure && found === begun.length) tally.rightWhenSure++;
    if (found !== begun.length || found === 0) continue;
    for (const [g, truth] of begun.entries()) {
      const peak = core.heatOfMoment(fits[0], g, 0);
      peaks.n++;
      peaks.bias += peak.heat - truth.peak;
      if (peak.low <= truth.peak && truth.peak <= peak.high) peaks.held++;
      const share = shape((now - truth.peak) / truth.width);
      if (share > 0.99) continue; // over: nothing left to say
      const read = core.shareFlown(fits[0], g, now);
      flown.n++;
      flown.bias += read.share - share;
      flown.width += read.high - read.low;
      if (read.low <= share && share <= read.high) flown.held++;
    }
  }
  return {
    'true flights': flights,
    season: `${cutOff ? 'cut off' : 'whole'}${skewed ? ', skewed' : ''}, k ${k}`,
    right: percent(tally.right, seeds),
    missed: percent(tally.missed, seeds),
    'one too many': percent(tally.extra, seeds),
    unsure: percent(tally.unsure, seeds),
    'right when sure': percent(tally.rightWhenSure, tally.sure),
    'peak bias °F·d': peaks.n === 0 ? '–' : (peaks.bias / peaks.n).toFixed(1),
    'peak held': percent(peaks.held, peaks.n),
    'share n': flown.n,
    'share bias': flown.n === 0 ? '–' : (flown.bias / flown.n).toFixed(3),
    'share held': percent(flown.held, flown.n),
    'share width': flown.n === 0 ? '–' : (flown.width / flown.n).toFixed(2),
  };
}

export async function skill({ seeds }) {
  const core = await flightFromSource();
  const kinds = [];
  for (const [k, skewed] of [
    [2, false],
    [5, true],
  ])
    for (const cutOff of [false, true]) for (const flights of [0, 1, 2, 3]) kinds.push({ flights, cutOff, k, skewed });
  const table = markdownTable(kinds.map((kind) => simulate(core, kind, seeds)));
  return `${seeds} seasons of each kind; fitted with k 2; intervals are stated to hold 80 %.\n\n${table}`;
}
