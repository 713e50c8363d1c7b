import { describe, expect, it } from 'vitest';
import { addDays, day, formatDay } from '../base/day.ts';
import type { FieldRecord } from '../records/schema.ts';
import { carriedStage } from './stage-carried.ts';
import { adviceOn, checkOf, decisionOf, evidenceOf, fieldOf, lureAt, stageAt } from './test-program.ts';

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
