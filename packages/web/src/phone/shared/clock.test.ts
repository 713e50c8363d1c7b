import { describe, expect, it } from 'vitest';
import { daysAhead, localDay, measured, trueMs } from './clock.ts';

const noon = new Date(2026, 6, 15, 12).getTime();
const DAY_MS = 86_400_000;
const answered = (aheadMs: number) => measured(new Date(noon).toUTCString(), noon + aheadMs - 200, noon + aheadMs + 200);

describe('the clock of a phone', () => {
  it('a month ahead writes the day that the server has, and says by how much it is off', () => {
    const clock = answered(31 * DAY_MS);
    const now = noon + 31 * DAY_MS + 3_600_000;
    expect(localDay(trueMs(clock, now))).toBe('2026-07-15');
    expect(daysAhead(clock, now)).toBe(31);
  });

  it('behind is put right in the same way', () => {
    const clock = answered(-400 * DAY_MS);
    expect(localDay(trueMs(clock, noon - 399 * DAY_MS))).toBe('2026-07-16');
    expect(daysAhead(clock, noon - 400 * DAY_MS + 1_000)).toBe(-400);
  });

  it('off by less than a minute is taken for right, and so is one that nobody measured', () => {
    expect(trueMs(answered(40_000), noon + 50_000)).toBe(noon + 50_000);
    expect(trueMs(null, noon)).toBe(noon);
    expect(daysAhead(null, noon)).toBe(0);
  });

  it('that was set back since it was measured is believed again', () => {
    const clock = answered(31 * DAY_MS);
    expect(localDay(trueMs(clock, noon + DAY_MS))).toBe('2026-07-16');
  });

  it('is not measured by an answer whose head names no instant', () => {
    expect([measured(null, noon, noon), measured('soon', noon, noon)]).toEqual([null, null]);
  });
});
