import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adviseAll, prepare } from '../advice/index.ts';
import { day } from '../base/index.ts';
import type { Person, Role } from '../people/index.ts';
import { leftEmpty } from './left-empty.ts';
import { emptyProgram, type Program, RECORD_KINDS } from './program.ts';
import type { FieldRecord, TrapRecord } from './schema.ts';
import { scopeProgram } from './scope.ts';

const somebody = (role: Role, ...farms: string[]): Person => ({
  id: 'p',
  name: 'Bo',
  role,
  farms,
  language: 'en',
  disabled: false,
});

const field = (fieldId: string, farm: string, change: Partial<FieldRecord> = {}): FieldRecord => ({
  fieldId,
  farm,
  name: `${fieldId} of ${farm}`,
  crop: 'sweet-corn',
  growthHabit: null,
  plantedOn: '2026-05-10',
  harvestOn: '2026-08-10',
  latitude: 44.123,
  longitude: -63.456,
  timeZone: 'America/Halifax',
  weatherSource: null,
  ...change,
});

const trap = (trapId: string, ...informs: string[]): TrapRecord => ({
  trapId,
  station: `station of ${trapId}`,
  insect: 'helicoverpa-zea',
  design: 'mesh-cone',
  latitude: 44.5,
  longitude: -63.5,
  hungOn: '2026-07-01',
  takenDownOn: null,
  informs,
});

const check = (trapId: string, targetCount: number) => ({
  trapId,
  checkedOn: '2026-07-08',
  visit: 1,
  targetCount,
  otherCount: null,
  condition: 'fit' as const,
  emptied: true,
  note: `note at ${trapId}`,
});

const weather = (sourceId: string) => ({ sourceId, date: '2026-07-08', tminC: 12, tmaxC: 27, precipitationMm: null });

/** Two farms: one trap over each, one between them. */
const twoFarms: Program = {
  ...emptyProgram({ name: 'Vale' }),
  fields: [field('a1', 'Alder'), field('b1', 'Birch')],
  stages: ['a1', 'b1'].map((fieldId) => ({ fieldId, observedOn: '2026-07-05', stage: 'silk' })),
  traps: [trap('ta', 'a1'), trap('tb', 'b1'), trap('tab', 'a1', 'b1'), trap('idle')],
  lures: ['ta', 'tb'].map((trapId) => ({ trapId, placedOn: '2026-07-01', lifeDays: 28 })),
  checks: [check('ta', 3), check('tb', 40), check('tab', 5)],
  weather: [weather('Alder'), weather('Birch')],
  normals: ['Alder', 'Birch'].map((sourceId) => ({ sourceId, month: 7, tminC: 15, tmaxC: 27 })),
  samples: ['a1', 'b1'].map((fieldId) => ({
    fieldId,
    insect: 'helicoverpa-zea',
    sampledOn: '2026-07-08',
    kind: 'ears',
    unitsExamined: 50,
    unitsInfested: 2,
    totalCount: null,
  })),
  treatments: ['a1', 'b1'].map((fieldId) => ({
    fieldId,
    insect: 'helicoverpa-zea',
    appliedOn: '2026-07-02',
    product: `product at ${fieldId}`,
    protectsDays: 3,
    reentryHours: null,
    preharvestDays: null,
  })),
  decisions: ['a1', 'b1'].map((fieldId) => ({
    fieldId,
    insect: 'helicoverpa-zea',
    decidedOn: '2026-07-06',
    decision: 'not-treated',
    reason: 'cost',
    note: null,
  })),
  skips: ['ta', 'tb', 'tab'].map((trapId) => ({ trapId, skippedOn: '2026-07-05', reason: 'locked', note: `note at ${trapId}` })),
  seasons: [
    {
      ...leftEmpty('seasons'),
      season: 2027,
      insects: [],
      crops: [],
      fields: ['a1'],
      checkWeekdays: [],
      trapBudget: 4,
    },
  ],
  plans: [
    {
      ...leftEmpty('plans'),
      season: 2027,
      insect: 'helicoverpa-zea',
      area: 'a1',
      traps: 2,
    },
  ],
  prices: [{ item: 'lure', of: 'helicoverpa-zea', price: 8, currency: 'USD', note: null }],
  stock: [
    {
      stockId: 'shed',
      item: 'trap',
      of: 'mesh-cone',
      onHand: 3,
      countedOn: '2026-07-01',
      wornOut: null,
      openedOn: null,
      expiresOn: null,
      storage: null,
    },
  ],
};

describe('what a person may know of a program', () => {
  it('a coordinator knows all of it, a scout all but what things cost', () => {
    expect(scopeProgram(twoFarms, somebody('coordinator'))).toBe(twoFarms);
    expect(scopeProgram(twoFarms, somebody('scout'))).toEqual({ ...twoFarms, prices: [] });
    const unpriced = { ...twoFarms, prices: [] };
    expect(scopeProgram(unpriced, somebody('scout'))).toBe(unpriced);
  });

  it.each(['grower', 'reader'] as const)('a %s knows nothing of plans, prices and stock', (role) => {
    const part = scopeProgram(twoFarms, somebody(role, 'Alder'));
    for (const kind of ['seasons', 'plans', 'prices', 'stock'] as const) expect(part[kind]).toEqual([]);
  });

  it('a grower knows the own fields and the traps that inform them, places and all', () => {
    const own = scopeProgram(twoFarms, somebody('grower', 'Alder'));
    expect(own.fields).toEqual([twoFarms.fields[0]]);
    expect(own.traps).toEqual([twoFarms.traps[0], { ...twoFarms.traps[2], informs: ['a1'] }]);
    expect(own.checks.map((each) => each.trapId)).toEqual(['ta', 'tab']);
    expect(own.skips.map((each) => each.trapId)).toEqual(['ta', 'tab']);
    expect(own.weather.map((each) => each.sourceId)).toEqual(['Alder']);
    expect(own.normals.map((each) => each.sourceId)).toEqual(['Alder']);
    for (const kind of ['stages', 'lures', 'samples', 'treatments', 'decisions'] as const)
      expect(own[kind]).toEqual([twoFarms[kind][0]]);
    expect(JSON.stringify(own)).not.toMatch(/Birch|b1|tb/);
  });

  it('a grower of no farm here knows of no field, trap or weather', () => {
    const none = scopeProgram(twoFarms, somebody('grower', 'alder', ''));
    for (const kind of RECORD_KINDS) expect(none[kind]).toEqual([]);
  });

  it('a reader knows catches, and no place, name, field, treatment or note', () => {
    const public_ = scopeProgram(twoFarms, somebody('reader'));
    expect(public_.skips).toEqual([]);
    expect(public_.checks.map((each) => each.targetCount)).toEqual([3, 40, 5]);
    expect(JSON.stringify(public_)).not.toMatch(/Alder|Birch|a1|b1|"t[ab]+"|idle|station of|note at|product|44\.|63\./);
  });

  it('somebody disabled knows not even the name of the program', () => {
    expect(scopeProgram(twoFarms, { ...somebody('coordinator'), disabled: true })).toEqual(emptyProgram());
  });

  it('weather that no farm claims goes to a grower whose fields may be meant, and is not mistaken for theirs', () => {
    const open = {
      ...twoFarms,
      fields: [field('a1', 'Alder', { weatherSource: 'hill' }), field('a2', 'Alder'), field('b1', 'Birch')],
      weather: [weather('hill'), weather('Birch')],
    };
    const own = scopeProgram(open, somebody('grower', 'Alder'));
    expect(own.weather.map((each) => each.sourceId)).toEqual(['hill']);
    expect(adviseAll(prepare(own, { on: day('2026-07-09') }))).toEqual(
      adviseAll(prepare(open, { on: day('2026-07-09') })).filter((advice) => advice.field !== 'b1'),
    );
  });

  it('what a grower is advised for an own field is what the coordinator is', () => {
    const farm = fc.constantFrom('Alder', 'Birch', 'Cedar');
    const source = fc.constantFrom('Alder', 'Birch', 'shared', 'other');
    const programs = fc
      .array(fc.record({ farm, source: fc.option(fc.constantFrom('shared', 'Alder')) }), { minLength: 1, maxLength: 5 })
      .chain((fields) => {
        const ids = fields.map((_, index) => `f${index}`);
        return fc.record({
          fields: fc.constant(fields.map((each, index) => field(ids[index]!, each.farm, { weatherSource: each.source }))),
          informs: fc.array(fc.subarray(ids), { maxLength: 5 }),
          counts: fc.array(fc.nat(60), { minLength: 5, maxLength: 5 }),
          sources: fc.uniqueArray(source, { minLength: 1 }),
        });
      });
    fc.assert(
      fc.property(programs, farm, ({ fields, informs, counts, sources }, mine) => {
        const program: Program = {
          ...emptyProgram(),
          fields,
          stages: fields.map(({ fieldId }) => ({ fieldId, observedOn: '2026-07-05', stage: 'silk' })),
          traps: informs.map((ids, index) => trap(`t${index}`, ...ids)),
          lures: informs.map((_, index) => ({ trapId: `t${index}`, placedOn: '2026-07-01', lifeDays: 28 })),
          checks: informs.map((_, index) => check(`t${index}`, counts[index]!)),
          weather: sources.map(weather),
        };
        const own = scopeProgram(program, somebody('grower', mine));
        const isMine = new Set(fields.filter((each) => each.farm === mine).map((each) => each.fieldId));
        // With others' sources alone, the weather is missing to a grower, where a coordinator reads that none is named.
        fc.pre(own.weather.length > 0);
        const insects = new Set(own.traps.map((each) => each.insect));
        const from = (known: Program) =>
          adviseAll(prepare(known, { on: day('2026-07-09') })).filter(
            (advice) => isMine.has(advice.field) && insects.has(advice.insect),
          );
        expect(from(own)).toEqual(from(program));
      }),
      { numRuns: 40 },
    );
  });
});
