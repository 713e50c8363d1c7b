import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { checkOf, fieldOf, lureAt, programOf, trapOf } from '../advice/test-program.ts';
import { addDays, day, formatDay } from '../base/day.ts';
import { weekSheetSchema, weekSheetView } from './index.ts';

const every = (days: number, trapId: string, last: string) =>
  [4, 3, 2, 1, 0].map((back) => checkOf(formatDay(addDays(day(last), -back * days)), 1, { trapId }));

describe('the week on paper', () => {
  const program = programOf({
    fields: [fieldOf()],
    traps: [
      trapOf({ trapId: 'A', station: 'Gate', hungOn: '2025-06-01' }),
      trapOf({ trapId: 'B', station: 'Gate', hungOn: '2025-06-01', insect: 'ostrinia-nubilalis' }),
      trapOf({ trapId: 'C', station: 'Barn', hungOn: '2025-06-01' }),
      trapOf({ trapId: 'D', station: 'Gone', hungOn: '2025-06-01', takenDownOn: '2025-07-01' }),
    ],
    // A twice a week, next on the 16th; B once a week, next on the 20th; C was due on the 10th.
    checks: [...every(3, 'A', '2025-07-13'), ...every(7, 'B', '2025-07-13'), ...every(7, 'C', '2025-07-03')],
    lures: [lureAt('2025-06-23', 28, 'A'), lureAt('2025-07-01', 28, 'B'), lureAt('2025-06-01', 28, 'C')],
  });
  const sheet = weekSheetView(prepare(program, { on: day('2025-07-14') }));

  it('has a box for each visit that falls due in seven days; what is late falls due at once', () => {
    expect(sheet.until).toBe('2025-07-20');
    expect(sheet.stops.map(({ station, visits, daysLate, traps }) => [station, visits, daysLate, traps.length]).sort()).toEqual([
      ['Barn', ['2025-07-14'], 4, 1],
      ['Gate', ['2025-07-16', '2025-07-19', '2025-07-20'], 0, 2],
    ]);
  });

  it('takes a lure on the last drive before it ends, or on the first once it has, and none that lasts on', () => {
    // A's ends on the 21st, before the drive of the 22nd; C's ended on the 29th of June; B's lasts to the 29th of July.
    expect(sheet.lures).toEqual([
      {
        insect: 'helicoverpa-zea',
        days: [
          { on: '2025-07-14', lures: 1 },
          { on: '2025-07-19', lures: 1 },
        ],
        traps: [
          { trapId: 'C', on: '2025-07-14', daysPast: 15 },
          { trapId: 'A', on: '2025-07-19', daysPast: 0 },
        ],
      },
    ]);
  });

  it('is what its schema says', () => {
    expect(() => weekSheetSchema.parse(structuredClone(sheet))).not.toThrow();
  });
});
