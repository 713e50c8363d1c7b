import { describe, expect, test } from 'vitest';
import { checkProgram } from './check-program.ts';
import { emptyProgram, type Program } from './program.ts';
import type { CheckRecord, FieldRecord, TrapRecord } from './schema.ts';
import { repeatedChecks, visitNumbers } from './visits.ts';

const field: FieldRecord = {
  fieldId: 'north',
  farm: 'Invented Farm',
  name: 'North',
  crop: 'sweet-corn',
  growthHabit: null,
  plantedOn: null,
  harvestOn: null,
  latitude: null,
  longitude: null,
  timeZone: null,
  weatherSource: null,
};
const trap: TrapRecord = {
  trapId: 'T1',
  station: 'Gate',
  insect: 'helicoverpa-zea',
  design: 'mesh-cone',
  latitude: null,
  longitude: null,
  hungOn: '2025-06-01',
  takenDownOn: null,
  informs: ['north'],
};
const check = (more: Partial<CheckRecord> = {}): CheckRecord => ({
  trapId: 'T1',
  checkedOn: '2025-07-01',
  visit: 1,
  targetCount: 3,
  otherCount: null,
  condition: 'fit',
  emptied: true,
  note: null,
  ...more,
});
const program = (more: Partial<Program> = {}): Program => ({ ...emptyProgram(), fields: [field], traps: [trap], ...more });
const places = (given: Program) => checkProgram(given).map(({ where, got }) => `${where.file} ${where.column}: ${got}`);

describe('a program that came from no file', () => {
  test('is checked by the same rules, naming the table instead of the row', () => {
    const faulty = program({
      checks: [check({ trapId: 'T2' }), check({ checkedOn: '2025-05-01' }), check({ targetCount: null })],
      lures: [{ trapId: 'T9', placedOn: '2025-06-01', lifeDays: null }],
      weather: [{ sourceId: 's', date: '2025-07-01', tminC: 20, tmaxC: 10, precipitationMm: null }],
    });
    expect(places(faulty)).toEqual([
      'checks.csv target_count: nothing, at a fit visit',
      'weather.csv tmin_c: tmin 20 °C above tmax 10 °C',
      'lures.csv trap_id: T9',
      'checks.csv trap_id: T2',
      'checks.csv checked_on: 2025-05-01',
    ]);
  });

  test('a sound one has no problem; an unfit visit needs no count', () => {
    expect(
      places(program({ checks: [check(), check({ checkedOn: '2025-07-02', condition: 'unfit', targetCount: null })] })),
    ).toEqual([]);
  });

  test('why a trap was unfit is told only of one that was', () => {
    const unfit = check({ condition: 'unfit', targetCount: null, unfitReason: 'stolen' });
    expect(places(program({ checks: [unfit] }))).toEqual([]);
    expect(places(program({ checks: [check({ unfitReason: 'stolen' })] }))).toEqual([
      'checks.csv unfit_reason: stolen, at a fit visit',
    ]);
  });

  test('a field may name its weather source only among those with weather; with none at all it stays unknown', () => {
    const fields = [{ ...field, weatherSource: 'hill' }];
    const weather = [{ sourceId: 'hil', date: '2025-07-01', tminC: 1, tmaxC: 2, precipitationMm: null }];
    expect(places(program({ fields }))).toEqual([]);
    expect(places(program({ fields, weather }))).toEqual(['fields.csv weather_source: hill']);
  });

  test('a time zone that no one knows is named', () => {
    expect(places(program({ fields: [{ ...field, timeZone: 'Atlantis/Central' }] }))).toEqual([
      'fields.csv time_zone: Atlantis/Central',
    ]);
  });
});

test('visits to one trap on one day are numbered in order; another trap or day begins at 1', () => {
  const checks = [
    check(),
    check({ targetCount: 4 }),
    check({ trapId: 'T2' }),
    check({ checkedOn: '2025-07-02' }),
    check({ targetCount: 5 }),
  ];
  expect(visitNumbers(checks)).toEqual([1, 2, 1, 1, 3]);
});

test('only a check that agrees with an earlier one in everything repeats it', () => {
  const checks = [check(), check({ note: 'second look' }), check({ visit: 3 })];
  expect(repeatedChecks(checks)).toEqual([{ index: 2, first: 0 }]);
});

test('a hundredth visit to a trap on one day is a wrong date, found without comparing all with all', () => {
  const visits = visitNumbers(Array.from({ length: 50_000 }, (_, i) => check({ targetCount: i })));
  expect(visits.slice(97, 102)).toEqual([98, 99, 100, 100, 100]);
  expect(places(program({ checks: [check({ visit: 100 })] }))).toEqual([
    'checks.csv checked_on: more than 99 visits to trap T1 on 2025-07-01',
  ]);
});
