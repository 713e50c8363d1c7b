/** Until when recorded treatments cover a field, and the intervals their labels set as the user entered them. */

import { addDays, type Day, day, formatDay } from '../base/day.ts';
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { FieldRecord, TreatmentRecord } from '../records/schema.ts';
import { cellKey, growingYearStart, once, type Prepared } from './prepare.ts';
import type { Caution, Evidence } from './types.ts';

export interface TreatmentFinding {
  readonly record: TreatmentRecord;
  readonly appliedOn: Day;
  /** First day no longer covered; null when nothing says how long the treatment lasts. */
  readonly coversUntil: Day | null;
  readonly covering: boolean;
  readonly because: Evidence & { readonly kind: 'treatment' };
  /** Asks for the figure that the label has and nobody typed, where the catch makes it matter. */
  readonly missing: (Evidence & { readonly kind: 'missing' }) | null;
}

/** What the present catch asks for under its rule: `intervalDays` between decisions, null where the rule gives none. */
export interface CatchAsks {
  readonly intervalDays: number | null;
}

/**
 * The treatment of a field against an insect that covers it, or else the newest; null when none is recorded.
 *
 * Cover ends at the earlier of two days: the one on which the protection typed from the label ends, and the one on which
 * the rule asks for the next decision at the present catch. Where neither is known and the catch has reached its rule, an
 * assumed interval stands in, so that nobody is asked to decide again the day after a treatment.
 *
 * @param asks what the present catch asks for; null while no rule that holds is reached
 */
export function treatmentFinding(
  prepared: Prepared,
  field: FieldRecord,
  insect: string,
  asks: CatchAsks | null,
): TreatmentFinding | null {
  const findings = thisSeason(prepared, field, insect).map((record) => assess(prepared, record, asks));
  return findings.findLast((finding) => finding.covering) ?? findings.at(-1) ?? null;
}

/** Re-entry and pre-harvest cautions of every treatment on a field, against whatever insect it was made. */
export function labelCautions(prepared: Prepared, field: FieldRecord): readonly Caution[] {
  return once(prepared, 'no check', `label\n${field.fieldId}`, () => cautionsOf(prepared, field));
}

function cautionsOf(prepared: Prepared, field: FieldRecord): Caution[] {
  const cautions: Caution[] = [];
  for (const insect of prepared.insects) {
    for (const record of thisSeason(prepared, field, insect)) {
      const applied = day(record.appliedOn);
      if (record.reentryHours !== null && record.reentryHours > 0) {
        const { until, at } = reentryEnds(applied, record.appliedAt ?? null, record.reentryHours);
        if (until >= prepared.on) {
          const { reentryHours: hours, product } = record;
          cautions.push({ kind: 'reentry', until: formatDay(until), ...(at !== null && { at }), hours, product });
        }
      }
      if (record.preharvestDays !== null) {
        const earliest = addDays(applied, record.preharvestDays);
        if (earliest > prepared.on) {
          const { product } = record;
          cautions.push({ kind: 'preharvest', earliestHarvest: formatDay(earliest), harvestOn: field.harvestOn, product });
        }
      }
    }
  }
  return [...new Map(cautions.map((caution) => [JSON.stringify(caution), caution])).values()];
}

const MINUTES_A_DAY = 24 * 60;

/** Counted from the hour of application; where nobody wrote it, from the end of that day, and no hour is said. */
function reentryEnds(applied: Day, appliedAt: string | null, hours: number): { readonly until: Day; readonly at: string | null } {
  if (appliedAt === null) return { until: addDays(applied, Math.ceil(hours / 24)), at: null };
  const [hour, minute] = appliedAt.split(':').map(Number) as [number, number];
  const ends = hour * 60 + minute + Math.ceil(hours * 60);
  const [days, left] = [Math.floor(ends / MINUTES_A_DAY), ends % MINUTES_A_DAY];
  const two = (figure: number) => String(figure).padStart(2, '0');
  return { until: addDays(applied, days), at: `${two(Math.floor(left / 60))}:${two(left % 60)}` };
}

function thisSeason(prepared: Prepared, field: FieldRecord, insect: string): readonly TreatmentRecord[] {
  const [start, today] = [formatDay(growingYearStart(field, prepared.on)), formatDay(prepared.on)];
  return (prepared.treatmentsByCell.get(cellKey(field.fieldId, insect)) ?? []).filter(
    ({ appliedOn }) => start <= appliedOn && appliedOn <= today,
  );
}

function assess(prepared: Prepared, record: TreatmentRecord, asks: CatchAsks | null): TreatmentFinding {
  const appliedOn = day(record.appliedOn);
  const after = (days: number | null) => (days === null ? null : addDays(appliedOn, days));
  const label = after(record.protectsDays);
  const intervalDays = asks?.intervalDays ?? null;
  const rule = after(intervalDays);
  const assumed = label === null && rule === null && asks !== null ? after(ASSUMPTIONS.intervalUnknownDays.value) : null;
  const coversUntil = assumed ?? (label === null || (rule !== null && rule < label) ? rule : label);
  const endsBy = coversUntil === null ? null : assumed !== null ? 'assumed' : coversUntil === label ? 'label' : 'rule';
  const covering = coversUntil !== null && prepared.on < coversUntil;
  return {
    record,
    appliedOn,
    coversUntil,
    covering,
    because: {
      kind: 'treatment',
      appliedOn: record.appliedOn,
      product: record.product,
      protectsUntil: label === null ? null : formatDay(label),
      intervalDays,
      coversUntil: coversUntil === null ? null : formatDay(coversUntil),
      endsBy,
      state: covering ? 'covering' : coversUntil === null ? 'unknown' : 'lapsed',
    },
    missing:
      label !== null || asks === null
        ? null
        : { kind: 'missing', what: 'protection', from: record.appliedOn, to: null, detail: record.product },
  };
}
