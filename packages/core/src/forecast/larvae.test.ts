import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, dayOf } from '../base/day.ts';
import { catalogue } from '../catalogue/catalogue.ts';
import { after, season } from '../catch/season.testing.ts';
import { heatTrack } from '../heat/track.ts';
import type { HeatTrack } from '../heat/types.ts';
import { lifeLine, nightsOf, stageAmounts } from './larvae.ts';
import { larvaeFromMoths } from './larvae-outlook.ts';

const modelOf = (id: string) => catalogue.models.find((model) => model.id === id)!;
const earworm = modelOf('helicoverpa-zea-life-stages');
const line = lifeLine(earworm)!;

/** Three years and the season so far, every day with the same heat for this model. */
function steady(perDay: number, through: Day): HeatTrack {
  const start = dayOf(2022, 1, 1);
  const days = through - start + 1;
  const mean = (earworm.heat.lower + perDay - 32) / 1.8;
  const flat = () => new Float64Array(days).fill(mean);
  return heatTrack(earworm.heat, { sourceId: 'gauge', start, tminC: flat(), tmaxC: flat() });
}
const nightOf = (moths: number, nights: number) =>
  season([
    [nights, 0],
    [nights + 1, moths],
  ]).history.intervals;

describe('the stages of corn earworm', () => {
  it('add up to the published generation: egg to adult 760.1, adult to adult 872.8 °F·d (USDA ARS-S-127 1976)', () => {
    expect(line.stages.map(({ stage }) => stage)).toEqual(['egg', 'small-larva', 'large-larva', 'pupa']);
    // The table's own stages add up to 760.2.
    expect(Math.abs(line.eggToAdult - 760.1)).toBeLessThan(0.11);
    expect(Math.abs(line.beforeLaying + line.eggToAdult - 872.8)).toBeLessThan(0.11);
  });

  it('hold every moth caught exactly once, at any heat', () => {
    const night = fc.record({ on: fc.integer({ min: 0, max: 200 }), moths: fc.double({ min: 0, max: 500, noNaN: true }) });
    const models = catalogue.models.flatMap((model) => lifeLine(model) ?? []);
    expect(models.length).toBeGreaterThanOrEqual(2);
    fc.assert(
      fc.property(fc.array(night), fc.constantFrom(...models), fc.integer({ min: 0, max: 400 }), (written, life, now) => {
        const nights = written.map(({ on, moths }) => ({ on: on as Day, moths }));
        const past = nights.filter(({ on }) => on <= now);
        const amounts = Object.values(stageAmounts(life, nights, (on) => (now - on) * 7.3));
        expect(amounts.every((amount) => amount >= -1e-9)).toBe(true);
        const moths = past.reduce((sum, one) => sum + one.moths, 0);
        expect(amounts.reduce((a, b) => a + b, 0)).toBeCloseTo(moths, 6);
      }),
    );
  });

  it('are passed through in order: no egg hatches before it is laid and no moth emerges before its larva', () => {
    for (let heat = 0; heat <= 1000; heat += 10) {
      const at = stageAmounts(line, [{ on: 0 as Day, moths: 1 }], () => heat);
      if (heat < 72.9) expect(at['small-larva']).toBe(0);
      if (heat > 112.7 + 72.9) expect(at.egg).toBeCloseTo(0, 12);
      if (heat < 760.2) expect(at['next-adults']).toBeCloseTo(0, 12);
      if (heat > 873) expect(at['next-adults']).toBeCloseTo(1, 12);
    }
  });
});

describe('the nights of a trap', () => {
  it('share the moths of an interval evenly, and lose none', () => {
    const { intervals } = season([
      [4, 8],
      [7, 3],
    ]).history;
    const { nights } = nightsOf(intervals, after(7));
    expect(nights.map(({ moths }) => moths)).toEqual([2, 2, 2, 2, 1, 1, 1]);
    expect(nights[0]!.on).toBe(after(0));
  });

  it('without information are counted apart and are no zeros', () => {
    const { intervals } = season([
      [4, 8],
      [9, null, { condition: 'unfit' }],
    ]).history;
    const { nights, unknownNights } = nightsOf(intervals, after(9));
    expect(unknownNights).toBe(5);
    expect(nights).toHaveLength(4);
  });
});

describe('the offspring of one night of moths, at 20 °F·d a day', () => {
  // Moths of the night of day 10; day 10 + d brings 20·d °F·d. Laying 0–112.7, hatch 72.9–185.6.
  const on = after(12);
  const outlook = larvaeFromMoths(nightOf(40, 10), earworm, steady(20, on), on)!;

  it('hatch from the day 72.9 °F·d are reached until all are laid and hatched', () => {
    expect(outlook.hatch.first).toBe(after(14)); // 80 on day 14
    expect(outlook.hatch.ten).toBe(after(15)); // 72.9 + 11.3 = 84.2, 100 on day 15
    expect(outlook.hatch.half).toBe(after(17)); // 72.9 + 56.4 = 129.3, 140 on day 17
    expect(outlook.hatch.ninety).toBe(after(19)); // 72.9 + 101.4 = 174.3, 180 on day 19
    expect(outlook.peakNight).toMatchObject({ on: after(10), moths: 40, hatch: { status: 'ahead' } });
    expect(outlook.peakNight.hatch).toMatchObject({ window: { middle: after(17) } });
  });

  it('are eggs or still to be laid two days on: 40 degree-days of 112.7', () => {
    expect(outlook.now.amounts.egg).toBeCloseTo((40 * 40) / 112.7, 9);
    expect(outlook.now.amounts['pre-egg-laying-adult']).toBeCloseTo(40 * (1 - 40 / 112.7), 9);
    expect(outlook.lookFor).toBe('egg');
  });

  it('are worth a walk once a tenth are small larvae, and not before', () => {
    expect(outlook.worthGoing).toBe(after(15));
    const patient = larvaeFromMoths(nightOf(40, 10), earworm, steady(20, on), on, { worthGoingShare: 0.5 })!;
    expect(patient.worthGoing).toBe(after(17));
  });

  it('are large larvae a while after they were small ones', () => {
    expect(outlook.smallLarvaePeak!).toBeLessThan(outlook.largeLarvaePeak!);
    // Large from 72.9 + 147.1 = 220 after laying; all of them large once 220 + 112.7 = 332.7 has come: 340 on day 27.
    expect(outlook.largeLarvaePeak).toBe(after(27));
  });

  it('are known as far as the weather is, and expected beyond', () => {
    expect(outlook.method).toBe('past-years');
    expect(outlook.days.filter(({ known }) => known).at(-1)!.on).toBe(on);
    expect(outlook.days.at(-1)!.on).toBe(addDays(on, 60));
  });

  it("are expected, not known, on the days of somebody's own forecast", () => {
    const withAhead = larvaeFromMoths(nightOf(40, 10), earworm, steady(20, after(20)), on, { measuredThrough: on })!;
    expect(withAhead.days.filter(({ known }) => known).at(-1)!.on).toBe(on);
    expect(withAhead.peakNight.hatch).toEqual({ status: 'in-own-forecast', on: after(17) });
  });

  it('are the same whatever is caught later', () => {
    const more = season([
      [10, 0],
      [11, 40],
      [20, 900],
    ]).history.intervals;
    expect(larvaeFromMoths(more, earworm, steady(20, on), on)).toEqual(outlook);
  });
});

describe('what cannot be known', () => {
  it('is left unsaid: no moths, no egg stage in the model, or no heat', () => {
    const track = steady(20, after(12));
    expect(larvaeFromMoths(nightOf(0, 10), earworm, track, after(12))).toBeNull();
    expect(lifeLine(modelOf('melittia-cucurbitae-life-stages'))).toBeNull();
    expect(larvaeFromMoths(nightOf(40, 10), earworm, steady(20, after(5)), after(12))).toBeNull();
  });

  it('about the size of larvae stays open where the model has one size (black cutworm, Luckmann 1976)', () => {
    const cutworm = lifeLine(modelOf('agrotis-ipsilon-life-stages'))!;
    const at = stageAmounts(cutworm, [{ on: 0 as Day, moths: 5 }], () => 300);
    expect(at).toMatchObject({ larva: 5, 'small-larva': 0, 'large-larva': 0 });
  });
});
