/** Since when what a verb asks for has been due, read from the days before as they were known then. */
import { addDays, type Day, day, formatDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { Findings } from './findings.ts';
import { asOf, cellKey, historyOf, type Prepared, trapsThisSeason } from './prepare.ts';
import type { Verb } from './types.ts';

/** What one day's reading of a field and insect asked for. */
export interface Asked {
  readonly verb: Verb;
  /** The day by which it was due, as that day's records had it; may lie before the day read. */
  readonly due: Day | null;
  /** `due` was only expected: what was expected once makes nobody late. */
  readonly forecast?: boolean;
}

/** Longest look back. A question that stood unanswered for longer is late enough. */
const LONGEST_DAYS = 90;

/**
 * The earliest due day of a run of readings that asked for the same and that nobody answered.
 *
 * Days on which something was written about the field and insect are read anew, newest first, each as it was known at its
 * end; between them nothing changes that could move a due day. A reading that was blind neither asks nor answers. Days up
 * to and including that of the last answer no longer count.
 */
export function dueFrom(findings: Findings, asked: Asked, readAt: (prepared: Prepared) => Asked): Day | null {
  if (asked.due === null || (asked.verb !== 'decide' && asked.verb !== 'scout')) return asked.due;
  const answer = lastAnswer(findings, asked);
  let due = answer !== null && asked.due < answer.until ? answer.until : asked.due;
  for (const on of writtenDays(findings)) {
    if (answer !== null && on <= answer.on) break;
    const before = readAt(asOf(findings.prepared, on));
    if (before.verb === 'blind') continue;
    if (before.verb !== asked.verb || before.due === null) break;
    if (!before.forecast && before.due < due) due = before.due;
  }
  return due;
}

interface Answer {
  readonly on: Day;
  /** The question is not due again before this day. */
  readonly until: Day;
}

/** The newest answer: to a decision a treatment or a decision not to treat; to scouting a sample or a decision not to look too. */
function lastAnswer(findings: Findings, asked: Asked): Answer | null {
  const { prepared, field, insect, treatment, notTreated, notScouted } = findings;
  const answers: Answer[] = [];
  if (treatment) answers.push({ on: treatment.appliedOn, until: treatment.coversUntil ?? addDays(treatment.appliedOn, 1) });
  const decided = asked.verb === 'decide' ? notTreated : notScouted;
  if (decided) answers.push({ on: decided.decidedOn, until: decided.holdsUntil });
  const today = formatDay(prepared.on);
  const sampled = (prepared.samplesByCell.get(cellKey(field.fieldId, insect)) ?? []).findLast((one) => one.sampledOn <= today);
  if (asked.verb === 'scout' && sampled) {
    const on = day(sampled.sampledOn);
    // What a sample itself asks for, such as more of it, is not answered by it.
    answers.push({ on, until: asked.due! > on ? asked.due! : addDays(on, ASSUMPTIONS.sampleFreshDays.value) });
  }
  return answers.reduce<Answer | null>((newest, one) => (newest && newest.on >= one.on ? newest : one), null);
}

/** Days before the one read on which a trap was visited or a stage was seen, newest first. */
function writtenDays({ prepared, field, insect }: Findings): Day[] {
  const from = addDays(prepared.on, -LONGEST_DAYS);
  const days = new Set<Day>();
  for (const trap of trapsThisSeason(prepared, field, insect))
    for (const { to } of historyOf(prepared, trap).intervals) days.add(to);
  for (const { observedOn } of prepared.stagesByField.get(field.fieldId) ?? []) days.add(day(observedOn));
  return [...days].filter((on) => from <= on && on < prepared.on).sort((a, b) => b - a);
}
