/** Figures that Duskwatch itself must choose. None is a fact of the trade; each is shown wherever it is used. */
import type { Assumption, Sourced } from './types.ts';

const PRACTICE = { source: 'common practice, no source', standing: 'practice' } as const satisfies Sourced;
/** A setting of Duskwatch's own, made for honest reading and not taken from the trade. */
const OWN = { source: 'common practice, no source; figure chosen by Duskwatch', standing: 'own' } as const satisfies Sourced;

const figures = {
  catchDispersionK: {
    value: 2,
    unit: 'dispersion k per visit',
    why: 'Trap counts scatter more than chance alone. Until a program has its own estimate, a visit is read as moderately over-dispersed.',
    ...OWN,
  },
  intervalLevel: {
    value: 0.8,
    unit: 'probability',
    why: 'The share of belief that the interval of a nightly rate holds: wide enough to be honest, narrow enough to act on.',
    ...OWN,
  },
  maxCheckGapDays: {
    value: 8,
    unit: 'days',
    why: 'Traps are checked once or twice a week; a trap not seen for longer than this is overdue and its field is out of sight.',
    ...PRACTICE,
  },
  accumulationNights: {
    value: 7,
    unit: 'nights',
    why: 'Eggs laid over a week can add up although no single night reaches the threshold.',
    ...OWN,
  },
  accumulationShare: {
    value: 0.6,
    unit: 'share of the threshold',
    why: 'Mean catch of the last nights, as a share of the threshold, from which it counts as accumulating below it. The published case of 9, 7, 5, 9, 6, 7, 7 moths against 10 stands at 0.714.',
    ...OWN,
  },
  nearProbability: {
    value: 0.2,
    unit: 'probability',
    why: 'From this probability that the true rate is above the threshold, the catch is called near it.',
    ...OWN,
  },
  stageOldDays: {
    value: 14,
    unit: 'days',
    why: 'A crop moves to another stage within about two weeks: an older observation is used with a caution.',
    ...OWN,
  },
  stageTooOldDays: {
    value: 28,
    unit: 'days',
    why: 'An observation older than this says nothing about the stage today.',
    ...OWN,
  },
  sampleFreshDays: {
    value: 7,
    unit: 'days',
    why: 'Eggs hatch and larvae move within a week: an older sample no longer describes the field.',
    ...OWN,
  },
  maxBridgeDays: {
    value: 3,
    unit: 'days',
    why: 'Weather gaps up to this long are bridged and counted; a heat sum over a longer gap is refused.',
    ...OWN,
  },
  scoutLeadDays: {
    value: 7,
    unit: 'days',
    why: 'How far ahead of a predicted event its scouting date is announced, so that it fits into a week of work.',
    ...OWN,
  },
  decideWithinDays: {
    value: 1,
    unit: 'days',
    why: 'Once a rule is reached, young larvae soon feed out of reach: the decision is due by the next day.',
    ...OWN,
  },
  nearbyKm: {
    value: 5,
    unit: 'km',
    why: 'A field this close counts as a neighbour where a rule asks what stands nearby; moths fly further, their choice of crop is local.',
    ...OWN,
  },
  weatherStaleDays: {
    value: 3,
    unit: 'days',
    why: 'With the newest weather older than this, heat is no longer known up to today.',
    ...OWN,
  },
  lookAlikeShare: {
    value: 0.5,
    unit: 'share of all moths in the trap',
    why: 'With at least this share of other species in a catch, somebody should look again at what was counted as the target.',
    ...OWN,
  },
  sampleUnits: {
    value: 100,
    unit: 'plants, ears or fruit',
    why: 'Five places of twenty are walked where a rule gives a share and no sample size.',
    ...PRACTICE,
  },
  lookAlikeMoths: {
    value: 10,
    unit: 'moths of all species in the trap',
    why: 'With fewer moths than this in a catch, the share of other species says little.',
    ...OWN,
  },
  accumulationMoths: {
    value: 5,
    unit: 'moths per trap',
    why: 'Catches add up only where the threshold, reached every night, would bring at least this many moths to a trap in the window.',
    ...OWN,
  },
  nearShare: {
    value: 0.75,
    unit: 'share of the threshold',
    why: 'A catch is called near its threshold only from this share of it on, however wide its interval: few nights alone are no reason to walk a field.',
    ...OWN,
  },
  fewTrapNights: {
    value: 4,
    unit: 'trap-nights',
    why: 'A rate from fewer trap-nights than this is weak evidence and is marked so.',
    ...OWN,
  },
  scoutWithinDays: {
    value: 2,
    unit: 'days',
    why: 'Scouting that is called for now is due before the next usual check, so that what it finds can still be acted on.',
    ...OWN,
  },
  usualCheckGapDays: {
    value: 7,
    unit: 'days',
    why: 'Traps are checked at least once a week: the next visit is due by then while a trap shows no rhythm of its own.',
    ...PRACTICE,
  },
  sampleUnitsFair: {
    value: 25,
    unit: 'plants, ears or fruit',
    why: 'The published inspection of a tomato field takes 20 to 30 plants; a sample of fewer units is only moderate evidence.',
    ...OWN,
  },
} as const satisfies Record<string, Omit<Assumption, 'id'>>;

export type AssumptionId = keyof typeof figures;

export const ASSUMPTIONS = Object.fromEntries(
  Object.entries(figures).map(([id, figure]) => [id, { id, ...figure }]),
) as unknown as {
  readonly [K in AssumptionId]: Assumption;
};
