import { describe, expect, it } from 'vitest';
import { randomFrom } from '../statistics/random.testing.ts';
import { decayCoverage } from './coverage.testing.ts';
import { inventedLures } from './invented.testing.ts';
import { lureDecay, shareLeft } from './lure-decay.ts';

const lures = { perDay: -0.04, k: 2, perNight: 4, traps: 6, checks: 14, change: 'staggered' } as const;

describe('lures of different ages in the same nights', () => {
  it('show the decay that they were simulated with about eight times in ten, without bias', () => {
    const { answered, held, bias } = decayCoverage(120, lures);
    expect(answered).toBe(120);
    expect(held).toBeGreaterThan(0.7);
    expect(held).toBeLessThan(0.9);
    expect(Math.abs(bias)).toBeLessThan(0.005); // per day
  });

  it('that do not weaken leave the half-life open', () => {
    const open = [1, 2, 3, 4, 5, 6].map((seed) => lureDecay(inventedLures(randomFrom(seed), { ...lures, perDay: 0 })));
    const held = open.filter((found) => found.known && found.halfLifeDays.high === Infinity && !found.weakens);
    expect(held.length).toBeGreaterThanOrEqual(4);
  });

  it('on farms that share neither traps nor nights are learned from together', () => {
    const one = inventedLures(randomFrom(3), lures);
    const other = inventedLures(randomFrom(4), lures).map((row) => ({
      ...row,
      trap: `far ${row.trap}`,
      block: `far ${row.block}`,
    }));
    const [alone, both] = [lureDecay(one), lureDecay([...one, ...other])];
    if (!alone.known || !both.known) throw new Error('not known');
    expect(both.observations).toBeGreaterThan(alone.observations);
    expect(both.perDay.high - both.perDay.low).toBeLessThan(alone.perDay.high - alone.perDay.low);
  });

  it('keep a share of their catch that halves with each half-life', () => {
    const found = lureDecay(inventedLures(randomFrom(9), { ...lures, traps: 12, checks: 30 }));
    if (!found.known) throw new Error(found.reason);
    expect(found.weakens).toBe(true);
    const { value, low, high } = shareLeft(found, found.halfLifeDays.value);
    expect(value).toBeCloseTo(0.5, 12);
    expect(low).toBeLessThan(0.5);
    expect(high).toBeGreaterThan(0.5);
    expect(shareLeft(found, 0)).toMatchObject({ value: 1, low: 1, high: 1 });
  });
});

describe('decay is not identifiable', () => {
  it('when all lures were changed on the same days: age and night are one', () => {
    const together = lureDecay(inventedLures(randomFrom(1), { ...lures, change: 'together' }));
    expect(together).toMatchObject({ known: false, reason: 'changed-together' });
  });

  it('when no trap had its lure changed: age is fixed by trap and night', () => {
    expect(lureDecay(inventedLures(randomFrom(1), { ...lures, change: 'never' }))).toMatchObject({
      known: false,
      reason: 'never-changed',
    });
  });

  it('from a handful of catches, or none', () => {
    const few = inventedLures(randomFrom(1), { ...lures, traps: 3, checks: 3 });
    expect(lureDecay(few)).toMatchObject({ known: false, reason: 'too-few-observations' });
    expect(lureDecay([])).toMatchObject({ known: false, reason: 'too-few-observations' });
  });
});
