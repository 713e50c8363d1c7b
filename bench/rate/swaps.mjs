/** How often a sound season is asked about exchanged traps, and how often traps that were exchanged are found. */
import { markdownTable, percent } from '../markdown.mjs';

const EFFECTS = { designs: true, lures: true, placeLogSd: 0.95 };
const SEASONS = [
  ['eight farms, three traps each', { ...EFFECTS }],
  ['the same, places drifting', { ...EFFECTS, driftLogSd: 0.5 }],
  ['one farm of four stations, of two designs', { ...EFFECTS, farms: 4, oneFarm: true }],
  ['the same, places drifting', { ...EFFECTS, driftLogSd: 0.5, farms: 4, oneFarm: true }],
  ['one farm of four stations, of one design', { ...EFFECTS, designs: false, farms: 4, oneFarm: true }],
  ['the same, places drifting', { ...EFFECTS, designs: false, driftLogSd: 0.5, farms: 4, oneFarm: true }],
  ['one farm of six stations, k 4.5', { ...EFFECTS, farms: 6, oneFarm: true, k: 4.5 }],
  ['the same, places drifting', { ...EFFECTS, driftLogSd: 0.5, farms: 6, oneFarm: true, k: 4.5 }],
];
const [ONE, OTHER] = ['3-helicoverpa-zea', '3-spodoptera-frugiperda'];
const SINCE = '2026-07-20';
/** 200 seasons at nightly size: a share of 5 % is then known to about 1.5. */
const SEASONS_A_SEED = 0.4;

export function swapTables(core, seeds) {
  const cases = Math.max(4, Math.ceil(SEASONS_A_SEED * seeds));
  const asked = (program) =>
    core.recordQuestions(program, { on: core.ON }).questions.filter(({ kind }) => kind === 'swapped-traps');
  const rows = SEASONS.map(([season, options]) => {
    let [inVain, found, wrong] = [0, 0, 0];
    for (let seed = 0; seed < cases; seed++) {
      const program = core.inventedSeason(9000 + seed, options);
      inVain += Number(asked(program).length > 0);
      const exchanged = { [ONE]: OTHER, [OTHER]: ONE };
      const planted = core.rewritten(program, ({ trapId, checkedOn }) =>
        checkedOn >= SINCE && exchanged[trapId] ? { trapId: exchanged[trapId] } : {},
      );
      const questions = asked(planted);
      const right = questions.some(({ traps }) => [...traps].sort().join() === [ONE, OTHER].sort().join());
      found += Number(right);
      wrong += Number(!right && questions.length > 0);
    }
    return {
      season,
      seasons: cases,
      'sound, asked in vain': percent(inVain, cases),
      'exchanged, found': percent(found, cases),
      'another pair asked about instead': percent(wrong, cases),
    };
  });
  return markdownTable(rows);
}
