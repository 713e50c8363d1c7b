import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import type { BiofixRule } from '../catalogue/types.ts';
import { after, season } from '../catch/season.testing.ts';
import { captureChance, findBiofix, firstCatch } from './biofix.ts';

type Visits = Parameters<typeof season>[0];
const trapOf = (trapId: string, visits: Visits) => season(visits, { trapId }).history;
const unfit = { condition: 'unfit' } as const;
const nightly = (counts: readonly number[]): Visits => counts.map((moths, i) => [i + 1, moths]);

const sustained: BiofixRule = { kind: 'sustained-catch', followedBy: 1 };
const intense: BiofixRule = { kind: 'intense-capture', moths: 9, nights: 2 };

describe('the first catch', () => {
  it('is the visit that found it, and may have been any night since the visit before', () => {
    const history = trapOf('T1', [
      [4, 0],
      [9, 2],
      [12, 5],
    ]);
    expect(firstCatch([history])).toEqual({
      on: after(9),
      rule: { kind: 'first-catch' },
      trapId: 'T1',
      earliest: after(4),
      running: false,
      probability: null,
    });
  });

  it('after nights without information may have been in those too', () => {
    const history = trapOf('T1', [
      [4, 0],
      [7, null, unfit],
      [9, 1],
    ]);
    expect(firstCatch([history])).toMatchObject({ on: after(9), earliest: after(4) });
  });

  it('is that of the trap that caught first', () => {
    const late = trapOf('A', [
      [9, 0],
      [12, 4],
    ]);
    const early = trapOf('B', [
      [5, 0],
      [9, 1],
    ]);
    expect(firstCatch([late, early])).toMatchObject({ trapId: 'B', on: after(9) });
  });

  it('is not known while every visit found nothing, or no visit told anything', () => {
    expect(firstCatch([trapOf('T1', nightly([0, 0]))])).toBeNull();
    expect(firstCatch([trapOf('T1', [[3, 7, unfit]])])).toBeNull();
    expect(firstCatch([])).toBeNull();
  });
});

describe('the first sustained catch', () => {
  it('of codling moth is the first catch followed by a catch on the next date too', () => {
    const history = trapOf('T1', [
      [3, 1],
      [6, 0],
      [9, 2],
      [12, 1],
    ]);
    expect(findBiofix(sustained, [history])).toMatchObject({ on: after(9), earliest: after(6) });
  });

  it('waits until the next date is known', () => {
    expect(
      findBiofix(sustained, [
        trapOf('T1', [
          [3, 0],
          [6, 4],
        ]),
      ]),
    ).toBeNull();
  });

  it('is not broken by a visit that found the trap down', () => {
    const history = trapOf('T1', [
      [3, 1],
      [6, null, unfit],
      [9, 2],
    ]);
    expect(findBiofix(sustained, [history])).toMatchObject({ on: after(3) });
  });

  it('is never put together from two traps', () => {
    const histories = [trapOf('A', nightly([1, 0, 0])), trapOf('B', nightly([0, 1, 0]))];
    expect(findBiofix(sustained, histories)).toBeNull();
  });
});

describe('an intense capture of black cutworm: 9 or more moths in 2 nights', () => {
  const found = (visits: Visits) => findBiofix(intense, [trapOf('T1', visits)]);

  it('is reached by 9 at one visit after two nights, not by 8', () => {
    const after9 = (moths: number) =>
      found([
        [3, 0],
        [5, moths],
      ]);
    expect(after9(9)).toMatchObject({ on: after(5), earliest: after(4), trapId: 'T1', running: false, probability: 1 });
    expect(after9(8)).toBeNull();
  });

  it('is reached by two nights running, in the second of them', () => {
    expect(found(nightly([4, 4, 5, 0]))).toMatchObject({ on: after(3), earliest: after(2) });
    expect(found(nightly([5, 3, 5, 3]))).toBeNull();
  });

  it('is reached in a single night', () => {
    expect(found(nightly([0, 9]))).toMatchObject({ on: after(2), earliest: after(1) });
  });

  it('may lie hidden in a longer interval: 26 moths in a week, not 9', () => {
    const week = (moths: number) =>
      found([
        [3, 0],
        [10, moths],
      ]);
    expect(week(9)).toBeNull();
    const biofix = week(26)!;
    expect(biofix.probability).toBeGreaterThan(0.9);
    expect(biofix.earliest).toBeGreaterThanOrEqual(after(3));
    expect(biofix.on).toBeLessThanOrEqual(after(10));
    expect(biofix.on - biofix.earliest!).toBeGreaterThan(1);
  });

  it('may lie across two visits, with what each leaves open', () => {
    const across = found([
      [3, 0],
      [4, 8],
      [5, 3],
    ]);
    expect(across).toMatchObject({ on: after(5), earliest: after(4), probability: 1 });
  });

  it('is not put together across nights when the trap was down, nor from two traps', () => {
    expect(
      found([
        [1, 5],
        [2, null, unfit],
        [3, 5],
      ]),
    ).toBeNull();
    expect(findBiofix(intense, [trapOf('A', nightly([5, 0])), trapOf('B', nightly([0, 5]))])).toBeNull();
  });
});

describe('an intense capture that is not likely enough', () => {
  const week = (moths: number, id = 'T1') =>
    trapOf(id, [
      [3, 0],
      [10, moths],
    ]);

  it('is told with its probability and its days, and dates nothing', () => {
    const histories = [week(9)];
    expect(findBiofix(intense, histories)).toBeNull();
    const chance = captureChance(intense, histories)!;
    expect(chance.trapId).toBe('T1');
    expect(chance.probability).toBeGreaterThan(0);
    expect(chance.probability).toBeLessThan(ASSUMPTIONS.captureLikely.value);
    expect([chance.from, chance.on].every((on) => on >= after(3) && on <= after(10))).toBe(true);
  });

  it('is that of the trap in which it is the most probable', () => {
    const [less, more] = [week(10, 'A'), week(13, 'B')];
    const chance = captureChance(intense, [less, more])!;
    expect(chance.trapId).toBe('B');
    expect(chance.probability).toBeGreaterThan(captureChance(intense, [less])!.probability);
  });

  it('is none where too few moths came for any nights to have reached it', () => {
    expect(captureChance(intense, [week(8)])).toBeNull();
    expect(captureChance(intense, [])).toBeNull();
  });
});

describe('a trap hung into a flight', () => {
  const late = trapOf('late', [
    [38, 11],
    [41, 5],
  ]);
  it('gives the latest day only: eleven moths at its first visit date nothing before it', () => {
    expect(findBiofix(sustained, [late])).toMatchObject({ on: after(38), running: true, earliest: null });
    expect(firstCatch([late])).toMatchObject({ running: true, earliest: null });
  });

  it('is not one that an unfit visit alone came before', () => {
    const unseen = trapOf('T1', [
      [3, null, unfit],
      [6, 4],
    ]);
    expect(firstCatch([unseen])).toMatchObject({ on: after(6), running: true, earliest: null });
  });

  it('is bounded by the last empty visit of another trap', () => {
    const other = trapOf('other', [
      [20, 0],
      [30, 0],
      [40, 3],
    ]);
    expect(firstCatch([late, other])).toMatchObject({ trapId: 'late', on: after(38), running: true, earliest: after(30) });
  });
});

describe('a biofix', () => {
  it('given by the user wins over every catch and is marked as theirs', () => {
    const given = day('2025-05-20');
    expect(findBiofix(intense, [trapOf('T1', nightly([30]))], given)).toEqual({
      on: given,
      rule: { kind: 'user' },
      trapId: null,
      earliest: given,
      running: false,
      probability: null,
    });
  });

  const rules = fc.constantFrom<BiofixRule>({ kind: 'first-catch' }, sustained, intense);
  const seasons = fc.array(fc.array(fc.integer({ min: 0, max: 12 }), { maxLength: 15 }), { maxLength: 4 });

  it('once found stays where it is as the season goes on', () => {
    fc.assert(
      fc.property(rules, fc.array(fc.integer({ min: 0, max: 12 }), { maxLength: 20 }), fc.nat(20), (rule, counts, known) => {
        const early = findBiofix(rule, [trapOf('T1', nightly(counts.slice(0, known)))]);
        if (early !== null) expect(findBiofix(rule, [trapOf('T1', nightly(counts))])).toEqual(early);
      }),
    );
  });

  it('does not depend on the order of the traps, and one more trap never puts it later', () => {
    fc.assert(
      fc.property(rules, seasons, (rule, counts) => {
        const histories = counts.map((trap, i) => trapOf(`T${i}`, nightly(trap)));
        const found = findBiofix(rule, histories);
        expect(findBiofix(rule, [...histories].reverse())).toEqual(found);
        const fewer = findBiofix(rule, histories.slice(1));
        if (fewer !== null) expect(found!.on).toBeLessThanOrEqual(fewer.on);
      }),
    );
  });
});
