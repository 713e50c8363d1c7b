import { describe, expect, it } from 'vitest';
import { coverageOf } from './coverage.testing.ts';

const PRIOR = { median: 3, logSd: 0.8 };
const WEEK = [
  { traps: 1, nights: [7] },
  { traps: 2, nights: [3, 4] },
  { traps: 4, nights: [7] },
] as const;

/** The whole table, with 500 seeds a cell, is in docs/rate-skill.md: `npm run skill -- rate`. */
describe('the 80 % interval of a rate whose scatter is learned from a season of the program’s own', () => {
  it.each([
    { k: 0.7, perNight: 0.2 },
    { k: 0.7, perNight: 5 },
    { k: 2, perNight: 1 },
    { k: 8, perNight: 5 },
    { k: 8, perNight: 20 },
  ])('holds the truth about eight times in ten at k $k and $perNight a night, with one, two and four traps', (truth) => {
    const cells = coverageOf({ ...truth, records: 'season' }, WEEK, PRIOR, 40, 10);
    for (const { spread } of cells) {
      expect(spread).toBeGreaterThan(0.72);
      expect(spread).toBeLessThan(0.9);
    }
  });

  it('without records holds too little where counts scatter wildly and too much where they hardly do, and there is no help', () => {
    const [wild] = coverageOf({ k: 0.7, perNight: 5, records: 'none' }, WEEK, PRIOR, 100, 4);
    const [calm] = coverageOf({ k: 8, perNight: 5, records: 'none' }, WEEK, PRIOR, 100, 4);
    expect(wild!.spread).toBeLessThan(0.65);
    expect(calm!.spread).toBeGreaterThan(0.9);
  });
});
