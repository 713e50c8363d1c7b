/** Small programs for tests: one field, a few traps, counts on given days. */

import { addDays, day, formatDay } from '../base/day.ts';
import { emptyProgram, type Program } from '../records/program.ts';
import type {
  CheckRecord,
  DecisionRecord,
  FieldRecord,
  LureRecord,
  RuleRecord,
  StageRecord,
  TrapRecord,
  TreatmentRecord,
  WeatherRecord,
} from '../records/schema.ts';
import { adviseCell } from './decide.ts';
import { prepare } from './prepare.ts';
import type { Advice, Evidence } from './types.ts';

export const fieldOf = (over: Partial<FieldRecord> = {}): FieldRecord => ({
  fieldId: 'F1',
  farm: 'Test Farm',
  name: 'Field one',
  crop: 'sweet-corn',
  growthHabit: null,
  plantedOn: null,
  harvestOn: null,
  latitude: null,
  longitude: null,
  timeZone: null,
  weatherSource: null,
  ...over,
});

export const trapOf = (over: Partial<TrapRecord> = {}): TrapRecord => ({
  trapId: 'T1',
  station: 'S1',
  insect: 'helicoverpa-zea',
  design: 'mesh-cone',
  latitude: null,
  longitude: null,
  hungOn: '2025-07-01',
  takenDownOn: null,
  informs: ['F1'],
  ...over,
});

export const checkOf = (checkedOn: string, targetCount: number | null, over: Partial<CheckRecord> = {}): CheckRecord => ({
  trapId: 'T1',
  checkedOn,
  visit: 1,
  targetCount,
  otherCount: null,
  condition: 'fit',
  emptied: true,
  note: null,
  ...over,
});

export const stageAt = (stage: string, observedOn = '2025-07-05', fieldId = 'F1'): StageRecord => ({
  fieldId,
  observedOn,
  stage,
});

export const lureAt = (placedOn: string, lifeDays: number | null = 28, trapId = 'T1'): LureRecord => ({
  trapId,
  placedOn,
  lifeDays,
});

export const ruleOf = (over: Partial<RuleRecord> = {}): RuleRecord => ({
  ruleId: 'own-rule',
  crop: 'sweet-corn',
  insect: 'helicoverpa-zea',
  design: null,
  stages: ['silk'],
  threshold: 10,
  per: 'night',
  intervalDays: null,
  validFrom: null,
  validTo: null,
  source: 'the program',
  ...over,
});

export const treatmentOf = (appliedOn: string, over: Partial<TreatmentRecord> = {}): TreatmentRecord => ({
  fieldId: 'F1',
  insect: 'helicoverpa-zea',
  appliedOn,
  product: 'Product A (invented)',
  protectsDays: 4,
  reentryHours: 12,
  preharvestDays: 1,
  ...over,
});

export const decisionOf = (decidedOn: string, over: Partial<DecisionRecord> = {}): DecisionRecord => ({
  fieldId: 'F1',
  insect: 'helicoverpa-zea',
  decidedOn,
  decision: 'not-treated',
  reason: 'harvest-near',
  note: null,
  ...over,
});

/** Every day from `from` to `to` with the same extremes in °F. */
export function steadyWeather(from: string, to: string, tminF: number, tmaxF: number, sourceId = 'station'): WeatherRecord[] {
  const days: WeatherRecord[] = [];
  for (let on = day(from); on <= day(to); on = addDays(on, 1)) {
    days.push({ sourceId, date: formatDay(on), tminC: (tminF - 32) / 1.8, tmaxC: (tmaxF - 32) / 1.8, precipitationMm: null });
  }
  return days;
}

/** A check a night from the night after `from`. */
export function nightly(from: string, counts: readonly number[], trapId = 'T1'): CheckRecord[] {
  return counts.map((count, index) => checkOf(formatDay(addDays(day(from), index + 1)), count, { trapId }));
}

export const programOf = (parts: Partial<Program>): Program => ({
  ...emptyProgram(),
  fields: [fieldOf()],
  traps: [trapOf()],
  ...parts,
});

export function adviceOn(on: string, parts: Partial<Program>, insect = 'helicoverpa-zea', field = 'F1'): Advice {
  return adviseCell(prepare(programOf(parts), { on: day(on) }), field, insect);
}

export function evidenceOf<K extends Evidence['kind']>(advice: Advice, kind: K): (Evidence & { kind: K })[] {
  return advice.because.filter((item): item is Evidence & { kind: K } => item.kind === kind);
}
