import { describe, expect, it } from 'vitest';
import {
  adviceOn,
  checkOf,
  decisionOf,
  fieldOf,
  lureAt,
  nightly,
  programOf,
  ruleOf,
  stageAt,
  trapOf,
  treatmentOf,
} from '../advice/test-program.ts';
import { day, formatDay } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import type { SampleRecord } from '../records/schema.ts';
import { finished, type ReviewOptions, reviewSeason } from './season-review.ts';

const review = (program: Program, options: Partial<ReviewOptions> = {}) =>
  finished(reviewSeason(program, { on: day('2025-12-31'), ...options }));
const iso = (on: number) => formatDay(on as ReturnType<typeof day>);

describe('when a season’s moths flew', () => {
  const visits = [checkOf('2025-07-05', 0), checkOf('2025-07-07', 10), checkOf('2025-07-09', 10)];

  it('half of the catch is dated within the visit that passed it', () => {
    const [timing] = review(programOf({ checks: visits })).program.timing;
    expect(iso(timing!.firstCatch!.on)).toBe('2025-07-07');
    const [design] = timing!.designs;
    expect(design!.caught).toMatchObject({ count: 20, trapNights: 8, perNight: 2.5 });
    expect(design!.passed.map(({ share, on }) => [share, iso(on)])).toEqual([
      [0.05, '2025-07-06'],
      [0.1, '2025-07-06'],
      [0.5, '2025-07-07'],
      [0.9, '2025-07-09'],
      [0.95, '2025-07-09'],
    ]);
  });

  it('a second trap that catches as the first does moves no date', () => {
    const two = programOf({
      traps: [trapOf(), trapOf({ trapId: 'T2', hungOn: '2025-07-05' })],
      checks: [...visits, ...visits.slice(1).map((check) => ({ ...check, trapId: 'T2' }))],
    });
    const [one, both] = [programOf({ checks: visits }), two].map(
      (program) => review(program).program.timing[0]!.designs[0]!.passed,
    );
    expect(both).toEqual(one);
  });

  it('nights that nobody saw are told, and are no zeros', () => {
    const checks = [checkOf('2025-07-05', 4), checkOf('2025-07-15', null, { condition: 'unfit' }), checkOf('2025-07-19', 4)];
    const [design] = review(programOf({ checks })).program.timing[0]!.designs;
    expect(design).toMatchObject({ unseenNights: 10, blindTrapNights: 10, caught: { perNight: 1, trapNights: 8 } });
  });

  it('traps found unfit are told by reason, the commonest first, with the traps they were', () => {
    const stolen = { condition: 'unfit', unfitReason: 'stolen' } as const;
    const checks = [
      checkOf('2025-07-05', null, { condition: 'unfit' }),
      checkOf('2025-07-08', null, stolen),
      checkOf('2025-07-15', null, stolen),
      checkOf('2024-07-15', null, stolen),
      checkOf('2025-07-19', 4),
    ];
    expect(review(programOf({ checks })).program.visits.unfit).toEqual([
      { reason: 'stolen', visits: 2, traps: 1 },
      { reason: null, visits: 1, traps: 1 },
    ]);
  });

  it('the catch of another year is another season’s', () => {
    const checks = [...visits, checkOf('2024-07-05', 90, { trapId: 'T0' })];
    const traps = [trapOf(), trapOf({ trapId: 'T0', hungOn: '2024-07-01', takenDownOn: '2024-09-01' })];
    expect(review(programOf({ traps, checks })).program.timing[0]!.designs[0]!.caught!.count).toBe(20);
  });
});

describe('visits and lures', () => {
  it('a trap left for longer than eight days was missed, and so was one that is waiting still', () => {
    const checks = [checkOf('2025-07-08', 0), checkOf('2025-07-20', 0)];
    const { missed, visits } = review(programOf({ checks }), { on: day('2025-08-01') }).program.visits;
    expect(visits).toBe(2);
    expect(missed.map(({ from, to, nights }) => [iso(from), to && iso(to), nights])).toEqual([
      ['2025-07-08', '2025-07-20', 12],
      ['2025-07-20', null, 12],
    ]);
  });

  it('a lure changed after its life was late by those days; one without a stated life is neither late nor in time', () => {
    const lures = [lureAt('2025-07-01', 20), lureAt('2025-07-24', 20), lureAt('2025-08-10', null)];
    const { lateLures, luresPlaced, luresWithoutLife } = review(programOf({ lures }), { on: day('2025-09-30') }).program.visits;
    expect(lateLures.map(({ dueOn, changedOn, daysLate }) => [iso(dueOn), changedOn && iso(changedOn), daysLate])).toEqual([
      ['2025-07-21', '2025-07-24', 3],
    ]);
    expect({ luresPlaced, luresWithoutLife }).toEqual({ luresPlaced: 3, luresWithoutLife: 1 });
  });
});

describe('what was advised, and what people did', () => {
  const sample: SampleRecord = {
    fieldId: 'F1',
    insect: 'helicoverpa-zea',
    sampledOn: '2025-07-13',
    kind: 'ears',
    unitsExamined: 100,
    unitsInfested: 3,
    totalCount: null,
  };
  const parts = {
    stages: [stageAt('silk', '2025-07-03')],
    lures: [lureAt('2025-07-01')],
    rules: [ruleOf()],
    checks: nightly('2025-07-01', [0, 0, 1, 0, 0, 1, 40, 40, 40, 0, 0, 0, 0, 0, 0]),
    samples: [sample],
    treatments: [treatmentOf('2025-07-10')],
  };
  const on = day('2025-07-20');

  it('each day is read as it was known then', () => {
    const { verbs } = review(programOf(parts), { on });
    expect(verbs.days).toEqual([{ farm: 'Test Farm', checked: 15, read: 15 }]);
    expect(verbs.runs.reduce((sum, { daysRead }) => sum + daysRead, 0)).toBe(15);
    for (const run of verbs.runs)
      for (const edge of [run.from, run.to]) expect(adviceOn(formatDay(edge), parts).verb).toBe(run.verb);
  });

  it('a decision is followed by the treatment recorded within a week of it', () => {
    const { verbs, program } = review(programOf(parts), { on });
    const decide = verbs.runs.find(({ verb }) => verb === 'decide')!;
    expect([iso(decide.from), iso(decide.to)]).toEqual(['2025-07-08', '2025-07-09']);
    expect(decide.followed).toMatchObject({
      treatment: { on: day('2025-07-10') },
      sample: { examined: 100, infested: 3 },
      decision: null,
    });
    expect(program.calls).toMatchObject({ decideTreated: 1, decideSampled: 1, sampledInfested: 1 });
    expect(program.calls.given).toMatchObject({ decide: 1, covered: 1 });
    expect(verbs.treatmentsUncalled).toEqual([]);
  });

  it('says how late a decision was answered, and by which answer; silence is no answer', () => {
    const decideIn = (own: Partial<Parameters<typeof programOf>[0]>) => {
      const { verbs, program } = review(programOf({ ...parts, samples: [], treatments: [], ...own }), { on });
      return { decide: verbs.runs.find(({ verb }) => verb === 'decide')!, answered: program.calls.answered };
    };
    const silent = decideIn({});
    const due = silent.decide.dueOn!;
    expect(formatDay(due)).toBe(adviceOn('2025-07-08', { ...parts, samples: [], treatments: [] }).by);
    expect(silent.decide.followed!.answer).toBeNull();
    expect(silent.answered).toMatchObject({ late: 0, middleDaysLate: null });
    expect(silent.answered.unanswered).toBeGreaterThan(0);

    const late = decideIn({ treatments: [treatmentOf('2025-07-12')] });
    expect(late.decide.followed!.answer).toEqual({ by: 'treatment', on: day('2025-07-12'), daysLate: day('2025-07-12') - due });
    expect(late.answered).toMatchObject({ late: 1, middleDaysLate: day('2025-07-12') - due });

    const declined = decideIn({
      decisions: [decisionOf('2025-07-09')],
      treatments: [treatmentOf('2025-07-12')],
    });
    expect(declined.decide.followed!.answer).toEqual({
      by: 'decision',
      on: day('2025-07-09'),
      daysLate: day('2025-07-09') - due,
    });
  });

  it('a treatment that nothing called for is named', () => {
    const early = { ...parts, treatments: [treatmentOf('2025-07-05')] };
    expect(review(programOf(early), { on }).verbs.treatmentsUncalled).toEqual([
      { field: 'F1', insect: 'helicoverpa-zea', on: day('2025-07-05') },
    ]);
  });

  it('with more check days than are read, those read are spread evenly and end with the last', () => {
    const { verbs } = review(programOf(parts), { on, mostDays: 5 });
    expect(verbs.days).toEqual([{ farm: 'Test Farm', checked: 15, read: 5 }]);
    expect(iso(verbs.runs.at(-1)!.to)).toBe('2025-07-16');
  });

  it('farms are reviewed apart, and the program holds them all', () => {
    const program = programOf({
      ...parts,
      fields: [fieldOf(), fieldOf({ fieldId: 'F2', farm: 'Other Farm' })],
      traps: [trapOf(), trapOf({ trapId: 'T2', informs: ['F2'] })],
      checks: [...parts.checks, ...nightly('2025-07-01', [1, 2], 'T2')],
    });
    const { farms, program: all } = review(program, { on });
    expect(farms.map(({ farm, visits }) => [farm, visits.visits])).toEqual([
      ['Test Farm', 15],
      ['Other Farm', 2],
    ]);
    expect(all.visits.visits).toBe(17);
  });
});

describe('the cost of a decision', () => {
  const work = programOf({ checks: nightly('2025-07-01', [0, 1]), lures: [lureAt('2025-07-01')] });
  const prices = { currency: 'USD', trap: 30, lure: 5, visit: 2, sample: null };

  it('is unknown until every price of what was used is given', () => {
    expect(review(work).program.cost).toEqual({ known: false, missing: ['trap', 'lure', 'visit'] });
    expect(review(work, { prices: { ...prices, visit: null } }).program.cost).toEqual({ known: false, missing: ['visit'] });
  });

  it('adds up traps, lures and visits; with no decision there is none to share it', () => {
    expect(review(work, { prices }).program.cost).toEqual({
      known: true,
      currency: 'USD',
      total: 30 + 5 + 2 * 2,
      perDecision: null,
    });
  });
});
