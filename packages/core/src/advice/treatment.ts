/** What recorded treatments still do, and the intervals their labels set as the user entered them. */

import { addDays, type Day, day, formatDay } from '../base/day.ts';
import type { FieldRecord, TreatmentRecord } from '../records/schema.ts';
import { cellKey, once, type Prepared, seasonStart } from './prepare.ts';
import type { Caution, Evidence } from './types.ts';

export interface TreatmentFinding {
  readonly record: TreatmentRecord;
  readonly appliedOn: Day;
  /** First day no longer protected; null when no protection was recorded. */
  readonly protectsUntil: Day | null;
  readonly protecting: boolean;
  readonly because: Evidence;
}

/** The newest treatment of a field against an insect; null when none is recorded. */
export function treatmentFinding(prepared: Prepared, field: FieldRecord, insect: string): TreatmentFinding | null {
  const findings = thisSeason(prepared, field, insect).map((record) => assess(prepared, record));
  return findings.findLast((finding) => finding.protecting) ?? findings.at(-1) ?? null;
}

/** Re-entry and pre-harvest cautions of every treatment on a field, against whatever insect it was made. */
export function labelCautions(prepared: Prepared, field: FieldRecord): readonly Caution[] {
  return once(prepared, `label\n${field.fieldId}`, () => cautionsOf(prepared, field));
}

function cautionsOf(prepared: Prepared, field: FieldRecord): Caution[] {
  const cautions: Caution[] = [];
  for (const insect of prepared.insects) {
    for (const record of thisSeason(prepared, field, insect)) {
      const applied = day(record.appliedOn);
      if (record.reentryHours !== null && record.reentryHours > 0) {
        // The hour of application is not recorded, so the interval is counted from the end of that day.
        const until = addDays(applied, Math.ceil(record.reentryHours / 24));
        if (until >= prepared.on) {
          cautions.push({ kind: 'reentry', until: formatDay(until), hours: record.reentryHours, product: record.product });
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

function thisSeason(prepared: Prepared, field: FieldRecord, insect: string): readonly TreatmentRecord[] {
  const start = formatDay(seasonStart(field, prepared.on));
  return (prepared.treatmentsByCell.get(cellKey(field.fieldId, insect)) ?? []).filter((record) => record.appliedOn >= start);
}

function assess(prepared: Prepared, record: TreatmentRecord): TreatmentFinding {
  const appliedOn = day(record.appliedOn);
  const protectsUntil = record.protectsDays === null ? null : addDays(appliedOn, record.protectsDays);
  const protecting = protectsUntil !== null && prepared.on < protectsUntil;
  const state = protectsUntil === null ? 'unknown' : protecting ? 'protecting' : 'lapsed';
  return {
    record,
    appliedOn,
    protectsUntil,
    protecting,
    because: {
      kind: 'treatment',
      appliedOn: record.appliedOn,
      product: record.product,
      protectsUntil: protectsUntil === null ? null : formatDay(protectsUntil),
      state,
    },
  };
}
