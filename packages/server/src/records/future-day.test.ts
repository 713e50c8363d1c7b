import { describe, expect, it } from 'vitest';
import { futureDay } from './future-day.ts';

const check = (checkedOn: string) => ({
  trapId: 'T1',
  checkedOn,
  visit: 1,
  targetCount: 3,
  otherCount: null,
  condition: 'fit' as const,
  emptied: true,
  note: null,
});
const now = Date.parse('2026-07-15T20:00:00Z');

describe('a record of a day to come', () => {
  it('is refused with the last day there can be', () => {
    expect(futureDay('checks', check('2026-12-01'), now)).toMatchObject({
      where: { column: 'checked_on' },
      got: '2026-12-01',
      fault: { kind: 'future-day', last: '2026-07-16' },
    });
  });

  it('is taken where that day has begun somewhere: it is 16 July already at UTC+14', () => {
    expect(futureDay('checks', check('2026-07-16'), now)).toBeNull();
    expect(futureDay('checks', check('2026-07-16'), Date.parse('2026-07-15T09:00:00Z'))).not.toBeNull();
  });

  it('is nothing wrong with what is planned, or with a removal', () => {
    const plan = { season: 2027, insect: 'helicoverpa-zea', area: 'all', design: null, traps: 3, hangOn: '2027-06-10' };
    expect(futureDay('plans', { ...plan, takeDownOn: null, lureLifeDays: null, note: null }, now)).toBeNull();
    expect(futureDay('checks', null, now)).toBeNull();
  });
});
