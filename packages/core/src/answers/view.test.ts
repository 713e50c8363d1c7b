import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { ratePoints } from '../advice/rate-points.ts';
import { checkOf, fieldOf, lureAt, programOf, stageAt, steadyWeather, trapOf, treatmentOf } from '../advice/test-program.ts';
import { addDays, day, formatDay } from '../base/day.ts';
import { catchIntervals } from '../catch/index.ts';
import { fieldView, weekView } from './index.ts';

const program = programOf({
  fields: [
    fieldOf(),
    fieldOf({ fieldId: 'F2', name: 'Field two', harvestOn: '2025-03-01' }),
    fieldOf({ fieldId: 'F3', plantedOn: '2025-12-01' }),
  ],
  traps: [trapOf({ informs: ['F1', 'F2', 'F3'] }), trapOf({ trapId: 'T2' })],
  stages: [stageAt('silk')],
  lures: [lureAt('2025-07-01', 14), lureAt('2025-07-01', 40, 'T2')],
  checks: [
    checkOf('2025-07-05', 4),
    checkOf('2025-07-09', null, { condition: 'unfit' }),
    checkOf('2025-07-13', 8),
    checkOf('2025-07-11', 10, { trapId: 'T2' }),
  ],
  weather: steadyWeather('2025-01-01', '2025-07-12', 60, 82),
});

describe('the season line', () => {
  it('reads all the visits that cover the same nights together, and leaves a gap where none says anything', () => {
    const [t1, t2] = program.traps;
    const history = (trap: typeof t1, id: string) =>
      catchIntervals(
        trap!,
        program.checks.filter((check) => check.trapId === id),
        [],
        day('2025-07-13'),
      ).intervals;
    const points = ratePoints([...history(t1, 'T1'), ...history(t2, 'T2')]);
    expect(points.map(({ from, to, perNight }) => [from, to, perNight])).toEqual([
      ['2025-07-01', '2025-07-05', 14 / 14],
      ['2025-07-05', '2025-07-09', 1],
      ['2025-07-09', '2025-07-11', 18 / 14],
      ['2025-07-11', '2025-07-13', 2],
    ]);
    const alone = ratePoints(history(t1, 'T1'));
    expect(alone.map(({ perNight }) => perNight)).toEqual([1, null, 2]);
  });
});

describe('this week', () => {
  const week = weekView(prepare(program, { on: day('2025-07-15') }));

  it('leaves out fields whose crop came off long ago or is not planted for months', () => {
    expect(week.fields.map((field) => field.fieldId)).toEqual(['F1']);
  });

  it('lists traps and lures that are due, station by station, with how late they are', () => {
    // T1 is visited every 4 nights: due on 17 July. T2 has one visit only: a week after it, on 18 July.
    expect(week.due.checks).toEqual([]);
    expect(week.due.lures).toEqual([expect.objectContaining({ trapId: 'T1', why: 'lure-due', due: '2025-07-15', daysLate: 0 })]);
    const later = weekView(prepare(program, { on: day('2025-07-19') })).due;
    expect(later.checks.map(({ trapId, why, daysLate }) => [trapId, why, daysLate])).toEqual([
      ['T1', 'check-overdue', 2],
      ['T2', 'check-overdue', 1],
    ]);
    expect(later.lures[0]).toMatchObject({ trapId: 'T1', why: 'lure-overdue', daysLate: 4 });
  });

  it('says why a trap that is due was passed by, until somebody is there', () => {
    const skips = [{ trapId: 'T1', skippedOn: '2025-07-18', reason: 'locked' as const, note: null }];
    const skipped = (checks: typeof program.checks) =>
      weekView(prepare({ ...program, skips, checks }, { on: day('2025-07-26') })).due.checks.map((due) => [
        due.trapId,
        due.skipped,
      ]);
    expect(skipped(program.checks)).toEqual([
      ['T1', { on: '2025-07-18', reason: 'locked' }],
      ['T2', null],
    ]);
    expect(skipped([...program.checks, checkOf('2025-07-18', 3)])).toContainEqual(['T1', null]);
  });

  it('asks for an unfit trap to be put right the next day', () => {
    const down = weekView(prepare(program, { on: day('2025-07-10') })).due.checks;
    expect(down).toContainEqual(expect.objectContaining({ trapId: 'T1', why: 'unfit', due: '2025-07-10' }));
  });

  it('says how far counts and weather go', () => {
    expect([week.countsTo, week.weatherTo]).toEqual(['2025-07-13', '2025-07-12']);
  });
});

describe('the field page', () => {
  const view = fieldView(prepare({ ...program, treatments: [treatmentOf('2025-07-14')] }, { on: day('2025-07-15') }), 'F1')!;
  const insect = view.insects[0]!;

  it('shows every visit with what it says: a count, or that nothing is known', () => {
    expect(
      insect.checks
        .filter(({ trapId }) => trapId === 'T1')
        .map(({ on, nights, count, condition }) => [on, nights, count, condition]),
    ).toEqual([
      ['2025-07-05', 4, 4, 'fit'],
      ['2025-07-09', 4, null, 'unfit'],
      ['2025-07-13', 4, 8, 'fit'],
    ]);
  });

  it('sums heat day by day from the start of a model to the newest weather', () => {
    const strip = insect.heat.find(({ startKind }) => startKind === 'biofix')!;
    expect(strip.days.at(-1)!.date).toBe('2025-07-12');
    const totals = strip.days.map(({ total }) => total!);
    // Steady weather, one threshold only below it: every day adds the same.
    const step = totals[1]! - totals[0]!;
    expect(totals.at(-1)).toBeCloseTo(step * totals.length, 6);
    expect(strip.days).toHaveLength(day('2025-07-12') - day(strip.startsOn) + 1);
  });

  it('shows a treatment with the end of its recorded protection, and leaves room for what comes next', () => {
    expect(insect.treatments).toEqual([
      {
        appliedOn: '2025-07-14',
        appliedAt: null,
        product: 'Product A (invented)',
        rate: null,
        rateUnit: null,
        protectsUntil: '2025-07-18',
        coversUntil: '2025-07-18',
      },
    ]);
    expect(view.to).toBe(formatDay(addDays(day('2025-07-15'), 28)));
  });

  it('does not exist for a field the program does not have', () => {
    expect(fieldView(prepare(program, { on: day('2025-07-15') }), 'nowhere')).toBeNull();
  });
});
