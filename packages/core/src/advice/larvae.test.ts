import { describe, expect, it } from 'vitest';
import type { WeatherRecord } from '../records/schema.ts';
import {
  adviceOn,
  checkOf,
  evidenceOf,
  fieldOf,
  lureAt,
  nightly,
  stageAt,
  steadyWeather,
  trapOf,
  treatmentOf,
} from './test-program.ts';

/** Days of 74.7 °F on average bring 20 °F·d each above 54.7 °F: corn earworm hatches 3.6 days after an egg is laid. */
const warm = (through: string): WeatherRecord[] =>
  ['2023', '2024']
    .flatMap((year) => steadyWeather(`${year}-05-01`, `${year}-10-30`, 67.7, 81.7))
    .concat(steadyWeather('2025-05-01', through, 67.7, 81.7));
const tomato = {
  fields: [fieldOf({ crop: 'tomato' })],
  stages: [stageAt('fruiting', '2025-07-10')],
  lures: [lureAt('2025-07-01', 60)],
  traps: [trapOf({ informs: ['F1'] })],
};
/** Moths on six nights in early July, then none. */
const burst = nightly('2025-07-01', [4, 4, 4, 4, 4, 4, 0, 0, 0, 0]);
const larvaeOf = (on: string, parts = {}) => {
  const through = `2025-07-${String(Number(on.slice(8)) - 1).padStart(2, '0')}`;
  const advice = adviceOn(on, { ...tomato, checks: burst, weather: warm(through), ...parts });
  return { advice, larvae: evidenceOf(advice, 'larvae')[0] };
};

describe('moths caught earlier send somebody to look for their larvae', () => {
  it('although nothing is caught any more, and say how many moths, of which nights, by which figures', () => {
    const { advice, larvae } = larvaeOf('2025-07-11');
    expect(advice.verb).toBe('scout');
    expect(larvae).toMatchObject({
      modelId: 'helicoverpa-zea-life-stages',
      heat: { beforeLaying: 112.7, egg: 72.9, unit: 'F' },
      moths: 24,
      traps: 1,
      from: '2025-07-01',
      to: '2025-07-11',
    });
    expect(larvae!.source).toContain('ARS-S-127');
    expect(larvae!.checks.map(({ count }) => count)).toEqual([4, 4, 4, 4, 4, 4]);
    expect(evidenceOf(advice, 'sampling')).toHaveLength(1);
  });

  it('say what to look for and where: eggs first, then small larvae', () => {
    const early = larvaeOf('2025-07-05', { checks: burst.slice(0, 4) }).larvae!;
    expect(early.shares!.egg).toBeGreaterThan(0.5);
    expect(early.worthGoing!.method).toBe('past-years');
    expect(early.worthGoing!.early <= early.worthGoing!.middle && early.worthGoing!.middle <= early.worthGoing!.late).toBe(true);
    const late = larvaeOf('2025-07-11').larvae!;
    expect(late.lookFor).toBe('small-larva');
    expect(late.places.map(({ stage }) => stage)).toContain('small-larva');
    expect(late.worthGoing!.method).toBe('reached');
    expect(Object.values(late.shares!).reduce((a, b) => a + b)).toBeCloseTo(1, 9);
  });

  it('but not for a lone moth or two', () => {
    const { advice } = larvaeOf('2025-07-11', { checks: nightly('2025-07-01', [0, 1, 0, 0, 1, 0, 0, 0, 0, 0]) });
    expect(advice.because[0]!.kind).not.toBe('larvae');
  });

  it('nor for eggs laid before a treatment or under its protection', () => {
    const treated = larvaeOf('2025-07-13', {
      checks: [...burst, checkOf('2025-07-13', 0)],
      treatments: [treatmentOf('2025-07-08')],
    });
    expect(treated.larvae).toBeUndefined();
  });

  it('nor once a fresh sample found less than its figure', () => {
    const sample = {
      fieldId: 'F1',
      insect: 'helicoverpa-zea',
      sampledOn: '2025-07-10',
      kind: 'plants',
      unitsExamined: 30,
      unitsInfested: 0,
      totalCount: null,
    };
    expect(larvaeOf('2025-07-11', { samples: [sample] }).advice.verb).not.toBe('scout');
  });

  it('and are followed no further than the weather', () => {
    expect(larvaeOf('2025-07-11', { weather: warm('2025-07-03') }).larvae).toBeUndefined();
  });
});

describe('somebody’s own weather forecast', () => {
  const sum = (on: string, weather: WeatherRecord[]) => {
    const advice = adviceOn(
      on,
      {
        traps: [trapOf({ insect: 'ostrinia-nubilalis', hungOn: '2025-05-01' })],
        stages: [stageAt('whorl', '2025-05-20')],
        weather,
      },
      'ostrinia-nubilalis',
    );
    return evidenceOf(advice, 'event');
  };
  const years = ['2023', '2024'].flatMap((year) => steadyWeather(`${year}-01-01`, `${year}-12-31`, 45, 75));
  const measured = [...years, ...steadyWeather('2025-01-01', '2025-02-20', 45, 75)];
  const ahead = (madeOn: string, tmaxF: number) =>
    steadyWeather('2025-02-21', '2025-03-02', 45, tmaxF).map((record) => ({ ...record, forecastMadeOn: madeOn }));
  const middle = (weather: WeatherRecord[]) => sum('2025-02-21', weather)[0]!.expected!;

  it('comes before the past years, and a warm one brings the date forward', () => {
    const without = middle(measured);
    expect(without.forecastThrough).toBeNull();
    const hot = middle([...measured, ...ahead('2025-02-21', 95)]);
    expect(hot.middle < without.middle).toBe(true);
    expect(['own-forecast', 'past-years']).toContain(hot.method);
    expect(hot.forecastThrough).toBe('2025-03-02');
  });

  it('made later than the day read was not known then', () => {
    expect(middle([...measured, ...ahead('2025-02-22', 95)])).toEqual(middle(measured));
  });

  it('never counts as measured: heat so far stays as it was', () => {
    const [event] = sum('2025-02-23', [...measured, ...ahead('2025-02-21', 95)]);
    expect(event).toMatchObject({ heatThrough: '2025-02-20' });
  });

  it('that leaves out a week after the last measured day cannot be summed, and is not used', () => {
    const late = ahead('2025-02-21', 95).filter(({ date }) => date > '2025-02-27');
    expect(middle([...measured, ...late])).toEqual(middle(measured));
  });
});
