import {
  type AnswerRecord,
  answerSchema,
  type CheckRecord,
  checkSchema,
  type DecisionRecord,
  decisionSchema,
  type FieldRecord,
  fieldSchema,
  type LureRecord,
  lureSchema,
  type NormalRecord,
  normalSchema,
  type PlanRecord,
  type PriceRecord,
  type ProgramSettings,
  planSchema,
  priceSchema,
  type RuleRecord,
  ruleSchema,
  type SampleRecord,
  type SeasonRecord,
  type SkipRecord,
  type SourceRecord,
  type StageRecord,
  type StockRecord,
  sampleSchema,
  seasonSchema,
  skipSchema,
  sourceSchema,
  stageSchema,
  stockSchema,
  type TrapRecord,
  type TreatmentRecord,
  trapSchema,
  treatmentSchema,
  type WeatherRecord,
  weatherSchema,
} from './schema.ts';

/** One trap network: everything its people wrote down. All that Duskwatch says is computed from this. */
export interface Program {
  readonly settings: ProgramSettings;
  readonly fields: readonly FieldRecord[];
  readonly stages: readonly StageRecord[];
  readonly traps: readonly TrapRecord[];
  readonly lures: readonly LureRecord[];
  readonly checks: readonly CheckRecord[];
  readonly skips: readonly SkipRecord[];
  readonly sources: readonly SourceRecord[];
  readonly weather: readonly WeatherRecord[];
  readonly normals: readonly NormalRecord[];
  readonly samples: readonly SampleRecord[];
  readonly treatments: readonly TreatmentRecord[];
  readonly decisions: readonly DecisionRecord[];
  readonly rules: readonly RuleRecord[];
  readonly seasons: readonly SeasonRecord[];
  readonly plans: readonly PlanRecord[];
  readonly prices: readonly PriceRecord[];
  readonly stock: readonly StockRecord[];
  readonly answers: readonly AnswerRecord[];
}

/** The kinds of record, in the order in which they depend on one another. */
export const RECORD_KINDS = [
  'fields',
  'stages',
  'traps',
  'lures',
  'checks',
  'skips',
  'sources',
  'weather',
  'normals',
  'samples',
  'treatments',
  'decisions',
  'rules',
  'seasons',
  'plans',
  'prices',
  'stock',
  'answers',
] as const;
export type RecordKind = (typeof RECORD_KINDS)[number];
export type RecordOf<K extends RecordKind> = Program[K][number];

export const recordSchemas = {
  fields: fieldSchema,
  stages: stageSchema,
  traps: trapSchema,
  lures: lureSchema,
  checks: checkSchema,
  skips: skipSchema,
  sources: sourceSchema,
  weather: weatherSchema,
  normals: normalSchema,
  samples: sampleSchema,
  treatments: treatmentSchema,
  decisions: decisionSchema,
  rules: ruleSchema,
  seasons: seasonSchema,
  plans: planSchema,
  prices: priceSchema,
  stock: stockSchema,
  answers: answerSchema,
} as const;

export const emptyProgram = (settings: Partial<ProgramSettings> = {}): Program => ({
  settings: { name: 'Trap network', invented: false, pinnedOn: null, ...settings },
  fields: [],
  stages: [],
  traps: [],
  lures: [],
  checks: [],
  skips: [],
  sources: [],
  weather: [],
  normals: [],
  samples: [],
  treatments: [],
  decisions: [],
  rules: [],
  seasons: [],
  plans: [],
  prices: [],
  stock: [],
  answers: [],
});
