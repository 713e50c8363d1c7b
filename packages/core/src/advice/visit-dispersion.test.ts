import { describe, expect, it } from 'vitest';
import { day } from '../base/day.ts';
import { english, spanish } from '../text/index.ts';
import { adviseCell } from './decide.ts';
import { prepare, withChecks } from './prepare.ts';
import { adviceOn, checkOf, evidenceOf, fieldOf, lureAt, nightly, programOf, stageAt, trapOf } from './test-program.ts';

const counts = [3, 14, 0, 22, 9, 1, 5, 30, 2, 7, 12, 0, 18, 4, 6, 25, 1, 10, 8, 3];
const wild = (from: string, trapId: string, t: number) =>
  nightly(
    from,
    Array.from({ length: 30 }, (_, i) => counts[(i * (2 * t + 3) + 5 * t) % counts.length]!),
    trapId,
  );
const few = { checks: nightly('2025-07-26', [3, 4, 2, 5]), traps: [trapOf({ hungOn: '2025-07-26' })] };
const stages = [stageAt('silk', '2025-07-20')];
const rateOn = (parts: Parameters<typeof programOf>[0]) => evidenceOf(adviceOn('2025-07-30', { stages, ...parts }), 'rate')[0]!;

describe('the dispersion behind a rate', () => {
  const four = ['T1', 'T2', 'T3', 'T4'];
  const program = programOf({
    traps: four.map((trapId) => trapOf({ trapId, station: trapId })),
    lures: four.map((trapId) => lureAt('2025-07-01', 200, trapId)),
    checks: four.flatMap((trapId, t) => wild('2025-07-01', trapId, t)),
    stages,
  });
  const prepared = prepare(program, { on: day('2025-07-31') });
  const rate = (from = prepared) => evidenceOf(adviseCell(from, 'F1', 'helicoverpa-zea'), 'rate')[0]!;

  it('is the program’s own, and says on how many checks of how many traps it rests and which scatter it means', () => {
    const { k, scatter } = rate();
    expect(scatter).toMatchObject({ between: 'visits-of-one-trap', from: 'own-checks', visits: 108, traps: 4 });
    expect(scatter.low < k! && k! < scatter.high).toBe(true);
    expect(k).toBeLessThan(2);
  });

  it('is what is assumed, and says so, where no stretch of visits shows any', () => {
    const { k, scatter } = rateOn({ checks: nightly('2025-07-27', [3, 4, 2]), traps: [trapOf({ hungOn: '2025-07-27' })] });
    expect(k).toBeCloseTo(3, 9);
    expect(scatter).toMatchObject({ from: 'prior', visits: 0, traps: 0 });
    expect(scatter.low).toBeCloseTo(1.07, 1);
    expect(scatter.high).toBeCloseTo(8.4, 0);
  });

  it('learns from a trap of another field and from one that stood there last year, not from another design', () => {
    const elsewhere = { fields: [fieldOf(), fieldOf({ fieldId: 'F2' })] };
    const other = (over: Parameters<typeof trapOf>[0], from: string) => ({
      ...elsewhere,
      traps: [...few.traps, trapOf({ trapId: 'T9', informs: ['F2'], hungOn: from, ...over })],
      checks: [...few.checks, ...wild(from, 'T9', 1)],
    });
    const alone = rateOn(few).k!;
    const now = rateOn(other({}, '2025-06-20'));
    const lastYear = rateOn(other({ informs: ['F1'], takenDownOn: '2024-08-01' }, '2024-06-20'));
    for (const { k, scatter } of [now, lastYear]) {
      expect(k).toBeLessThan(alone / 1.5);
      expect(scatter).toMatchObject({ from: 'own-checks', traps: 2 });
    }
    expect(rateOn(other({ design: 'bucket' }, '2025-06-20')).k).toBe(alone);
  });

  it('widens the interval and the chance of being above the rule together', () => {
    const far = rateOn(few);
    const elsewhere = {
      fields: [fieldOf(), fieldOf({ fieldId: 'F2' })],
      traps: [...few.traps, trapOf({ trapId: 'T9', informs: ['F2'], hungOn: '2025-06-20' })],
      checks: [...few.checks, ...wild('2025-06-20', 'T9', 1)],
    };
    const near = rateOn(elsewhere);
    expect(near.perNight).toBe(far.perNight);
    expect(near.high - near.low).toBeGreaterThan(far.high - far.low);
    const above = (parts: Parameters<typeof programOf>[0]) => adviceOn('2025-07-30', { stages, ...parts }).probabilityAbove!;
    expect(above(elsewhere)).not.toBe(above(few));
  });

  it('is said in plain words in both languages', () => {
    const own = rate();
    const prior = rateOn({ checks: nightly('2025-07-27', [3, 4, 2]), traps: [trapOf({ hungOn: '2025-07-27' })] });
    const options = { temperature: 'F', dayOrder: 'month-day' } as const;
    expect(english(options).evidence(own)).toMatch(
      /by 108 checks of 4 traps of this program: how much the visits of one trap scatter/,
    );
    expect(spanish(options).evidence(own)).toMatch(
      /según 108 revisiones de 4 trampas de este programa: cuánto varían las visitas/,
    );
    expect(english(options).evidence(prior)).toMatch(/as assumed while the program has too few checks of its own/);
    expect(spanish(options).evidence(prior)).toMatch(/como se supone mientras el programa tiene pocas revisiones propias/);
  });

  it('is learned anew with one more check, as if that check had been there from the start', () => {
    const check = checkOf('2025-07-31', 400, { trapId: 'T1' });
    const written = { ...prepared.program, checks: [...prepared.program.checks, check] };
    const next = withChecks(prepared, written, new Set(['T1']));
    expect(rate(next)).toEqual(rate(prepare(written, { on: prepared.on })));
    expect(rate(next).count).not.toBe(rate().count);
  });
});
