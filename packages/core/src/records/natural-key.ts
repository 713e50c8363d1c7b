// Apart from the schemas, so that a phone that only names records does not load them.
import type { Program, RecordKind, RecordOf } from './program.ts';

/** What makes two records of a kind the same thing said twice: the natural key, unique in a program. */
export const naturalKey: { readonly [K in RecordKind]: (record: RecordOf<K>) => string } = {
  fields: (r) => r.fieldId,
  stages: (r) => `${r.fieldId}|${r.observedOn}`,
  traps: (r) => r.trapId,
  lures: (r) => `${r.trapId}|${r.placedOn}`,
  checks: (r) => `${r.trapId}|${r.checkedOn}|${r.visit}`,
  skips: (r) => `${r.trapId}|${r.skippedOn}`,
  sources: (r) => r.sourceId,
  weather: (r) => `${r.sourceId}|${r.date}`,
  normals: (r) => `${r.sourceId}|${r.month}`,
  samples: (r) => `${r.fieldId}|${r.insect}|${r.sampledOn}|${r.kind}`,
  treatments: (r) => `${r.fieldId}|${r.insect}|${r.appliedOn}|${r.product}`,
  decisions: (r) => `${r.fieldId}|${r.insect}|${r.decidedOn}|${r.decision}`,
  rules: (r) => r.ruleId,
  seasons: (r) => `${r.season}`,
  plans: (r) => `${r.season}|${r.insect}|${r.area}`,
  prices: (r) => `${r.item}|${r.of}`,
  stock: (r) => r.stockId,
  answers: (r) => r.question,
};

/** A program with new records of some kinds: those first, so that their index is that of what came in; then the held ones that they do not restate. */
export function withNewRecords(held: Program, added: { readonly [K in RecordKind]?: readonly RecordOf<K>[] }): Program {
  const whole: Record<string, unknown> = { ...held };
  for (const kind of Object.keys(added) as RecordKind[]) {
    const keyOf = naturalKey[kind] as (record: unknown) => string;
    const restated = new Set(added[kind]!.map(keyOf));
    whole[kind] = [...added[kind]!, ...held[kind].filter((record) => !restated.has(keyOf(record)))];
  }
  return whole as unknown as Program;
}
