/** Figures behind the questions about records. Each is Duskwatch's own. */
import type { Assumption } from '../catalogue/types.ts';

const OWN = { source: 'figure chosen by Duskwatch, no source', standing: 'own' } as const;

const figures = {
  falseAlarmsPerKind: {
    value: 0.015,
    unit: 'probability that a season without faults brings one kind of question or more of it',
    why: 'There are seven kinds: nine sound seasons of ten are asked nothing. Asked in vain too often, people stop answering.',
    ...OWN,
  },
  otherTraps: {
    value: 2,
    unit: 'other traps of the insect and design that saw each of the nights',
    why: 'One neighbour alone cannot say which of the two is odd.',
    ...OWN,
  },
  placeShape: {
    value: 2,
    unit: 'shape of a gamma distribution of what traps catch against the mean',
    why: 'Places differ: with this shape one trap of ten catches less than about a quarter of the mean, and that is no fault.',
    ...OWN,
  },
  roundedFrom: {
    value: 8,
    unit: 'moths in a count',
    why: 'From here on the numbers fall into fives about 10, 15, 20 …, so that one of five honest counts is such a number.',
    ...OWN,
  },
  bulkMinutes: {
    value: 2,
    unit: 'minutes from the first entry to the last',
    why: 'Checks of several days that come in so closely were written from paper or memory.',
    ...OWN,
  },
  bulkDays: {
    value: 3,
    unit: 'days on which the checks are said to have been made',
    why: 'Two rounds entered at one sitting are common; more are worth a question.',
    ...OWN,
  },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type QualityAssumptionId = keyof typeof figures;

export const QUALITY_ASSUMPTIONS = Object.fromEntries(
  Object.entries(figures).map(([id, figure]) => [id, { id, ...figure }]),
) as unknown as { readonly [K in QualityAssumptionId]: Assumption };
