import { describe, expect, it } from 'vitest';
import { addDays, day, formatDay } from '../base/day.ts';
import { trapNumberRow, trapNumberTable, trapsEnough } from '../planning/trap-table.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { catchDispersion } from './dispersion.ts';
import { prepare } from './prepare.ts';
import { checkOf, programOf, trapOf } from './test-program.ts';

/** Four traps at one field, checked together, with a mean that changes from one visit to the next. */
function invented(k: number, visits: number, seed: number, traps = 4) {
  const random = randomFrom(seed);
  const ids = Array.from({ length: traps }, (_, i) => `T${i + 1}`);
  const checks = Array.from({ length: visits }, (_, visit) => {
    const mean = 2 + 20 * random.uniform();
    const on = formatDay(addDays(day('2025-07-01'), 3 * (visit + 1)));
    return ids.map((trapId) => checkOf(on, random.negativeBinomial(mean, k), { trapId }));
  }).flat();
  const program = programOf({ traps: ids.map((trapId) => trapOf({ trapId, station: trapId })), checks });
  return prepare(program, { on: day('2026-06-30') });
}

describe('the dispersion of a program’s own checks', () => {
  it('is found again from invented seasons, whatever the flight did from visit to visit', () => {
    const logs = [1, 2, 3, 4, 5, 6].map((seed) => {
      const found = catchDispersion(invented(1.5, 40, seed), 'helicoverpa-zea', 'mesh-cone');
      expect(found).toMatchObject({ reason: 'own-checks', assumption: null, blocks: 40, counts: 160 });
      expect(found.low! < found.k && found.k < found.high!).toBe(true);
      return Math.log(found.k / 1.5);
    });
    expect(Math.abs(logs.reduce((sum, log) => sum + log) / logs.length)).toBeLessThan(0.15);
  });

  it('is the stated default while checks are few, and the default’s source comes along', () => {
    const found = catchDispersion(invented(1.5, 4, 1), 'helicoverpa-zea', 'mesh-cone');
    expect(found).toMatchObject({ k: 2, reason: 'too-few-checks', assumption: { id: 'catchDispersionK' }, low: null });
  });

  it('needs two traps in the same nights: one trap alone shows no scatter between traps', () => {
    const found = catchDispersion(invented(1.5, 40, 1, 1), 'helicoverpa-zea', 'mesh-cone');
    expect(found).toMatchObject({ reason: 'too-few-checks', blocks: 0 });
  });

  it('is not taken to be nothing where a season happens to show none', () => {
    const calm = invented(1e9, 12, 3);
    const found = catchDispersion(calm, 'helicoverpa-zea', 'mesh-cone');
    if (found.reason === 'no-scatter-found') expect(found.k).toBe(2);
    else expect(found.k).toBeGreaterThan(5);
  });
});

describe('the table of trap numbers', () => {
  const question = { k: 2, thresholdPerNight: 10, windowNights: 1 };

  it('has a row for every number of traps and every stretch of nights, each the same as asked alone', () => {
    const rows = trapNumberTable(question, [1, 3, 7], { mostTraps: 5 });
    expect(rows).toHaveLength(15);
    for (const row of rows)
      expect(row).toEqual(trapNumberRow({ ...question, nightsBetweenChecks: row.nightsBetweenChecks }, row.traps));
  });

  it('proposes the fewest traps that keep to both risks', () => {
    const wishes = { mostTraps: 40, riskMissed: 0.1, riskFalse: 0.1 };
    const asked = { ...question, nightsBetweenChecks: 3 };
    const { traps, missed, falseAlarm, enough } = trapsEnough(asked, wishes);
    expect(enough).toBe(true);
    expect(Math.max(missed, falseAlarm)).toBeLessThanOrEqual(0.1);
    expect(trapNumberRow(asked, traps - 1, wishes).enough).toBe(false);
  });

  it('stops at the most traps that are kept up, and then says that they are not enough', () => {
    const row = trapsEnough({ ...question, nightsBetweenChecks: 3 }, { mostTraps: 2 });
    expect(row).toMatchObject({ traps: 2, enough: false });
  });
});
