/** Samples walked, treatments recorded, and decisions not to treat. Products are letters: no real one is meant. */
import type { DecisionRecord, RuleRecord, SampleRecord, TreatmentRecord } from '@duskwatch/core';
import { INSECTS, type InsectCode } from './network.ts';

const sample = (
  fieldId: string,
  insect: InsectCode,
  sampledOn: string,
  kind: string,
  unitsExamined: number,
  unitsInfested: number,
  totalCount: number | null = null,
): SampleRecord => ({ fieldId, insect: INSECTS[insect], sampledOn, kind, unitsExamined, unitsInfested, totalCount });

export const SAMPLES: readonly SampleRecord[] = [
  sample('quernstead-kiln', 'ON', '2024-06-18', 'plants', 100, 9),
  sample('quernstead-kiln', 'HZ', '2024-07-26', 'ears', 100, 3),
  sample('dunnoch-sparrow', 'ON', '2024-06-21', 'plants', 100, 22),
  sample('larkwater-weir', 'HZ', '2024-07-23', 'plants', 30, 2, 2),
  sample('quernstead-rows', 'SF', '2025-07-22', 'plants', 100, 12),
  sample('quernstead-kiln', 'HZ', '2025-07-25', 'ears', 100, 11, 12),
  sample('dunnoch-sparrow', 'HZ', '2025-08-01', 'ears', 100, 4),
  sample('larkwater-weir', 'HZ', '2025-07-19', 'plants', 25, 4, 5),

  sample('fennelgate-lantern', 'ON', '2026-06-16', 'plants', 100, 31, 40),
  sample('quernstead-kiln', 'ON', '2026-06-16', 'plants', 100, 12),
  sample('dunnoch-clay', 'ON', '2026-06-19', 'plants', 60, 2, 2),
  sample('ivelow-lane', 'SF', '2026-07-08', 'plants', 100, 13),
  sample('larkwater-weir', 'HZ', '2026-07-10', 'plants', 25, 1, 1),
  sample('fennelgate-foot', 'SF', '2026-07-10', 'plants', 100, 3),
  sample('cresslow-pond', 'ON', '2026-07-11', 'plants', 100, 6),
  sample('osierholm-causeway', 'SF', '2026-07-10', 'plants', 100, 7),
  sample('marlterrace-top', 'HZ', '2026-07-13', 'plants', 30, 4, 4),
  sample('larkwater-heron', 'HZ', '2026-07-15', 'ears', 100, 2),
  sample('quernstead-rows', 'SF', '2026-07-14', 'plants', 100, 14, 15),
  sample('quernstead-rows', 'ON', '2026-07-14', 'plants', 100, 4),
];

const treatment = (
  fieldId: string,
  insect: InsectCode,
  appliedOn: string,
  product: string,
  protectsDays: number,
  reentryHours: number,
  preharvestDays: number,
): TreatmentRecord => ({
  fieldId,
  insect: INSECTS[insect],
  appliedOn,
  product: `${product} (invented)`,
  protectsDays,
  reentryHours,
  preharvestDays,
});

export const TREATMENTS: readonly TreatmentRecord[] = [
  treatment('quernstead-kiln', 'HZ', '2024-07-24', 'Product A', 5, 12, 3),
  treatment('quernstead-rows', 'SF', '2025-07-23', 'Product C', 7, 4, 1),
  treatment('quernstead-kiln', 'HZ', '2025-07-26', 'Product A', 4, 12, 3),

  treatment('fennelgate-lantern', 'ON', '2026-06-17', 'Product C', 7, 4, 1),
  treatment('quernstead-gourd', 'MC', '2026-06-27', 'Product B', 7, 12, 3),
  treatment('dunnoch-sparrow', 'HZ', '2026-07-08', 'Product A', 4, 12, 3),
  treatment('ivelow-lane', 'SF', '2026-07-09', 'Product C', 7, 4, 1),
  treatment('cresslow-spring', 'MC', '2026-07-11', 'Product B', 7, 12, 3),
  treatment('fennelgate-lantern', 'HZ', '2026-07-12', 'Product A', 5, 12, 3),
];

const decidedNot = (
  fieldId: string,
  insect: InsectCode,
  decidedOn: string,
  reason: DecisionRecord['reason'],
  note: string | null,
): DecisionRecord => ({ fieldId, insect: INSECTS[insect], decidedOn, decision: 'not-treated', reason, note });

export const DECISIONS: readonly DecisionRecord[] = [
  decidedNot('pightle-great', 'MC', '2026-07-06', 'loss-accepted', 'a few vines of a large field'),
  decidedNot('quernstead-gourd', 'MC', '2026-07-13', 'harvest-near', null),
];

export const OWN_RULES: readonly RuleRecord[] = [
  {
    ruleId: 'ombrel-pepper-corn-borer',
    crop: 'pepper',
    insect: INSECTS.ON,
    design: 'mesh-cone',
    stages: ['fruiting', 'ripening'],
    threshold: 7,
    per: 'week',
    intervalDays: 7,
    validFrom: '2024-01-01',
    validTo: null,
    source: "the co-operative's own rule, invented for this demo: not for use anywhere",
  },
];
