/** How much to lean on a verb: a plain grade from what it rests on, not a probability. */
import { ASSUMPTIONS } from '../catalogue/index.ts';
import type { DesignFinding } from './catch-finding.ts';
import type { Confidence, Evidence, Verb } from './types.ts';

/** Nothing was caught, and with a catch of nothing the true rate may still be at the rule's figure. */
export function nothingMeansLittle({ rate, thresholdPerNight }: DesignFinding): boolean {
  return rate.count === 0 && thresholdPerNight !== null && rate.high >= thresholdPerNight;
}

/**
 * `low` when the evidence is thin or biased, `high` when it is ample and far from the rule's figure, else `moderate`.
 * Null for `blind` and `none`, which claim nothing about the insect.
 */
export function confidenceOf(verb: Verb, lead: DesignFinding | null, because: readonly Evidence[]): Confidence | null {
  if (verb === 'blind' || verb === 'none') return null;
  if (verb === 'covered') return coverConfidence(because);
  const event = because.find((item) => item.kind === 'event');
  if (because[0]?.kind === 'event') return event?.expected?.method === 'recent-days' ? 'low' : 'moderate';
  if (because[0]?.kind === 'larvae') return because[0].worthGoing?.method === 'recent-days' ? 'low' : 'moderate';
  if (because[0]?.kind === 'sample') return sampleConfidence(because[0]);
  if (!lead || lead.probabilityAbove === null) return 'low';
  const thin = lead.rate.trapNights < ASSUMPTIONS.fewTrapNights.value || lead.doubtful || lead.readsLow;
  if (thin || nothingMeansLittle(lead) || lead.doubts.length > 0) return 'low';
  if (verb === 'scout') return 'moderate';
  const sure = verb === 'decide' ? lead.probabilityAbove : 1 - lead.probabilityAbove;
  const lureKnown = !because.some((item) => item.kind === 'lure-unknown');
  return sure >= 0.9 && lureKnown ? 'high' : sure >= 0.6 ? 'moderate' : 'low';
}

/** Cover that rests on an assumed figure, or on the rule alone, is less sure than one with the label's figure. */
function coverConfidence(because: readonly Evidence[]): Confidence {
  const treatment = because.find((item) => item.kind === 'treatment');
  if (treatment?.endsBy === 'assumed') return 'low';
  return treatment?.protectsUntil === null ? 'moderate' : 'high';
}

/** High when its limits exclude the rule's figure; a full sample close to the figure settles it with less. */
function sampleConfidence({ examined, settledBy, low, high, ruleShare }: Evidence & { kind: 'sample' }): Confidence {
  const clear = low !== null && high !== null && ruleShare !== null && (low > ruleShare || high < ruleShare);
  if (!clear && settledBy === 'full-sample') return 'low';
  return examined >= ASSUMPTIONS.sampleUnitsFair.value ? 'high' : 'moderate';
}
