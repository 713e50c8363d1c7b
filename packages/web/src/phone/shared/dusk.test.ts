import { describe, expect, it } from 'vitest';
import { isNight, sunAltitudeDeg, sunAt } from './dusk.ts';

describe('the sun', () => {
  it('stands where Meeus finds it: Astronomical Algorithms, example 25.a (1992 October 13, 0 h TD), from memory', () => {
    const { rightAscensionDeg, declinationDeg } = sunAt(new Date('1992-10-13T00:00:00Z'));
    expect(rightAscensionDeg).toBeCloseTo(198.38, 1);
    expect(declinationDeg).toBeCloseTo(-7.785, 1);
  });

  it('is overhead on the equator at noon of an equinox, and a pole sees it on the horizon all day', () => {
    // Equinox 2025-03-20 09:01 UTC; the equation of time is −7.5 minutes then.
    expect(sunAltitudeDeg(new Date('2025-03-20T12:07:30Z'), 0, 0)).toBeGreaterThan(89.7);
    for (const hour of ['00', '06', '12', '18']) {
      expect(Math.abs(sunAltitudeDeg(new Date(`2025-03-20T${hour}:00:00Z`), 90, 0))).toBeLessThan(0.4);
    }
  });

  it('makes night at midnight and not at noon in July at 45° north', () => {
    expect(isNight(new Date('2025-07-12T04:20:00Z'), 45, -64)).toBe(true);
    expect(isNight(new Date('2025-07-12T16:20:00Z'), 45, -64)).toBe(false);
  });
});
