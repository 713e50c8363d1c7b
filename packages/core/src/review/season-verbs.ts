/** What a season's advice was, day by day as known on the day, and what people did after it. */
import { verbOf } from '../advice/decide.ts';
import { prepare } from '../advice/prepare.ts';
import type { Verb } from '../advice/types.ts';
import { addDays, type Day, day, formatDay } from '../base/day.ts';
import { groupBy } from '../base/group-by.ts';
import type { Program } from '../records/program.ts';
import type { DecisionReason } from '../records/schema.ts';
import { farmOfTrap } from './farm-of-trap.ts';
import type { GrowingYear } from './growing-year.ts';

/** A verb that held from one day read to the last day read in a row. */
export interface VerbRun {
  readonly farm: string;
  readonly field: string;
  readonly insect: string;
  readonly verb: Verb;
  readonly from: Day;
  readonly to: Day;
  readonly daysRead: number;
  readonly ruleId: string | null;
  /** The earliest day by which it was due, as known on one of its days; null where it had none. */
  readonly dueOn: Day | null;
  /** For Scout and Decide: what the records say was done from the first day on, until `within` days after the last. */
  readonly followed: Followed | null;
}

export interface Followed {
  readonly sample: {
    readonly on: Day;
    readonly kind: string;
    readonly examined: number;
    readonly infested: number | null;
  } | null;
  readonly treatment: { readonly on: Day; readonly product: string } | null;
  /** A recorded decision not to treat or not to look, and why. */
  readonly decision: { readonly on: Day; readonly reason: DecisionReason } | null;
  /** The first of these that answers what was asked; null: nothing on record does. */
  readonly answer: Answer | null;
}

export interface Answer {
  readonly by: 'sample' | 'treatment' | 'decision';
  readonly on: Day;
  /** Days past the day by which it was due; 0 in time; null where no day was named. */
  readonly daysLate: number | null;
}

export interface SeasonVerbs {
  readonly runs: readonly VerbRun[];
  /** For each farm: days on which its traps were checked, and how many of them were read, evenly spread. */
  readonly days: readonly { readonly farm: string; readonly checked: number; readonly read: number }[];
  /** Treatments recorded without Scout or Decide in the `within` days before. */
  readonly treatmentsUncalled: readonly { readonly field: string; readonly insect: string; readonly on: Day }[];
  readonly within: number;
}

export interface VerbOptions {
  /** Check days read per farm at most. */
  readonly mostDays?: number;
  /** Days after a verb in which an act counts as following it. */
  readonly within?: number;
}

/** Twice a week for half a year. Own choice. */
export const MOST_DAYS_READ = 52;
/** Own choice, no source. */
export const FOLLOWED_WITHIN_DAYS = 7;

/**
 * On each day on which a farm's traps were checked, the verbs of its fields are worked out anew from what was known at
 * the end of that day. With more check days than `mostDays`, that many are read, spread evenly, the last included.
 */
export function* readVerbs(
  program: Program,
  season: GrowingYear,
  on: Day,
  { mostDays = MOST_DAYS_READ, within = FOLLOWED_WITHIN_DAYS }: VerbOptions = {},
): Generator<{ readonly done: number; readonly of: number }, SeasonVerbs, undefined> {
  const seen = checkDays(program, season, on);
  const read = new Map([...seen].map(([farm, days]) => [farm, spread(days, mostDays)]));
  const all = [...new Set([...read.values()].flat())].sort((a, b) => a - b);
  const trimmed = trim(program, season);
  const said: Said[] = [];
  for (const [i, today] of all.entries()) {
    const prepared = prepare(trimmed, { on: today });
    const farms = new Set([...read].filter(([, days]) => days.includes(today)).map(([farm]) => farm));
    for (const { fieldId, farm } of prepared.program.fields) {
      if (!farms.has(farm)) continue;
      for (const insect of prepared.insects) {
        if (!prepared.trapsByCell.has(`${fieldId}\n${insect}`)) continue;
        const { verb, rule, due, forecast } = verbOf(prepared, fieldId, insect);
        // What was expected once makes nobody late.
        const dueOn = forecast && due !== null && due > today ? null : due;
        said.push({ farm, field: fieldId, insect, verb, on: today, ruleId: rule?.id ?? null, dueOn });
      }
    }
    yield { done: i + 1, of: all.length };
  }
  const runs = runsOf(said).map((run) => ({ ...run, followed: followed(program, run, on, within) }));
  return {
    runs,
    days: [...seen].map(([farm, days]) => ({ farm, checked: days.length, read: read.get(farm)!.length })),
    treatmentsUncalled: uncalled(program, season, on, runs, within),
    within,
  };
}

interface Said {
  readonly farm: string;
  readonly field: string;
  readonly insect: string;
  readonly verb: Verb;
  readonly on: Day;
  readonly ruleId: string | null;
  readonly dueOn: Day | null;
}

function checkDays(program: Program, season: GrowingYear, on: Day): Map<string, Day[]> {
  const fields = new Map(program.fields.map((field) => [field.fieldId, field]));
  const farms = new Map(program.traps.map((trap) => [trap.trapId, farmOfTrap(trap, fields)]));
  const within = program.checks.flatMap(({ trapId, checkedOn }) => {
    const [farm, visit] = [farms.get(trapId) ?? null, day(checkedOn)];
    return farm !== null && season.from <= visit && visit <= Math.min(on, season.to) ? [{ farm, visit }] : [];
  });
  const days = (visits: readonly { readonly visit: Day }[]) =>
    [...new Set(visits.map(({ visit }) => visit))].sort((a, b) => a - b);
  return new Map([...groupBy(within, ({ farm }) => farm)].map(([farm, visits]) => [farm, days(visits)]));
}

function spread(days: readonly Day[], most: number): Day[] {
  if (days.length <= most) return [...days];
  return Array.from({ length: most }, (_, i) => days[Math.round(((i + 1) * days.length) / most) - 1]!);
}

/** Without the traps of other seasons: they take time and have no say. */
function trim(program: Program, { from, to }: GrowingYear): Program {
  const [first, last] = [formatDay(from), formatDay(to)];
  const traps = program.traps.filter((trap) => trap.hungOn <= last && (trap.takenDownOn === null || trap.takenDownOn >= first));
  const kept = new Set(traps.map(({ trapId }) => trapId));
  const checks = program.checks.filter(({ trapId }) => kept.has(trapId));
  return { ...program, traps, checks, lures: program.lures.filter(({ trapId }) => kept.has(trapId)) };
}

function runsOf(said: readonly Said[]): Omit<VerbRun, 'followed'>[] {
  return [...groupBy(said, ({ field, insect }) => `${field}\n${insect}`).values()].flatMap((days) => {
    const runs: { -readonly [K in keyof Omit<VerbRun, 'followed'>]: VerbRun[K] }[] = [];
    for (const { on, ...cell } of days) {
      const open = runs.at(-1);
      if (open?.verb === cell.verb) {
        open.to = on;
        open.daysRead++;
        if (cell.dueOn !== null && (open.dueOn === null || cell.dueOn < open.dueOn)) open.dueOn = cell.dueOn;
      } else runs.push({ ...cell, from: on, to: on, daysRead: 1 });
    }
    return runs;
  });
}

function followed(program: Program, run: Omit<VerbRun, 'followed'>, on: Day, within: number): Followed | null {
  if (run.verb !== 'scout' && run.verb !== 'decide') return null;
  const last = Math.min(on, addDays(run.to, within));
  const isFor = (record: { readonly fieldId: string; readonly insect: string }) =>
    record.fieldId === run.field && record.insect === run.insect;
  const follows = (text: string) => run.from <= day(text) && day(text) <= last;
  const sample = program.samples
    .filter((one) => isFor(one) && follows(one.sampledOn))
    .sort((a, b) => (a.sampledOn < b.sampledOn ? -1 : 1))[0];
  const treatment = program.treatments
    .filter((one) => isFor(one) && follows(one.appliedOn))
    .sort((a, b) => (a.appliedOn < b.appliedOn ? -1 : 1))[0];
  const answer = run.verb === 'decide' ? 'not-treated' : 'not-scouted';
  const decision = program.decisions
    .filter((one) => isFor(one) && one.decision === answer && follows(one.decidedOn))
    .sort((a, b) => (a.decidedOn < b.decidedOn ? -1 : 1))[0];
  const found = {
    sample: sample
      ? { on: day(sample.sampledOn), kind: sample.kind, examined: sample.unitsExamined, infested: sample.unitsInfested }
      : null,
    treatment: treatment ? { on: day(treatment.appliedOn), product: treatment.product } : null,
    decision: decision ? { on: day(decision.decidedOn), reason: decision.reason } : null,
  };
  return { ...found, answer: answerTo(run, found) };
}

/** A decision is answered by a treatment or by deciding not to treat; scouting by a sample too, or by deciding not to look. */
function answerTo({ verb, dueOn }: Omit<VerbRun, 'followed'>, found: Omit<Followed, 'answer'>): Answer | null {
  const ways = verb === 'decide' ? (['treatment', 'decision'] as const) : (['sample', 'treatment', 'decision'] as const);
  const answers = ways.flatMap((by) => {
    const on = found[by]?.on;
    return on === undefined ? [] : [{ by, on, daysLate: dueOn === null ? null : Math.max(0, on - dueOn) }];
  });
  return answers.sort((a, b) => a.on - b.on)[0] ?? null;
}

function uncalled(program: Program, season: GrowingYear, on: Day, runs: readonly VerbRun[], within: number) {
  const called = (field: string, insect: string, applied: Day) =>
    runs.some(
      (run) =>
        run.followed !== null &&
        run.field === field &&
        run.insect === insect &&
        run.from <= applied &&
        applied <= addDays(run.to, within),
    );
  return program.treatments.flatMap(({ fieldId: field, insect, appliedOn }) => {
    const applied = day(appliedOn);
    const counts = season.from <= applied && applied <= Math.min(on, season.to) && !called(field, insect, applied);
    return counts ? [{ field, insect, on: applied }] : [];
  });
}
