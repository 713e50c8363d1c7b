import { type Advice, type Caution, type Evidence, TRAP_DESIGNS } from '@duskwatch/core';
import { z } from 'zod';
import { date } from './common.ts';

export const verb = z.enum(['watch', 'scout', 'decide', 'covered', 'blind', 'none']);
export const design = z.enum(TRAP_DESIGNS);
export const standing = z.enum(['published', 'practice', 'memory', 'own', 'chosen']);

/** One of a closed set of words, the set complete or it does not compile. */
export const oneOf = <K extends string>(words: Record<K, true>) => z.enum(Object.keys(words) as [K, ...K[]]);

/**
 * A record told from its siblings by its kind. The fields of each kind are described where they are made, in the
 * core; here they pass as they are.
 */
const ofKind = <T extends { kind: string }>(kinds: Record<T['kind'], true>) =>
  z.looseObject({ kind: oneOf<T['kind']>(kinds) }) as unknown as z.ZodType<T>;

const evidence = ofKind<Evidence>({
  'out-of-season': true,
  stage: true,
  rate: true,
  threshold: true,
  tier: true,
  'weather-adjustment': true,
  accumulation: true,
  biofix: true,
  event: true,
  sample: true,
  treatment: true,
  'trap-unusable': true,
  'lure-spent': true,
  'lure-unknown': true,
  missing: true,
  'other-rule': true,
  'other-design': true,
  question: true,
  sampling: true,
  larvae: true,
  trend: true,
});

const caution = ofKind<Caution>({
  'label-and-adviser': true,
  bees: true,
  reentry: true,
  preharvest: true,
  'reads-low': true,
  'threshold-is-estimate': true,
  'rule-from-elsewhere': true,
  'rule-design-unstated': true,
  'designs-not-pooled': true,
  'few-nights': true,
  'stage-old': true,
  overdue: true,
});

const fields = z.object({
  field: z.string().describe('field_id'),
  insect: z.string(),
  verb,
  by: date.nullable().describe('The date the verb is good for: next check, scout by, decide by, covered until.'),
  rate: z.number().nullable().describe('Moths per trap per night.'),
  interval: z.tuple([z.number(), z.number()]).nullable().describe('Low and high of the rate.'),
  intervalDays: z.number().nullable().describe("The rule's days between protective decisions."),
  probabilityAbove: z.number().nullable().describe('Probability that the true rate is above the threshold of the rule.'),
  because: z.array(evidence).describe('The records and numbers that the verb rests on.'),
  cautions: z.array(caution),
  confidence: z.enum(['high', 'moderate', 'low']).nullable(),
  rule: z
    .object({
      id: z.string(),
      kind: z.enum(['catch-threshold', 'catch-table', 'infestation', 'heat-scout']),
      region: z.string(),
      standing,
    })
    .nullable(),
  source: z.string().nullable(),
});

export const advice: z.ZodType<Advice> = fields;

/** What a cell of the week says of it. */
export const adviceInShort = fields.pick({ verb: true, by: true, rate: true, interval: true, confidence: true });
