import { describe, expect, it } from 'vitest';
import { formatDay } from '../base/day.ts';
import { check, after as nightsAfter, trap } from '../catch/season.testing.ts';
import { emptyProgram, type Program } from '../records/program.ts';
import type { CheckRecord, FieldRecord, LureRecord, SampleRecord, TrapRecord } from '../records/schema.ts';
import { infestationPairsOf } from './infestation-pairs-of.ts';
import { lureAgesOf } from './lure-ages-of.ts';
import { compareSideBySide } from './side-by-side.ts';
import { sideBySideOf } from './side-by-side-of.ts';

const on = nightsAfter(120);
const field = (over: Partial<FieldRecord> = {}): FieldRecord => ({
  fieldId: 'F1',
  farm: 'Hill farm',
  name: 'North piece',
  crop: 'sweet-corn',
  growthHabit: null,
  plantedOn: null,
  harvestOn: null,
  latitude: null,
  longitude: null,
  timeZone: null,
  weatherSource: null,
  ...over,
});
const program = (traps: readonly TrapRecord[], checks: readonly CheckRecord[], over: Partial<Program> = {}): Program => ({
  ...emptyProgram(),
  fields: [field()],
  traps,
  checks,
  ...over,
});
const at =
  (trapId: string) =>
  (nights: number, count: number | null, over: Partial<CheckRecord> = {}) =>
    check(nights, count, { trapId, ...over });
const [cone, bucket] = [at('cone'), at('bucket')];
const pair = [trap({ trapId: 'cone', design: 'wire-cone' }), trap({ trapId: 'bucket', design: 'bucket' })];

describe('traps side by side', () => {
  it('are compared over the nights between two days on which both were visited', () => {
    const [set] = sideBySideOf(program(pair, [cone(3, 9), cone(7, 4), bucket(2, 1), bucket(3, 2), bucket(5, 2), bucket(8, 3)]), {
      on,
    });
    const block = 'station North gate, 2025-06-01 to 2025-06-04';
    const shared = { block, site: 'station North gate', place: 'North gate', season: 2025 };
    expect(set!.observations).toEqual([
      { treatment: 'wire-cone', ...shared, count: 9, nights: 3 },
      { treatment: 'bucket', ...shared, count: 3, nights: 3 },
    ]);
    expect(set!.leftOut).toMatchObject({ 'other-nights': 4 + 2 + 3, 'no-information': 0 });
  });

  it('lend no night from a visit that tells nothing, is doubtful, or had a spent lure', () => {
    const lures: LureRecord[] = [{ trapId: 'bucket', placedOn: formatDay(nightsAfter(0)), lifeDays: 10 }];
    const checks = [
      ...[cone(2, 5), cone(4, 5), cone(6, 5), cone(12, 5)],
      ...[bucket(2, null, { condition: 'unfit' }), bucket(4, 3), bucket(6, 2, { condition: 'doubtful' }), bucket(12, 1)],
    ];
    const [set] = sideBySideOf(program(pair, checks, { lures }), { on });
    expect(set!.observations.map(({ count }) => count)).toEqual([5, 3]);
    expect(set!.leftOut).toEqual({
      'no-information': 2,
      doubtful: 2,
      'lure-spent': 6,
      'lure-not-stated': 0,
      'other-nights': 2 + 2 + 6,
      older: 0,
    });
    expect(set!.lureUnknown).toBe(2);
  });

  it('at one station and for one field are counted once', () => {
    const visits = [3, 6, 9].flatMap((night) => [cone(night, 4), bucket(night, 2)]);
    const [set] = sideBySideOf(program(pair, visits), { on });
    expect(set!.observations).toHaveLength(6);
    const apart = pair.map((one) => ({ ...one, station: one.trapId }));
    const [byField] = sideBySideOf(program(apart, visits), { on });
    expect(byField!.observations.map(({ block }) => block)[0]).toMatch(/^field F1/);
    expect(byField!.observations).toHaveLength(6);
  });

  it('of one design, or far from each other, are no comparison', () => {
    const visits = [3, 6].flatMap((night) => [cone(night, 4), bucket(night, 2)]);
    expect(
      sideBySideOf(
        program(
          pair.map((one) => ({ ...one, design: 'bucket' as const })),
          visits,
        ),
        { on },
      ),
    ).toEqual([]);
    const far = [pair[0]!, { ...pair[1]!, station: 'South gate', informs: ['F2'] }];
    expect(sideBySideOf(program(far, visits), { on })).toEqual([]);
  });

  it('of very many nights are compared over the newest, and the others are counted as older', () => {
    const nights = Array.from({ length: 3_030 }, (_, i) => i + 1);
    const [set] = sideBySideOf(
      program(
        pair,
        nights.flatMap((night) => [cone(night, 4), bucket(night, 2)]),
      ),
      {
        on: nightsAfter(3_031),
      },
    );
    expect(set!.observations).toHaveLength(6_000);
    expect(set!.observations[0]!.block).toContain(`to ${formatDay(nightsAfter(3_030))}`);
    expect(set!.leftOut.older).toBe(60);
  });

  it('give a ratio once there are enough shared nights', () => {
    const visits = Array.from({ length: 10 }, (_, i) => [cone(3 * i + 3, 8 + (i % 5)), bucket(3 * i + 3, 4 + (i % 3))]).flat();
    const [set] = sideBySideOf(program(pair, visits), { on });
    const learned = compareSideBySide(set!.observations);
    if (!learned.known) throw new Error(learned.reason);
    const [{ ratio, treatment, against }] = learned.ratios as [(typeof learned.ratios)[number]];
    expect([treatment, against]).toEqual(['bucket', 'wire-cone']);
    expect(ratio.low).toBeLessThan(0.5);
    expect(ratio.high).toBeGreaterThan(0.49);
  });

  it('compare lures of different stated life in traps of one design', () => {
    const cones = pair.map((one) => ({ ...one, design: 'wire-cone' as const }));
    const lures: LureRecord[] = [
      { trapId: 'cone', placedOn: formatDay(nightsAfter(0)), lifeDays: 28 },
      { trapId: 'bucket', placedOn: formatDay(nightsAfter(0)), lifeDays: 60 },
    ];
    const visits = [3, 6].flatMap((night) => [cone(night, 4), bucket(night, 2)]);
    const [set] = sideBySideOf(program(cones, visits, { lures }), { on, compared: 'lure-life' });
    expect(new Set(set!.observations.map(({ treatment }) => treatment))).toEqual(new Set(['28-day lure', '60-day lure']));
    expect(sideBySideOf(program(pair, visits, { lures }), { on, compared: 'lure-life' })).toEqual([]);
  });
});

describe('lure ages', () => {
  const weather = [{ sourceId: 'vale', date: '2025-06-01', tminC: 10, tmaxC: 20, precipitationMm: null }];
  const lures: LureRecord[] = [
    { trapId: 'cone', placedOn: formatDay(nightsAfter(0)), lifeDays: 28 },
    { trapId: 'cone', placedOn: formatDay(nightsAfter(7)), lifeDays: 28 },
    { trapId: 'bucket', placedOn: formatDay(nightsAfter(0)), lifeDays: 28 },
  ];

  it('are those at the middle of the nights, in nights that two traps under one flight share', () => {
    const checks = [cone(4, 5), cone(9, 1), cone(13, 6), bucket(4, 2), bucket(9, 3), bucket(13, 1), bucket(15, 1)];
    const [set] = lureAgesOf(program(pair, checks, { lures, weather }), { on });
    const ages = set!.observations.map(({ trap, lureAgeDays, nights }) => ({ trap, lureAgeDays, nights }));
    expect(ages).toContainEqual({ trap: 'cone', lureAgeDays: 4, nights: 4 });
    expect(ages).toContainEqual({ trap: 'bucket', lureAgeDays: 11, nights: 4 });
    // Changed on the seventh night of a visit on the ninth: two lures, no one age. Its neighbour is left alone.
    expect(set!.leftOut).toEqual({ noInformation: 0, doubtful: 0, ageUnknown: 1, alone: 2, older: 0 });
    expect(ages).toHaveLength(4);
  });

  it('are not shared by traps under weather nobody knows', () => {
    const checks = [cone(4, 5), bucket(4, 2)];
    expect(lureAgesOf(program(pair, checks, { lures }), { on })[0]!.observations).toEqual([]);
  });
});

describe('samples and the catch before them', () => {
  const sample = (nights: number, infested: number | null): SampleRecord => ({
    fieldId: 'F1',
    insect: 'helicoverpa-zea',
    sampledOn: formatDay(nightsAfter(nights)),
    kind: 'ears',
    unitsExamined: 100,
    unitsInfested: infested,
    totalCount: null,
  });

  it('take each night’s mean over traps of one design, and no visit made after the sample', () => {
    const two = [trap({ trapId: 'cone' }), trap({ trapId: 'bucket' })];
    const [set] = infestationPairsOf(program(two, [cone(2, 4), bucket(4, 4), cone(6, 40)], { samples: [sample(4, 7)] }), { on });
    expect(set).toMatchObject({ design: 'mesh-cone', response: 'share-infested', kind: 'ears', crop: 'sweet-corn' });
    expect(set!.pairs).toEqual([
      {
        field: 'F1',
        sampledOn: formatDay(nightsAfter(4)),
        examined: 100,
        found: 7,
        catches: [
          { before: 1, perNight: 1 },
          { before: 2, perNight: 1 },
          { before: 3, perNight: 1.5 },
          { before: 4, perNight: 1.5 },
        ],
      },
    ]);
  });

  it('are left out after a treatment, without a figure, or without a catch, and counted as such', () => {
    const checks = [cone(20, 4), cone(22, 4)];
    const treatments = [
      {
        fieldId: 'F1',
        insect: 'helicoverpa-zea',
        appliedOn: formatDay(nightsAfter(24)),
        product: 'invented',
        protectsDays: 4,
        reentryHours: null,
        preharvestDays: null,
      },
    ];
    const samples = [sample(10, 3), sample(22, null), sample(23, 5), sample(30, 1)];
    const [set] = infestationPairsOf(program([pair[0]!], checks, { samples, treatments }), { on });
    expect(set!.pairs.map(({ found }) => found)).toEqual([5]);
    expect(set!.leftOut).toEqual({ notCounted: 1, treated: 1, noCatch: 1 });
  });
});
