/** A suggested threshold as the rule that a person may make of it, and the names by which both are found again. */
import { canonicalCrop, type InfestationLesson, type IsoDay, type RuleRecord, writtenThreshold } from '@duskwatch/core';

export type KnownInfestation = Extract<InfestationLesson['learned'], { known: true }>;

/** What an answer to the suggestion names: without its figure, so that declined stays declined as samples are added. */
export const suggestionKey = ({ insect, crop, kind, design }: InfestationLesson): string =>
  `threshold ${insect} ${crop} ${kind} ${design}`;

const LEARNED = 'learned';

export function ownRule(lesson: InfestationLesson, learned: KnownInfestation, on: IsoDay, source: string): RuleRecord {
  const { insect, crop, design, inForce } = lesson;
  return {
    ruleId: `${LEARNED} ${insect} ${crop} ${design} ${on}`.slice(0, 80),
    crop,
    insect,
    design,
    stages: [...(inForce?.stages ?? [])],
    threshold: writtenThreshold(learned.suggestion.perNight),
    per: 'night',
    intervalDays: inForce?.intervalDays ?? null,
    validFrom: on,
    validTo: null,
    source,
  };
}

/** Whether a rule is one that somebody made of this suggestion. */
export const isLearned = (rule: RuleRecord, { insect, crop, design }: InfestationLesson): boolean =>
  rule.ruleId.startsWith(LEARNED) &&
  rule.insect === insect &&
  canonicalCrop(rule.crop) === crop &&
  rule.design === design &&
  rule.validTo === null;
