import { describe, expect, it } from 'vitest';
import { prepare } from '../advice/index.ts';
import { checkOf, fieldOf, lureAt, nightly, programOf, ruleOf, stageAt, trapOf, treatmentOf } from '../advice/test-program.ts';
import { day } from '../base/day.ts';
import type { Program } from '../records/program.ts';
import { type CalendarKind, calendarEntries, dueEntries, planEntries } from './calendar.ts';
import { lureOrders } from './lure-need.ts';
import { planLures } from './plan-lures.ts';
import { seasonPlan } from './season-plan.ts';

const known = (parts: Partial<Program>, on: string) => prepare(programOf(parts), { on: day(on) });
const fields = [fieldOf(), fieldOf({ fieldId: 'F2', name: 'Field two' }), fieldOf({ fieldId: 'F.3;', farm: 'Farm: two' })];

function work(hangOn: string, season = 2025) {
  const prepared = known({ traps: [], fields }, '2025-02-01');
  const stated = { 'helicoverpa-zea': { hangOn, takeDownOn: '2025-08-25', traps: 2 } };
  const plan = seasonPlan(prepared, { season, insects: ['helicoverpa-zea'], checkWeekdays: [1], stated });
  const lines = planLures(prepared, plan, { 'helicoverpa-zea': 28 });
  const { orders } = lureOrders(
    lines.flatMap(({ uses }) => uses),
    [],
    { today: prepared.on },
  );
  return { season, lines, orders };
}

const trapsAndChecks = {
  traps: [trapOf({ hungOn: '2025-07-01' }), trapOf({ trapId: 'T2', hungOn: '2025-07-01', insect: 'ostrinia-nubilalis' })],
  checks: ['T1', 'T2'].flatMap((trapId) => ['2025-07-04', '2025-07-08'].map((on) => checkOf(on, 0, { trapId }))),
};
const ofKind = (entries: ReturnType<typeof dueEntries>, kind: CalendarKind) => entries.filter((entry) => entry.kind === kind);

describe('the calendar', () => {
  it('of a plan holds hanging, checks, lure changes, taking down and the order', () => {
    const entries = planEntries(work('2025-06-02'));
    const count = (kind: CalendarKind) => ofKind(entries, kind).length;
    // Two farms: 12 Mondays each. Three lines: changes on 30 June and 28 July (28 days each).
    expect([count('hang'), count('check'), count('change-lure'), count('take-down'), count('order-lures')]).toEqual([
      3, 24, 6, 3, 1,
    ]);
    // 18 lures and a reserve of 15 % make 21, three weeks before 2 June.
    expect(ofKind(entries, 'order-lures')[0]).toMatchObject({ on: '2025-05-12', quantity: 21 });
  });

  it('keeps its entries when the dates move, and adds none', () => {
    const uids = (hangOn: string) =>
      new Set(planEntries(work(hangOn)).flatMap(({ uid, kind }) => (kind === 'check' || kind === 'change-lure' ? [] : [uid])));
    expect(uids('2025-06-02')).toEqual(uids('2025-06-09'));
    const later = planEntries(work('2025-06-09')).map(({ uid }) => uid);
    const sooner = new Set(planEntries(work('2025-06-02')).map(({ uid }) => uid));
    expect(later.filter((uid) => !sooner.has(uid))).toEqual([]);
  });

  it('gives every entry a uid of its own, of characters that no parser trips over', () => {
    const entries = calendarEntries(known({ ...trapsAndChecks, fields }, '2025-07-09'), work('2025-06-02'));
    const uids = entries.map(({ uid }) => uid);
    expect(new Set(uids).size).toBe(uids.length);
    for (const uid of uids) expect(uid).toMatch(/^[\w.%-]+$/);
    expect(new Set([...uids, ...planEntries(work('2025-06-02', 2026)).map(({ uid }) => uid)]).size).toBeGreaterThan(uids.length);
  });

  it('has one next check for a station of two traps; a visit made brings the next, under another uid', () => {
    const before = ofKind(dueEntries(known(trapsAndChecks, '2025-07-09')), 'check');
    // Visits after three and four nights: the rhythm is four.
    expect(before).toMatchObject([{ station: 'S1', trapIds: ['T1', 'T2'], on: '2025-07-12', overdue: false }]);
    const checks = [...trapsAndChecks.checks, ...['T1', 'T2'].map((trapId) => checkOf('2025-07-11', 0, { trapId }))];
    const after = ofKind(dueEntries(known({ ...trapsAndChecks, checks }, '2025-07-11')), 'check');
    expect(after).toHaveLength(1);
    expect(after[0]!.uid).not.toBe(before[0]!.uid);
  });

  it('moves an overdue check to today under the same uid', () => {
    const [soon] = ofKind(dueEntries(known(trapsAndChecks, '2025-07-09')), 'check');
    const [late] = ofKind(dueEntries(known(trapsAndChecks, '2025-07-20')), 'check');
    expect(late).toEqual({ ...soon!, on: '2025-07-20', overdue: true });
  });

  it('changes a lure at the last check in rhythm before its life ends, else on its last day', () => {
    const lureOn = (lifeDays: number) =>
      ofKind(dueEntries(known({ ...trapsAndChecks, lures: [lureAt('2025-07-01', lifeDays)] }, '2025-07-09')), 'change-lure')[0]!
        .on;
    // Checks every four nights from 12 July. Life to 22 July: 20 July; to 20 July: that day; to 10 July: alone.
    expect([lureOn(21), lureOn(19), lureOn(9)]).toEqual(['2025-07-20', '2025-07-20', '2025-07-10']);
  });

  it('holds a decision that is due once, from one treatment to the next', () => {
    const parts = {
      checks: nightly('2025-07-01', [12, 14, 15]),
      rules: [ruleOf({ design: 'mesh-cone' })],
      stages: [stageAt('silk', '2025-07-01')],
    };
    const decisions = (on: string, more: Partial<Program> = {}) => ofKind(dueEntries(known({ ...parts, ...more }, on)), 'decide');
    const [first] = decisions('2025-07-04');
    const [next] = decisions('2025-07-06');
    expect(first).toMatchObject({ fields: ['F1'], insects: ['helicoverpa-zea'] });
    expect(next!.uid).toBe(first!.uid);
    const checks = [...parts.checks, ...nightly('2025-07-08', [15, 20])];
    const [again] = decisions('2025-07-10', { checks, treatments: [treatmentOf('2025-07-04')] });
    expect(again!.uid).not.toBe(first!.uid);
  });

  it('puts the traps’ own next check in the place of the planned ones up to then', () => {
    const entries = calendarEntries(known({ ...trapsAndChecks, fields }, '2025-07-09'), work('2025-06-02'));
    const own = entries.filter(({ kind, farm }) => kind === 'check' && farm === 'Test Farm');
    expect(own[0]).toMatchObject({ on: '2025-07-12', station: 'S1' });
    expect(own[1]).toMatchObject({ on: '2025-07-14', station: null });
  });
});
