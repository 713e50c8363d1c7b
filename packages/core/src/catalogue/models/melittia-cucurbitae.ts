import type { HeatRule } from '../../heat/types.ts';
import { COMMON_PRACTICE, noted, SDSU_2021 } from '../sources.ts';
import type { PhenologyModel } from '../types.ts';

const BASE_50: HeatRule = { method: 'simple-average', cutoff: 'none', lower: 50, upper: null, unit: 'F' };
const HATCH = { from: 245, to: 300 } as const;

export const melittiaCucurbitaeModels: readonly PhenologyModel[] = [
  {
    ...SDSU_2021,
    id: 'melittia-cucurbitae-emergence',
    insect: 'melittia-cucurbitae',
    name: 'Squash vine borer emergence',
    heat: BASE_50,
    start: { kind: 'calendar', month: 1, date: 1 },
    startSource: noted(COMMON_PRACTICE, 'The source as noted names no first day; spring sums are taken from 1 January.'),
    events: [{ event: 'adult-emergence', generation: 1, from: 1000, to: null, approximate: true }],
    stages: [],
    note: null,
  },
  {
    ...SDSU_2021,
    id: 'melittia-cucurbitae-life-stages',
    insect: 'melittia-cucurbitae',
    name: 'Squash vine borer after egg laying',
    heat: BASE_50,
    start: { kind: 'stage' },
    events: [{ event: 'egg-hatch', generation: null, ...HATCH }],
    stages: [
      { stage: 'larva', lasts: 660 },
      { stage: 'pupa', lasts: 745 },
    ],
    note: 'Counted from the laying of an egg.',
  },
  {
    ...COMMON_PRACTICE,
    id: 'melittia-cucurbitae-from-catch',
    insect: 'melittia-cucurbitae',
    name: 'Squash vine borer from first catch',
    heat: BASE_50,
    start: { kind: 'biofix' },
    events: [{ event: 'egg-hatch', generation: 1, ...HATCH }],
    stages: [],
    note: 'The hatching time of South Dakota State Univ. Extension 2021, counted as if the first eggs were laid when the first moth was caught; the source does not say so.',
  },
];
