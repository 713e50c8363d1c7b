/** What a plan needs and nobody has published. Each figure is shown with the plan that rests on it. */
import type { Assumption, Sourced } from '../catalogue/types.ts';

const OWN = { source: 'figure chosen by Duskwatch, no source', standing: 'own' } as const satisfies Sourced;
const PRACTICE = { source: 'common practice, no source', standing: 'practice' } as const satisfies Sourced;

const figures = {
  hangLeadDays: {
    value: 7,
    unit: 'days',
    why: 'A trap that hangs a check before the earliest plausible flight shows zeros first, and so the flight’s true beginning.',
    ...OWN,
  },
  oneYearMarginDays: {
    value: 14,
    unit: 'days',
    why: 'One year shows no spread: springs differ by about two weeks, so the flight may come this much before that year’s.',
    ...OWN,
  },
  seasonDays: {
    value: 120,
    unit: 'days',
    why: 'How long traps hang where neither harvest nor an earlier season says when to take them down.',
    ...OWN,
  },
  mostTraps: {
    value: 4,
    unit: 'traps per insect and area',
    why: 'More traps than this in one area are seldom kept up; the risk that remains is shown instead.',
    ...OWN,
  },
  fewestTraps: {
    value: 2,
    unit: 'traps per insect and area',
    why: 'With one trap, a single torn bag or spent lure leaves the area out of sight.',
    ...PRACTICE,
  },
  precision: {
    value: 0.5,
    unit: 'half-width of the interval as a share of the mean',
    why: 'Half the mean tells a quiet week from a busy one; sharper figures take more traps than are kept up.',
    ...OWN,
  },
  precisionLevel: { value: 0.8, unit: 'probability', why: 'The level at which rates are shown everywhere.', ...OWN },
  dispersionBlocks: {
    value: 6,
    unit: 'stretches of the same nights with two or more traps and some catch',
    why: 'Fewer stretches do not show how much traps of one field differ in the same nights.',
    ...OWN,
  },
  dispersionSpareCounts: {
    value: 12,
    unit: 'counts beyond one per stretch',
    why: 'With fewer to spare, the mean of each stretch takes up the scatter that is looked for.',
    ...OWN,
  },
  dispersionMoths: { value: 20, unit: 'moths', why: 'Scatter among hardly any moths says nothing about clumping.', ...OWN },
  spareLures: {
    value: 0.1,
    unit: 'share of the lures placed',
    why: 'Lures fall, dry out or are placed wrong; one in ten is kept in reserve.',
    ...OWN,
  },
  lostTraps: {
    value: 0.05,
    unit: 'share of the lures placed',
    why: 'A trap that is knocked down or stolen takes its lure along.',
    ...OWN,
  },
  lureLeadDays: {
    value: 21,
    unit: 'days',
    why: 'From order to delivery, with some days to notice what is missing.',
    ...OWN,
  },
  trapLifeSeasons: {
    value: 4,
    unit: 'seasons',
    why: 'How long a trap is used where the user does not say how many are worn out.',
    ...OWN,
  },
  samePlaceM: {
    value: 20,
    unit: 'm',
    why: 'Traps of one insect this close draw on the same moths: they count as one.',
    ...OWN,
  },
  roadFactor: {
    value: 1.3,
    unit: 'road km per great-circle km',
    why: 'Farm roads are longer than straight lines.',
    ...PRACTICE,
  },
  drivingKmPerHour: { value: 40, unit: 'km/h', why: 'Farm tracks and gates; a map or the user’s own times are better.', ...OWN },
  stopMinutes: { value: 4, unit: 'minutes', why: 'Park, walk to the station and back.', ...OWN },
  trapMinutes: { value: 5, unit: 'minutes', why: 'Empty, count and write down one trap.', ...OWN },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type SeasonAssumptionId = keyof typeof figures;

export const SEASON_ASSUMPTIONS = Object.fromEntries(
  Object.entries(figures).map(([id, figure]) => [id, { id, ...figure }]),
) as unknown as { readonly [K in SeasonAssumptionId]: Assumption };
