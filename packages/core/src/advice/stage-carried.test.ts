import { describe, expect, it } from 'vitest';
import { addDays, day, formatDay } from '../base/day.ts';
import { cropHeat } from '../catalogue/index.ts';
import { heatTrack } from '../heat/index.ts';
import type { FieldRecord, WeatherRecord } from '../records/schema.ts';
import { english, spanish } from '../text/index.ts';
import { seriesFromRecords } from '../weather/index.ts';
import { carriedStage } from './stage-carried.ts';
import { adviceOn, checkOf, decisionOf, evidenceOf, fieldOf, lureAt, stageAt, steadyWeather } from './test-program.ts';

const ORDER = ['emergence', 'whorl', 'tassel', 'silk', 'dry-silk', 'harvest'];
/** Corn planted on 10 May and picked on 8 August, after 90 days: silk begins about day 65, on 14 July. */
const planted = fieldOf({ plantedOn: '2025-05-10', harvestOn: '2025-08-08' });

describe('a stage seen some days ago', () => {
  const span = (over: Partial<FieldRecord>, stage: string, seenOn: string, on: string) => {
    const carried = carriedStage({ ...planted, ...over }, { stage, on: day(seenOn) }, day(on))!;
    return [ORDER[carried.from], ORDER[carried.to]];
  };

  it('is what it is on the day it was seen', () => {
    expect(span({}, 'whorl', '2025-07-01', '2025-07-01')).toEqual(['whorl', 'whorl']);
  });

  it('widens with the days, within what planting and harvest allow', () => {
    expect(span({}, 'whorl', '2025-06-15', '2025-06-25')).toEqual(['whorl', 'whorl']);
    expect(span({}, 'whorl', '2025-06-25', '2025-07-09')).toEqual(['whorl', 'silk']);
    expect(span({}, 'whorl', '2025-06-25', '2025-07-25')).toEqual(['silk', 'dry-silk']);
  });

  it('never goes back, and is wider where nobody typed the dates', () => {
    expect(span({ plantedOn: null, harvestOn: null }, 'whorl', '2025-07-01', '2025-07-11')).toEqual(['whorl', 'silk']);
    expect(span({}, 'silk', '2025-07-01', '2025-07-08')[0]).toBe('silk');
  });

  it('goes before a planting date that does not fit it', () => {
    expect(span({ plantedOn: '2025-07-01', harvestOn: null }, 'silk', '2025-07-05', '2025-07-06')).toEqual(['silk', 'dry-silk']);
  });

  it('is carried forward for no crop that grows for years', () => {
    expect(carriedStage(fieldOf({ crop: 'apple' }), { stage: 'flowering', on: day('2025-05-01') }, day('2025-05-20'))).toBeNull();
  });
});

describe('a stage carried forward by heat', () => {
  const corn = cropHeat('sweet-corn')!;
  /** Cold days bring 5 °F·d, warm ones 22.5 (modified average, 50/86 °F). */
  const cold = (from: string, to: string) => steadyWeather(from, to, 45, 60);
  const warm = (from: string, to: string) => steadyWeather(from, to, 60, 85);
  const carriedBy = (weather: readonly WeatherRecord[], over: Partial<FieldRecord>, seenOn: string, on: string) => {
    const track = heatTrack(corn.heat, seriesFromRecords(weather).get('station')!);
    return carriedStage({ ...planted, ...over }, { stage: 'whorl', on: day(seenOn) }, day(on), { crop: corn, track })!;
  };
  const span = (...args: Parameters<typeof carriedBy>) => {
    const { from, to } = carriedBy(...args);
    return [ORDER[from], ORDER[to]];
  };
  const undated = { harvestOn: null };

  it('is whorl still after a cold spring, and past it after a warm one, where the calendar knows neither', () => {
    expect(span(cold('2025-05-01', '2025-07-10'), undated, '2025-06-20', '2025-07-10')).toEqual(['whorl', 'whorl']);
    expect(span(warm('2025-05-01', '2025-07-10'), undated, '2025-06-20', '2025-07-10')).toEqual(['tassel', 'harvest']);
    const { from, to, heat } = carriedStage(
      { ...planted, ...undated },
      { stage: 'whorl', on: day('2025-06-20') },
      day('2025-07-10'),
    )!;
    expect([ORDER[from], ORDER[to], heat]).toEqual(['whorl', 'dry-silk', null]);
  });

  it('counts the heat from the day after the stage was seen, and dates silk by the fastest planting', () => {
    const { heat, mayHaveBegun } = carriedBy(warm('2025-05-01', '2025-06-30'), undated, '2025-06-20', '2025-06-30');
    expect(heat).toMatchObject({ degreeDays: 225, sums: [1200, 1900], ofField: false });
    // From planting 1400/1792.5 of 1200 °F·d, 42 warm days; since seen (1400 − 1135)/1792.5 of them, eight days.
    expect(formatDay(mayHaveBegun(3))).toBe('2025-06-28');
    expect(corn.begins[3]! * 1200).toBeCloseTo(41.65 * 22.5, 0);
  });

  it('knows the variety where past years had weather between the dates typed for the field', () => {
    const years = ['2023', '2024'].flatMap((year) => warm(`${year}-05-01`, `${year}-09-01`));
    const { heat } = carriedBy([...years, ...cold('2025-05-01', '2025-07-10')], {}, '2025-06-20', '2025-07-10');
    // 90 days of 22.5 °F·d, both dates off by a tenth at most.
    expect(heat!.ofField).toBe(true);
    expect(heat!.sums[0]).toBeCloseTo(0.9 * 90 * 22.5, 6);
    expect(heat!.sums[1]).toBeCloseTo(1.1 * 90 * 22.5, 6);
  });

  it('allows weather that is three days late any heat, and leaves the rest to the calendar', () => {
    const until = (end: string) => carriedBy(warm('2025-05-01', end), undated, '2025-06-20', '2025-06-30');
    expect(until('2025-06-27').heat).toMatchObject({ degreeDays: 7 * 22.5 });
    expect(until('2025-06-27').to).toBeGreaterThanOrEqual(until('2025-06-30').to);
    expect(until('2025-06-26').heat).toBeNull();
    const gap = [...warm('2025-05-01', '2025-06-22'), ...warm('2025-06-27', '2025-06-30')];
    expect(carriedBy(gap, undated, '2025-06-20', '2025-06-30').heat).toBeNull();
  });

  it('decides whether a catch sends people to look, and says by what the stage was carried', () => {
    const on = '2025-07-10';
    const advice = (weather: readonly WeatherRecord[], crop = 'sweet-corn') =>
      adviceOn(on, {
        fields: [fieldOf({ crop, plantedOn: '2025-05-10' })],
        lures: [lureAt('2025-07-01', 200)],
        stages: [stageAt('whorl', '2025-06-20')],
        checks: [checkOf('2025-07-03', 0), checkOf(on, 140)],
        weather: [...weather],
      });
    const inWarm = advice(warm('2025-05-01', on));
    expect(inWarm).toMatchObject({ verb: 'scout' });
    expect(inWarm.because[0]).toMatchObject({ kind: 'scouting-asked', why: 'stage-unseen' });
    const inCold = advice(cold('2025-05-01', on));
    expect(inCold.because[0]).toMatchObject({ kind: 'out-of-season', why: 'stage' });
    const [said] = evidenceOf(inWarm, 'stage');
    expect(english({ temperature: 'F' }).evidence(said!)).toContain('By heat (450 °F·d since then; 1200–1900 from planting');
    expect(english({ temperature: 'F' }).evidence(said!)).toContain('NCH-40; recalled, source not at hand');
    expect(spanish({ temperature: 'C' }).evidence(said!)).toContain('Por el calor (250 °C·d desde entonces; 667–1056 de la');
    const [byCalendar] = evidenceOf(advice([]), 'stage');
    expect(english({ temperature: 'F' }).evidence(byCalendar!)).toContain('By the calendar it may now be');
  });
});

describe('a catch above the rule of a stage that may be present', () => {
  const lures = [lureAt('2025-07-01', 200)];
  /** 20 moths a night, and whorl as seen so many days before. */
  const whorlSeen = (daysAgo: number, over: Partial<FieldRecord> = {}) => {
    const on = '2025-07-20';
    const seenOn = formatDay(addDays(day(on), -daysAgo));
    return adviceOn(on, {
      fields: [fieldOf(over)],
      lures,
      stages: [stageAt('whorl', seenOn)],
      checks: [checkOf('2025-07-13', 0), checkOf('2025-07-20', 140)],
    });
  };

  it.each([10, 14, 20, 27, 29])('whorl seen %i days ago: go and look at the stage, it may be silking', (daysAgo) => {
    const advice = whorlSeen(daysAgo);
    expect(advice).toMatchObject({ verb: 'scout', by: '2025-07-22', rate: 20 });
    expect(advice.because[0]).toMatchObject({ kind: 'scouting-asked', why: 'stage-unseen', madeFor: ['silk'] });
    expect(evidenceOf(advice, 'stage')[0]).toMatchObject({ stage: 'whorl', ageDays: daysAgo, susceptible: false });
    expect(evidenceOf(advice, 'stage')[0]!.now!.mayBeSince! <= '2025-07-20').toBe(true);
  });

  it('long after any silk the dash says so, and shows where the calendar puts the crop', () => {
    const advice = whorlSeen(50, { plantedOn: '2025-04-20', harvestOn: null });
    expect(advice.verb === 'scout' || evidenceOf(advice, 'stage')[0]!.now!.from === 'dry-silk').toBe(true);
  });

  it('whorl seen yesterday is not silk', () => {
    expect(whorlSeen(1).because[0]).toMatchObject({ kind: 'out-of-season', why: 'stage' });
  });

  it('silk seen more than two weeks ago is looked at anew before anybody decides', () => {
    const silkSeen = (observedOn: string) =>
      adviceOn('2025-07-20', { lures, stages: [stageAt('silk', observedOn)], checks: [checkOf('2025-07-20', 380)] }).verb;
    expect(silkSeen('2025-07-10')).toBe('decide');
    expect(silkSeen('2025-07-05')).toBe('scout');
  });

  it('who decides not to look is not asked again for a week', () => {
    const parts = {
      lures,
      stages: [stageAt('whorl', '2025-07-05')],
      checks: [checkOf('2025-07-13', 0), checkOf('2025-07-20', 140)],
    };
    const decisions = [decisionOf('2025-07-20', { decision: 'not-scouted', reason: 'stage-not-at-risk' })];
    expect(adviceOn('2025-07-20', { ...parts, decisions }).verb).not.toBe('scout');
  });
});
