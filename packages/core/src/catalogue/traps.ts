import { COMMON_PRACTICE, FROM_MEMORY, noted, SCOUTING_GUIDE } from './sources.ts';
import type { DesignFacts, DesignRatio } from './types.ts';

export const designs: readonly DesignFacts[] = [
  {
    ...noted(COMMON_PRACTICE, 'Base, funnel, lid, lure cage and hanger.'),
    design: 'bucket',
    name: { en: 'bucket (funnel) trap', es: 'trampa de cubeta (embudo)' },
    heightM: null,
    siting: 'Hung from a branch, stake or stand at the crop.',
    costUsd: [25, 30],
  },
  {
    ...noted(COMMON_PRACTICE, 'The opening stands at about this height (2 ft) all season.'),
    design: 'mesh-cone',
    name: { en: 'nylon mesh cone trap', es: 'trampa cónica de malla' },
    heightM: 0.6,
    siting: 'Tied to a post that is driven first; the opening keeps one height above ground all season.',
    costUsd: [120, 120],
  },
  {
    ...noted(COMMON_PRACTICE, 'About 4 ft. Made to order by a metal shop.'),
    design: 'wire-cone',
    name: { en: 'wire cone trap', es: 'trampa cónica de alambre' },
    heightM: 1.2,
    siting: 'On a base pole, collecting jar on top.',
    costUsd: [250, 275],
  },
  {
    ...FROM_MEMORY,
    design: 'delta',
    name: { en: 'delta trap', es: 'trampa delta' },
    heightM: null,
    siting: 'A folded roof over a sticky floor, hung in the canopy; the floor fills up and must be changed.',
    costUsd: null,
  },
  {
    source: 'the catalogue’s word for any design it holds no facts about',
    standing: 'own',
    design: 'other',
    name: { en: 'other trap', es: 'otra trampa' },
    heightM: null,
    siting: 'Not in the catalogue.',
    costUsd: null,
  },
];

export const designRatios: readonly DesignRatio[] = [
  {
    ...noted(SCOUTING_GUIDE, 'About a third to a half, for corn earworm in sweet corn.'),
    insect: 'helicoverpa-zea',
    of: 'mesh-cone',
    against: 'wire-cone',
    low: 1 / 3,
    high: 1 / 2,
  },
];
