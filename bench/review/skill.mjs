/**
 * `npm run skill -- review`: how often the intervals of what a review learns hold a truth that is known; 80 % is stated.
 * Of catch against infestation, which is slower, a quarter as many programs as seeds.
 */
import { fromCore } from '../bundle.mjs';
import { markdownTable, percent } from '../markdown.mjs';

export async function skill({ seeds }) {
  const core = await fromCore(['review/coverage.testing']);
  return [
    '## The ratio of two designs',
    ratioTable(core, seeds),
    '## How a lure loses its draw',
    decayTable(core, seeds),
    '## From catch to what is found in the crop',
    infestationTable(core, Math.ceil(seeds / 4)),
  ].join('\n\n');
}

const held = ({ held, answered }) => percent(Math.round(held * answered), answered);

function ratioTable({ ratioCoverage }, seeds) {
  const pair = { ratio: 2.5, k: 2, perNight: 4, blocks: 12 };
  const rows = [1, 2, 3, 4, 6, 10].map((sites) => {
    const of = (more) => held(ratioCoverage(seeds, { ...pair, sites, ...more }));
    return {
      sites,
      'differences between sites': sites < 3 ? 'assumed' : 'seen',
      'traps of a design alike': of({}),
      'traps differ by log-sd 0.25': of({ trapLogSd: 0.25 }),
      'and lures lose 3 % a day': of({ trapLogSd: 0.25, ageing: 0.03 }),
    };
  });
  return markdownTable(rows);
}

function decayTable({ decayCoverage }, seeds) {
  const lures = { perDay: -0.04, k: 1.5, perNight: 4, change: 'staggered' };
  const rows = [
    ['4 traps, 15 checks', { traps: 4, checks: 15 }],
    ['12 traps, 20 checks', { traps: 12, checks: 20 }],
    ['6 traps, 15 checks, no decay', { traps: 6, checks: 15, perDay: 0 }],
  ].map(([lured, more]) => ({ lures: lured, 'change a day, held': held(decayCoverage(seeds, { ...lures, ...more })) }));
  return markdownTable(rows);
}

function infestationTable({ lagCoverage, shareCoverage }, seeds) {
  const crop = { lag: 12, intercept: -3.5, slope: 0.9, examined: 100 };
  const rows = [
    ['30 fields once', 0.2, { pairs: 30 }],
    ['30 fields once', 0.6, { pairs: 30 }],
    ['8 fields five times', 0.6, { pairs: 40, perField: 5 }],
    ['12 fields five times', 0.6, { pairs: 60, perField: 5 }],
    ['12 fields five times', 0.2, { pairs: 60, perField: 5 }],
  ].map(([samples, fieldSd, more]) => {
    const truth = { ...crop, ...more, fieldSd };
    const lag = lagCoverage(seeds, truth);
    return {
      samples,
      'fields differ by (log-odds)': fieldSd,
      programs: seeds,
      'lag, held': held(lag),
      'lag, mean width in days': lag.meanWidth.toFixed(1),
      'share at 5 moths a night, held': held(shareCoverage(seeds, truth, 5)),
    };
  });
  return markdownTable(rows);
}
