/** How often the 80 % interval of a rate holds the truth, over scatter, level, number of traps, rhythm and own records. */
import { markdownTable } from '../markdown.mjs';

const KS = [0.7, 1, 2, 4, 8];
const RATES = [0.2, 1, 5, 20];
const TRAPS = [1, 2, 4];
const RHYTHMS = [
  { name: 'one visit of seven nights', nights: [7] },
  { name: 'two visits, three and four nights', nights: [3, 4] },
  { name: 'seven visits of a night each', nights: [1, 1, 1, 1, 1, 1, 1] },
  { name: 'one visit of three nights', nights: [3] },
];
const RECORDS = [
  { records: 'season', title: 'Four traps’ season behind it (about 110 visits)' },
  { records: 'month', title: 'Four traps’ first four weeks behind it (about 28 visits)' },
  { records: 'none', title: 'No records of its own: the prior of k alone' },
];

export function coverageTables(core, seeds) {
  const prior = core.PRIOR_OF_K;
  const newest = RHYTHMS.flatMap(({ nights }) => TRAPS.map((traps) => ({ traps, nights })));
  return RECORDS.map(({ records, title }) => {
    const cells = KS.map((k) => RATES.map((perNight) => core.coverageOf({ k, perNight, records }, newest, prior, seeds)));
    return [
      `### ${title}`,
      ...RHYTHMS.map(({ name }, r) => `${name[0].toUpperCase()}${name.slice(1)}.\n\n${table(cells, r)}`),
    ].join('\n\n');
  }).join('\n\n');
}

function table(cells, rhythm) {
  return markdownTable(
    KS.flatMap((k, i) =>
      TRAPS.map((traps, t) => {
        const row = { 'true k': k, traps };
        RATES.forEach((rate, j) => {
          const { spread, shown } = cells[i][j][rhythm * TRAPS.length + t];
          row[`${rate} a night`] = `${Math.round(100 * spread)} %`;
          row[`${rate}, as shown`] = `${Math.round(100 * shown)} %`;
        });
        return row;
      }),
    ),
  );
}
