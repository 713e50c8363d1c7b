/** What a plan needs and a rule's source does not give. Each figure is shown with the plan that rests on it. */
import type { Assumption } from '../catalogue/types.ts';

const OWN = { source: 'common practice, no source; figure chosen by Duskwatch', standing: 'own' } as const;

const figures = {
  belowShare: {
    value: 0.5,
    unit: 'share of the rule',
    why: 'At half the published figure a field should be called below it.',
    ...OWN,
  },
  aboveShare: {
    value: 1.5,
    unit: 'share of the rule',
    why: 'At one and a half times the published figure a field should be called above it.',
    ...OWN,
  },
  riskAbove: {
    value: 0.1,
    unit: 'probability',
    why: 'Accepted risk of calling a field above that is surely below.',
    ...OWN,
  },
  riskBelow: {
    value: 0.1,
    unit: 'probability',
    why: 'Accepted risk of calling a field below that is surely above.',
    ...OWN,
  },
  clumpingK: {
    value: 1,
    unit: 'dispersion k per unit',
    why: 'Insects and egg masses sit in clumps. Until counts from such fields give k, they are read as clearly clumped.',
    ...OWN,
  },
  placesWalked: {
    value: 5,
    unit: 'places in the field',
    why: 'Where a rule names no places, units are taken in five, spread over the whole field.',
    source: 'common practice, no source',
    standing: 'practice',
  },
  unitsAtOnce: {
    value: 5,
    unit: 'plants, ears or fruit at one place',
    why: 'Neighbours are like one another: few are taken at a place before the walk goes on. No answer before every place was seen once, so that no corner decides for the field.',
    ...OWN,
  },
  lapsAtMost: {
    value: 4,
    unit: 'times past every place',
    why: 'Where the sample may grow large, more units are taken at each place rather than walking the field more often than this.',
    ...OWN,
  },
  limitOverAverage: {
    value: 2,
    unit: 'times the largest average sample',
    why: 'A plan ends here undecided; it is reached seldom, and the field is then close to the rule. Never fewer than the rule itself examines, rounded up to whole laps, but no further than both answers agree with the share found.',
    ...OWN,
  },
  countedUnits: {
    value: 100,
    unit: 'plants, ears or fruit',
    why: 'Five places of twenty are counted where no figure is published to judge a sample by.',
    source: 'common practice, no source',
    standing: 'practice',
  },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type PlanAssumptionId = keyof typeof figures;

export const PLAN_ASSUMPTIONS = Object.fromEntries(
  Object.entries(figures).map(([id, figure]) => [id, { id, ...figure }]),
) as unknown as { readonly [K in PlanAssumptionId]: Assumption };
