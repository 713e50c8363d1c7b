/** How much data a conclusion takes. Each figure is Duskwatch's own, chosen so that intervals keep their level. */
import type { Assumption } from '../catalogue/types.ts';

const OWN = { source: 'figure chosen by Duskwatch, no source', standing: 'own' } as const;

const figures = {
  sharedBlocks: {
    value: 6,
    unit: 'nights at one site with both traps and some catch',
    why: 'Fewer shared nights do not show how much counts scatter from one night to the next.',
    ...OWN,
  },
  mothsPerTreatment: {
    value: 10,
    unit: 'moths in the shared nights',
    why: 'With fewer moths on one side the ratio has hardly a lower or upper limit.',
    ...OWN,
  },
  usefulFactor: {
    value: 1.5,
    unit: 'factor between a ratio and the ends of its interval',
    why: 'A ratio known less closely than this is of little use for adjusting a threshold.',
    ...OWN,
  },
  spareObservations: {
    value: 8,
    unit: 'observations beyond the effects fitted',
    why: 'With fewer to spare, scatter and effect are not told apart.',
    ...OWN,
  },
  samplePairs: {
    value: 20,
    unit: 'samples with the catch before them known',
    why: 'Fewer pairs of catch and sample fix neither a lag nor a threshold.',
    ...OWN,
  },
  samplesEachSide: {
    value: 4,
    unit: 'samples below the rule, and as many at or above it',
    why: 'False alarms and misses are counted in these: with fewer, the rates say nothing.',
    ...OWN,
  },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type LearnAssumptionId = keyof typeof figures;

export const LEARN_ASSUMPTIONS = Object.fromEntries(
  Object.entries(figures).map(([id, figure]) => [id, { id, ...figure }]),
) as unknown as { readonly [K in LearnAssumptionId]: Assumption };
