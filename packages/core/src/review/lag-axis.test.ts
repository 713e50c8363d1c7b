import { describe, expect, it } from 'vitest';
import { fieldOf } from '../advice/test-program.ts';
import { addDays, type Day, day, formatDay } from '../base/day.ts';
import type { HeatRule } from '../heat/index.ts';
import { heatTrack } from '../heat/index.ts';
import { emptyProgram } from '../records/program.ts';
import { randomFrom } from '../statistics/random.testing.ts';
import { catchToInfestation } from './catch-to-infestation.ts';
import { catchAtLag, fitsByLag, likeliest } from './infestation-fit.ts';
import type { SampledPair } from './infestation-pairs-of.ts';
import { daysAtLag, inHeat, lagAxis } from './lag-axis.ts';

const ABOVE_10: HeatRule = { method: 'simple-average', cutoff: 'none', lower: 10, upper: null, unit: 'C' };
const model = { id: 'invented', heat: ABOVE_10 };
const sampled = day('2025-07-31');
const NIGHTS = 40;
/** °C·d from catch to what is found. */
const TRUE_LAG = 150;
const RULE = 0.15;

/** Fields of seasons of different warmth, sampled once each: the share infested follows the catch of so much heat before. */
function seasons(seed: number) {
  const random = randomFrom(seed);
  const fields = Array.from({ length: 40 }, (_, f) => {
    const warmth = 6 + 10 * random.uniform();
    const meanC = Array.from({ length: NIGHTS }, () => 10 + Math.max(0, warmth + 2 * random.normal()));
    const series = {
      sourceId: `source ${f}`,
      start: addDays(sampled, -NIGHTS),
      tminC: Float64Array.from(meanC, (mean) => mean - 4),
      tmaxC: Float64Array.from(meanC, (mean) => mean + 4),
    };
    const track = heatTrack(ABOVE_10, series);
    const [peak, spread, height] = [3 + 24 * random.uniform(), 4 + 3 * random.uniform(), 30 * random.uniform()];
    const rateBefore = (days: number) => height * Math.exp(-(((days - peak) / spread) ** 2) / 2);
    const lagDays = Array.from({ length: NIGHTS }, (_, i) => i + 1).find((days) => heatOf(track, days) >= TRUE_LAG)!;
    const share = 1 / (1 + Math.exp(3.5 - 0.9 * Math.log1p(rateBefore(lagDays)) - 0.2 * random.normal()));
    const pair: SampledPair = {
      field: `field ${f}`,
      sampledOn: formatDay(sampled),
      examined: 100,
      found: Array.from({ length: 100 }, () => random.uniform() < share).filter(Boolean).length,
      catches: Array.from({ length: NIGHTS }, (_, i) => ({
        before: i + 1,
        perNight: random.negativeBinomial(rateBefore(i + 1), 3),
      })),
    };
    return { pair, track, lagDays };
  });
  return {
    pairs: fields.map(({ pair }) => pair),
    meanLagDays: fields.reduce((sum, { lagDays }) => sum + lagDays, 0) / fields.length,
    heatAt: (field: string) => fields.find(({ pair }) => pair.field === field)?.track ?? null,
  };
}

function heatOf(track: ReturnType<typeof heatTrack>, days: number): number {
  const total = track.total(addDays(sampled, -days), addDays(sampled, -1) as Day);
  return total.ok ? total.degreeDays : Number.NaN;
}

const SEEDS = Array.from({ length: 20 }, (_, i) => i + 1);
const inDays = (pairs: readonly SampledPair[]) => lagAxis(emptyProgram(), 'unknown-insect', pairs, { on: sampled });

describe('a lag that is a sum of heat, over seasons of different warmth', () => {
  const found = SEEDS.map((seed) => {
    const { pairs, heatAt, meanLagDays } = seasons(seed);
    const heat = inHeat(model, pairs, heatAt)!;
    const days = inDays(pairs);
    return { meanLagDays, heat, days };
  });

  it('is held by its interval in about eight of ten, without bias', () => {
    const lags = found.flatMap(({ heat }) => {
      const learned = catchToInfestation(heat.pairs, { ruleLevel: RULE, ...heat });
      return learned.known ? [learned.lag] : [];
    });
    expect(lags.length).toBeGreaterThanOrEqual(18);
    const held = lags.filter(({ low, high }) => low <= TRUE_LAG && TRUE_LAG <= high).length / lags.length;
    expect(held).toBeGreaterThan(0.6);
    const bias = lags.reduce((sum, { value }) => sum + value - TRUE_LAG, 0) / lags.length;
    expect(Math.abs(bias)).toBeLessThan(15);
  });

  it('makes the samples likelier than any lag in days', () => {
    const better = found.filter(({ heat, days }) => {
      const both = heat.pairs
        .map((pair, i) => ({ heat: pair, days: days.pairs[i]! }))
        .filter((each) => heat.lags.every((lag) => catchAtLag(each.heat, lag, heat.window) !== null));
      const fitOf = (axis: 'heat' | 'days', { lags, window }: { lags: readonly number[]; window: number }) =>
        likeliest(
          fitsByLag(
            both.map((each) => each[axis]),
            { ruleLevel: RULE, lags, window },
          ),
        )!.logLikelihood;
      return fitOf('heat', heat) > fitOf('days', days);
    });
    expect(better.length).toBeGreaterThanOrEqual(18);
  });

  it('is also told as the days it took in these samples', () => {
    for (const { heat, meanLagDays } of found.slice(0, 5))
      expect(Math.abs(daysAtLag(heat, TRUE_LAG)! - meanLagDays)).toBeLessThan(1.5);
  });
});

describe('from a program’s records', () => {
  it('the lag is in the degree-days of the insect’s own model where its fields have weather, known by the day', () => {
    const { pairs } = seasons(3);
    const weather = Array.from({ length: NIGHTS }, (_, i) => ({
      sourceId: 'vale',
      date: formatDay(addDays(sampled, i - NIGHTS)),
      tminC: 15,
      tmaxC: 25,
      precipitationMm: null,
    }));
    const field = { crop: 'sweet-corn', growthHabit: null, farm: 'Invented', latitude: null, longitude: null };
    const fields = pairs.map(({ field: fieldId }) => fieldOf({ ...field, fieldId }));
    const program = { ...emptyProgram(), fields, weather };
    const axis = lagAxis(program, 'ostrinia-nubilalis', pairs, { on: sampled });
    expect(axis.model?.heat.unit).toBe('F');
    // From 59 to 77 °F above 50 °F: 18 °F·d a day, by any method.
    expect(axis.pairs[0]!.catches[9]).toMatchObject({ before: expect.closeTo(180, 6), daysBefore: 10 });
    expect(daysAtLag(axis, 216)).toBeCloseTo(12, 6);
    expect(lagAxis(program, 'ostrinia-nubilalis', pairs, { on: addDays(sampled, -20) }).model).toBeNull();
  });
});

describe('days are kept', () => {
  it('where the catalogue has no model of the insect', () => {
    const axis = inDays(seasons(1).pairs);
    expect(axis).toMatchObject({ model: null, window: 6 });
    expect(daysAtLag(axis, 12)).toBeCloseTo(12, 9);
  });

  it('where more than one in ten of the samples lie in fields whose weather nobody knows', () => {
    const { pairs, heatAt } = seasons(2);
    const unknown = new Set(pairs.slice(0, 5).map(({ field }) => field));
    expect(inHeat(model, pairs, (field) => (unknown.has(field) ? null : heatAt(field)))).toBeNull();
    expect(lagAxis(emptyProgram(), 'ostrinia-nubilalis', pairs, { on: sampled }).model).toBeNull();
  });
});
