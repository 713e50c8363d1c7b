/** Sentences for advice, in one language. Advice holds numbers and records; only here do they become words. */
import type { Advice, Caution, Confidence, Evidence, Verb } from '../advice/types.ts';
import type { IsoDay, TemperatureUnit } from '../base/index.ts';
import type { EventId, Standing } from '../catalogue/types.ts';
import type { Language } from '../people/person.ts';
import type { Condition, DecisionReason, DecisionRecord, SkipReason, TrapDesign, UnfitReason } from '../records/schema.ts';

export interface WordingOptions {
  /** Unit in which temperatures and sums of heat are shown; a model published in the other one is named in its own beside. */
  readonly temperature: TemperatureUnit;
  /** `Sun 13 July` or `Sun July 13`, where the language knows both. Default: the day first. */
  readonly dayOrder?: DayOrder | undefined;
}

export type DayOrder = 'day-month' | 'month-day';

export interface Wording {
  readonly language: Language;
  readonly verb: Readonly<Record<Verb, string>>;
  readonly confidence: Readonly<Record<Confidence, string>>;
  readonly standing: Readonly<Record<Standing, string>>;
  readonly design: Readonly<Record<TrapDesign, string>>;
  readonly condition: Readonly<Record<Condition, string>>;
  readonly unfitReason: Readonly<Record<UnfitReason, string>>;
  readonly skipReason: Readonly<Record<SkipReason, string>>;
  readonly event: Readonly<Record<EventId, string>>;
  readonly decision: Readonly<Record<DecisionRecord['decision'], string>>;
  readonly decisionReason: Readonly<Record<DecisionReason, string>>;
  /** `Sun 13 July`. */
  readonly day: (date: IsoDay) => string;
  /** A number as people read it: two figures that matter. */
  readonly figure: (value: number) => string;
  readonly percent: (share: number) => string;
  readonly insect: (id: string) => string;
  readonly crop: (id: string) => string;
  /** Where a rule was made for. */
  readonly region: (region: string) => string;
  /** `3.1 a night (2.2–4.3)`; null when the advice has no rate. */
  readonly rate: (advice: Pick<Advice, 'rate' | 'interval'>) => string | null;
  /** The date beside the verb: `by Sun 13 July`, `check Tue 15 July`, `3 days late, since Sat 12 July`. */
  readonly when: (advice: Pick<Advice, 'verb' | 'by' | 'dueSince'>) => string | null;
  /** One sentence that says what to do and the first reason for it. */
  readonly headline: (advice: Advice) => string;
  /** The reason for the verb in a few words that a grower reads while walking; the verb itself stands before it. */
  readonly inShort: (advice: Advice) => string;
  /** What the verb rests on, without what to do about it. */
  readonly grounds: (advice: Advice) => string;
  readonly evidence: (evidence: Evidence) => string;
  readonly caution: (caution: Caution) => string;
}
