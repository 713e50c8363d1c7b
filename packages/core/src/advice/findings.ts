import type { ActionRule } from '../catalogue/types.ts';
import type { FieldRecord } from '../records/schema.ts';
import type { CatchFinding } from './catch-finding.ts';
import { type StageKnown, stageFit } from './crop-stage.ts';
import type { DecisionFinding } from './decisions.ts';
import type { HeatFinding } from './phenology.ts';
import type { Prepared } from './prepare.ts';
import type { CellRules } from './rules.ts';
import type { SampleFinding } from './scouting.ts';
import type { TreatmentFinding } from './treatment.ts';
import type { Evidence } from './types.ts';

/** Everything found out about one field and insect, before a verb is chosen. */
export interface Findings {
  readonly prepared: Prepared;
  readonly field: FieldRecord;
  readonly insect: string;
  readonly rules: CellRules;
  readonly stage: StageKnown | null;
  /** What to say where a stage is needed and none is known. */
  readonly noStage: Evidence;
  readonly caught: CatchFinding;
  readonly sample: SampleFinding | null;
  readonly heat: HeatFinding;
  readonly treatment: TreatmentFinding | null;
  readonly notTreated: DecisionFinding | null;
  readonly notScouted: DecisionFinding | null;
}

/** True while a rule may hold: the crop is at one of its stages, or nobody knows that it is not. */
export function isOpen(field: FieldRecord, rule: ActionRule, stage: StageKnown | null): boolean {
  const { kind } = stageFit(field, rule.stages, stage);
  return kind !== 'not-yet' && kind !== 'over';
}
