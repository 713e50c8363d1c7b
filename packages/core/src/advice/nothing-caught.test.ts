import { describe, expect, it } from 'vitest';
import { english, spanish } from '../text/index.ts';
import { adviceOn, checkOf, evidenceOf, stageAt, trapOf } from './test-program.ts';

const silk = { stages: [stageAt('silk')], traps: [trapOf({ hungOn: '2025-07-01' })] };
const options = { temperature: 'F', dayOrder: 'month-day' } as const;

describe('nothing caught is not nothing there', () => {
  /** One trap, seven nights, nothing; the rule for this design begins at 0.2 a night. */
  const week = adviceOn('2025-07-08', { ...silk, checks: [checkOf('2025-07-08', 0)] });

  it('one trap in seven nights does not clear a rule of 0.2 a night: its limit lies above, and confidence is low', () => {
    const [rate] = evidenceOf(week, 'rate');
    expect(rate).toMatchObject({ count: 0, trapNights: 7, low: 0, level: 0.8 });
    // 0.353 at k = 2; k is not known here, and is believed to be 3 with wide limits.
    expect(rate!.high).toBeGreaterThan(0.3);
    expect(rate!.high).toBeLessThan(0.36);
    expect(week).toMatchObject({ verb: 'watch', rate: 0, confidence: 'low' });
    expect(week.interval![1]).toBe(rate!.high);
    expect(week.probabilityAbove!).toBeGreaterThan(0.3);
    expect(week.cautions).toContainEqual({ kind: 'nothing-caught', upTo: rate!.high, level: 0.8, thresholdPerNight: 0.2 });
  });

  it('is said with the limit and the rule’s figure, in both languages', () => {
    const [rate] = evidenceOf(week, 'rate');
    const caution = week.cautions.find(({ kind }) => kind === 'nothing-caught')!;
    expect(english(options).evidence(rate!)).toMatch(/^Nothing in 7 trap-nights .*: up to 0\.3\d* per trap per night/);
    expect(spanish(options).evidence(rate!)).toMatch(/^Nada en 7 noches-trampa .*: hasta 0\.3\d* por trampa y noche/);
    expect(english(options).caution(caution)).toMatch(/not nothing there: up to 0\.3\d* a night .* the rule begins at 0\.2/);
    expect(spanish(options).caution(caution)).toMatch(/hasta 0\.3\d* por noche .* la regla empieza en 0\.2/);
  });

  it('four traps in seven nights do clear it, and need no caution', () => {
    const ids = ['T1', 'T2', 'T3', 'T4'];
    const four = adviceOn('2025-07-08', {
      ...silk,
      traps: ids.map((trapId) => trapOf({ trapId, station: trapId })),
      checks: ids.map((trapId) => checkOf('2025-07-08', 0, { trapId })),
    });
    expect(four.interval![1]).toBeLessThan(0.2);
    expect(four.confidence).not.toBe('low');
    expect(four.cautions.map(({ kind }) => kind)).not.toContain('nothing-caught');
  });
});
