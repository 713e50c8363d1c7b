import { describe, expect, it } from 'vitest';
import { randomFrom } from '../statistics/random.testing.ts';
import { doubtsOf, faultFound, inventedNetwork, soundSeasons } from './network.testing.ts';

const loud = { traps: 12, moths: 1200, placeK: 0.9, k: 3 };

/** The whole tables, with 500 seeds a cell, are in docs/rate-skill.md: `npm run skill -- rate`. */
describe('a trap held against the others of its kind', () => {
  it('a sound one in a poor place is doubted in fewer than one trap-season of fifty, places differing with k 0.9', () => {
    const { trapSeasons, silent, strong } = soundSeasons(loud, 25);
    expect(trapSeasons).toBe(300);
    // Binomial (300, 0.02): 13 or more would come about once in eighty.
    expect(silent * trapSeasons).toBeLessThan(13);
    expect(strong).toBeLessThanOrEqual(silent);
  });

  it('a dead one among eleven that catch about 1,200 each is always found, at first with a moderate doubt', () => {
    const { moderate, strong } = faultFound(loud, { from: 0, share: 0 }, 12);
    expect(moderate.found).toBe(1);
    expect(strong.found).toBe(1);
    expect(moderate.moths!).toBeLessThan(250);
    expect(strong.nights!).toBeGreaterThan(moderate.nights!);
  });

  it('one that dies at the height of the flight is found within three weeks', () => {
    const { moderate } = faultFound(loud, { from: 85, share: 0 }, 12);
    expect(moderate.found).toBeGreaterThan(0.9);
    expect(moderate.nights!).toBeLessThan(21);
  });

  it('one that catches ten times a middling place is doubted, but never strongly', () => {
    const season = inventedNetwork(randomFrom(3), loud, { from: 0, share: 10 });
    const doubts = doubtsOf(season, [0], loud)[0]!.filter((doubt) => doubt !== null);
    expect(doubts.length).toBeGreaterThan(5);
    expect(doubts.every(({ kind, degree }) => kind === 'loud' && degree === 'moderate')).toBe(true);
  });
});
