/** Recorded decisions not to act, and how long each holds. */
import { addDays, type Day, day, formatDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { DecisionRecord, FieldRecord } from '../records/schema.ts';
import { cellKey, growingYearStart, type Prepared } from './prepare.ts';
import type { CatchAsks } from './treatment.ts';
import type { Evidence } from './types.ts';

export interface DecisionFinding {
  readonly decidedOn: Day;
  /** The day on which the question comes back. */
  readonly holdsUntil: Day;
  readonly holding: boolean;
  readonly because: Evidence & { readonly kind: 'decision' };
}

/**
 * The newest decision of its kind for a field and insect this season; null when none is recorded.
 *
 * Not to treat holds for the interval between decisions that the rule gives at the present catch, as a treatment would.
 * Not to look holds as long as a sample would speak for the field.
 */
export function decisionFinding(
  prepared: Prepared,
  field: FieldRecord,
  insect: string,
  decision: DecisionRecord['decision'],
  asks: CatchAsks | null,
): DecisionFinding | null {
  const [start, today] = [formatDay(growingYearStart(field, prepared.on)), formatDay(prepared.on)];
  const record = (prepared.decisionsByCell.get(cellKey(field.fieldId, insect)) ?? []).findLast(
    (one) => one.decision === decision && start <= one.decidedOn && one.decidedOn <= today,
  );
  if (!record) return null;
  const decidedOn = day(record.decidedOn);
  const { days, by } = holds(decision, asks);
  const holdsUntil = addDays(decidedOn, days);
  const { reason, note } = record;
  return {
    decidedOn,
    holdsUntil,
    holding: prepared.on < holdsUntil,
    because: {
      kind: 'decision',
      decidedOn: record.decidedOn,
      decision,
      reason,
      note,
      holdsUntil: formatDay(holdsUntil),
      by,
      days,
    },
  };
}

function holds(decision: DecisionRecord['decision'], asks: CatchAsks | null) {
  if (decision === 'not-scouted') return { days: ASSUMPTIONS.sampleFreshDays.value, by: 'sample-life' as const };
  const given = asks?.intervalDays ?? null;
  return given === null
    ? { days: ASSUMPTIONS.intervalUnknownDays.value, by: 'assumed' as const }
    : { days: given, by: 'rule' as const };
}
