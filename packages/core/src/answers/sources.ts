import { ASSUMPTIONS } from '../catalogue/assumptions.ts';
import { catalogue } from '../catalogue/catalogue.ts';
import type { LocalText, Sourced, Standing, Work } from '../catalogue/types.ts';
import { SEASON_ASSUMPTIONS } from '../planning/assumptions.ts';
import { PLAN_ASSUMPTIONS } from '../scouting/assumptions.ts';

export type SourceKind =
  | 'hosts'
  | 'biofix'
  | 'look-alike'
  | 'stages'
  | 'model'
  | 'model-start'
  | 'rule'
  | 'rule-may'
  | 'time-to-decide'
  | 'weather-adjustment'
  | 'sample-size'
  | 'design'
  | 'design-ratio'
  | 'practice'
  | 'recognition'
  | 'assumption';

export interface SourceLine {
  readonly id: string;
  readonly kind: SourceKind;
  readonly source: string;
  readonly standing: Standing;
  readonly works: readonly Work[];
  readonly note: LocalText | null;
}

/** Where every fact of the catalogue comes from and how far to trust it, one line each, in the catalogue's order. */
export function describeSources(): readonly SourceLine[] {
  const line = (kind: SourceKind, id: string, fact: Sourced | null | undefined): SourceLine[] =>
    fact ? [{ id, kind, source: fact.source, standing: fact.standing, works: fact.works ?? [], note: fact.note ?? null }] : [];
  const { insects, crops, models, rules, designs, designRatios, practices, recognition } = catalogue;
  return [
    ...insects.flatMap((insect) => [
      ...line('hosts', insect.id, insect.hostsSource),
      ...line('biofix', insect.id, insect.biofix),
      ...insect.lookAlikes.flatMap((other) => line('look-alike', `${insect.id}: ${other.name.en}`, other)),
    ]),
    ...crops.flatMap((crop) => line('stages', crop.id, crop.stagesSource)),
    ...models.flatMap((model) => [...line('model', model.id, model), ...line('model-start', model.id, model.startSource)]),
    ...rules.flatMap((rule) => [
      ...line('rule', rule.id, rule),
      ...line('rule-may', rule.id, rule.maySource),
      ...line('time-to-decide', rule.id, rule.decideWithin),
      ...(rule.kind === 'catch-table'
        ? rule.adjustments.flatMap((change) => line('weather-adjustment', `${rule.id}: ${change.when}`, change))
        : []),
      ...('examineSource' in rule ? line('sample-size', rule.id, rule.examineSource) : []),
    ]),
    ...designs.flatMap((facts) => line('design', facts.design, facts)),
    ...designRatios.flatMap((ratio) =>
      line('design-ratio', `${ratio.of} against ${ratio.against}: ${ratio.insect ?? 'any'}`, ratio),
    ),
    ...practices.flatMap((practice) => line('practice', practice.id, practice)),
    ...recognition.flatMap((place) => line('recognition', place.id, place)),
    ...[...Object.values(ASSUMPTIONS), ...Object.values(PLAN_ASSUMPTIONS), ...Object.values(SEASON_ASSUMPTIONS)].flatMap(
      (assumption) => line('assumption', assumption.id, assumption),
    ),
  ];
}
