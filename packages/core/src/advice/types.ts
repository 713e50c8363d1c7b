/** Advice is a value: a verb, a date, and the records and numbers it rests on. Wording is made at the edge. */

import type { IsoDay, TemperatureUnit } from '../base/index.ts';
import type { EventId, LocalName, Standing } from '../catalogue/types.ts';
import type { CatchInterval, NoInformation, UnusableTrap } from '../catch/types.ts';
import type { BiofixRule } from '../flight/types.ts';
import type { Condition, TrapDesign } from '../records/schema.ts';

/** The five verbs, and `none` for a field and insect that are out of season together. */
export type Verb = 'watch' | 'scout' | 'decide' | 'covered' | 'blind' | 'none';
export type Confidence = 'high' | 'moderate' | 'low';

export interface CheckEvidence {
  readonly trapId: string;
  readonly from: IsoDay;
  readonly to: IsoDay;
  /** The `visit` of each record of the last day that it rests on. */
  readonly visits: readonly number[];
  readonly nights: number;
  readonly count: number | null;
  readonly others: number | null;
  readonly condition: Condition;
  readonly lureAgeDays: number | null;
  readonly lureLifeDays: number | null;
}

/** The program's own dispersion, with about 95 % limits, and the counts behind it; or the assumed one. */
export type KBasis =
  | { readonly from: 'own-checks'; readonly low: number; readonly high: number; readonly counts: number }
  | { readonly from: 'assumed'; readonly why: 'too-few-checks' | 'no-scatter-found' | 'no-fit' };

/** The scatter that the k of a rate means, with its 80 % limits, and the program's own visits behind it. */
export interface VisitScatter {
  readonly between: 'visits-of-one-trap';
  readonly from: 'prior' | 'own-checks';
  readonly low: number;
  readonly high: number;
  readonly visits: number;
  readonly traps: number;
}

export type Evidence =
  /** Why field and insect do not meet now. */
  | {
      readonly kind: 'out-of-season';
      readonly why: 'not-a-host' | 'not-planted' | 'harvested' | 'harvest-stop' | 'stage';
      readonly date: IsoDay | null;
      readonly days: number | null;
    }
  | {
      readonly kind: 'stage';
      readonly stage: string;
      readonly observedOn: IsoDay;
      readonly ageDays: number;
      readonly needed: readonly string[];
      readonly susceptible: boolean;
    }
  | {
      readonly kind: 'rate';
      readonly design: TrapDesign;
      readonly perNight: number;
      readonly low: number;
      readonly high: number;
      readonly level: number;
      readonly count: number;
      readonly trapNights: number;
      readonly model: 'negative-binomial' | 'gamma-poisson';
      /** Median of what is known of k. */
      readonly k: number | null;
      /** Which scatter k is, and where it is from. */
      readonly scatter: VisitScatter;
      readonly checks: readonly CheckEvidence[];
    }
  | {
      readonly kind: 'threshold';
      readonly ruleId: string;
      readonly threshold: number;
      readonly per: 'night' | 'week';
      readonly rate: number;
      readonly reached: boolean;
      readonly probabilityAbove: number;
      readonly nearbyCrop: string | null;
    }
  | {
      readonly kind: 'tier';
      readonly ruleId: string;
      readonly from: number | null;
      readonly below: number | null;
      readonly rate: number;
      readonly intervalDays: number | null;
      readonly probabilityAbove: number;
    }
  | {
      readonly kind: 'weather-adjustment';
      readonly when: 'maxima-below' | 'maxima-above';
      readonly temperatureC: number;
      readonly days: number;
      readonly addDays: number;
      readonly applied: boolean | null;
      readonly source: string;
    }
  | {
      readonly kind: 'accumulation';
      readonly nights: number;
      readonly trapNights: number;
      readonly perTrap: number;
      readonly atThreshold: number;
      readonly share: number;
      /** Enough of the threshold, night after night, to send somebody into the field. */
      readonly addsUp: boolean;
    }
  | {
      readonly kind: 'biofix';
      readonly rule: BiofixRule | { readonly kind: 'user' };
      readonly on: IsoDay;
      readonly earliest: IsoDay;
      readonly trapId: string | null;
    }
  | {
      readonly kind: 'event';
      readonly modelId: string;
      readonly event: EventId;
      readonly generation: number | null;
      /** Degree-days from the model's start, in `unit`·d. */
      readonly from: number;
      readonly to: number | null;
      readonly unit: TemperatureUnit;
      readonly heatSoFar: number;
      readonly heatThrough: IsoDay;
      readonly bridgedDays: number;
      readonly status: 'ahead' | 'now' | 'past';
      /** Day the event was reached, or the day it is expected with its spread. */
      readonly expected: {
        readonly early: IsoDay;
        readonly middle: IsoDay;
        readonly late: IsoDay;
        /** True when `late` is only as far as is looked ahead: it may come later still, or not at all. */
        readonly lateOpen: boolean;
        readonly method: 'reached' | 'own-forecast' | 'past-years' | 'recent-days';
        readonly years: number;
        /** Last day of the user's own weather forecast that the dates rest on; null: none was used. */
        readonly forecastThrough: IsoDay | null;
      } | null;
    }
  | {
      readonly kind: 'sample';
      readonly sampledOn: IsoDay;
      readonly what: string;
      readonly examined: number;
      /** Null when nobody wrote how many. */
      readonly infested: number | null;
      readonly share: number | null;
      readonly ruleId: string | null;
      readonly ruleShare: number | null;
      readonly reached: boolean | null;
      readonly withInsect: string | null;
    }
  | {
      readonly kind: 'treatment';
      readonly appliedOn: IsoDay;
      readonly product: string;
      /** Day on which the protection typed from the label ends; null when none was typed. */
      readonly protectsUntil: IsoDay | null;
      /** Days between decisions that the rule gives at the present catch; null when it asks for none or gives none. */
      readonly intervalDays: number | null;
      /** First day no longer covered, by the earlier of the two; null when neither says how long the treatment lasts. */
      readonly coversUntil: IsoDay | null;
      /** Which of them it was; `assumed` where neither is known. */
      readonly endsBy: 'label' | 'rule' | 'assumed' | null;
      readonly state: 'covering' | 'lapsed' | 'unknown';
    }
  | {
      readonly kind: 'trap-unusable';
      readonly trapId: string;
      readonly design: TrapDesign;
      readonly why: UnusableTrap['why'];
      readonly since: IsoDay | null;
      readonly nights: number | null;
    }
  | { readonly kind: 'lure-spent'; readonly trapId: string; readonly ageDays: number; readonly lifeDays: number }
  | { readonly kind: 'lure-unknown'; readonly trapIds: readonly string[] }
  | {
      readonly kind: 'missing';
      readonly what:
        | 'trap'
        | 'rule'
        | 'stage'
        | 'weather'
        | 'weather-source'
        | 'model'
        | 'biofix'
        | 'crop'
        | 'nearby-crop'
        | 'protection';
      readonly from: IsoDay | null;
      readonly to: IsoDay | null;
      readonly detail: string | null;
    }
  | {
      readonly kind: 'other-rule';
      readonly ruleId: string;
      readonly region: string;
      readonly threshold: number | null;
      readonly per: 'night' | 'week' | null;
      readonly source: string;
    }
  | {
      readonly kind: 'other-design';
      readonly design: TrapDesign;
      readonly perNight: number;
      readonly ratio: readonly [number, number] | null;
      readonly against: TrapDesign | null;
      readonly adjusted: readonly [number, number] | null;
      readonly source: string | null;
    }
  /** What the moths caught have left in the field, and when it is worth going. */
  | {
      readonly kind: 'larvae';
      readonly modelId: string;
      readonly source: string;
      readonly standing: Standing;
      /** Heat before a moth lays, and from egg to hatch, in `unit`·d. */
      readonly heat: { readonly beforeLaying: number; readonly egg: number; readonly unit: TemperatureUnit };
      readonly design: TrapDesign;
      /** Moths caught in the nights from `from` to `to`, all traps together. */
      readonly moths: number;
      readonly traps: number;
      readonly from: IsoDay;
      readonly to: IsoDay;
      readonly unknownNights: number;
      readonly checks: readonly CheckEvidence[];
      /** The day worth going, or the day read where none comes. */
      readonly on: IsoDay;
      /** Shares of the offspring in the field on that day: eggs and larvae, none grown beyond. They add up to 1. */
      readonly shares: Readonly<Record<'egg' | 'small-larva' | 'large-larva' | 'larva', number>> | null;
      readonly lookFor: 'nothing-yet' | 'egg' | 'small-larva' | 'large-larva' | 'larva';
      /** Where to look for each stage that is a tenth of them or more; none where the catalogue has no word. */
      readonly places: readonly {
        readonly stage: 'egg' | 'small-larva' | 'large-larva' | 'larva';
        readonly where: LocalName;
        readonly source: string;
        readonly standing: Standing;
      }[];
      /** First day small larvae are a tenth of the offspring or more, with its 80 % window; null: not within the days looked ahead. */
      readonly worthGoing: LarvaeDates | null;
      /** Days by which a tenth and half of the eggs have hatched; null: later than looked ahead. */
      readonly hatch: { readonly ten: IsoDay | null; readonly half: IsoDay | null };
    }
  /** What to look at in the field, how much of it, and the figure it is held against. */
  | {
      readonly kind: 'sampling';
      readonly ruleId: string | null;
      readonly unit: string;
      readonly sign: string;
      readonly units: number;
      readonly places: number | null;
      readonly share: number;
      readonly source: string;
    }
  | {
      readonly kind: 'trend';
      readonly design: TrapDesign;
      readonly direction: 'rising' | 'falling' | 'unclear';
      readonly perNight: number;
      readonly low: number;
      readonly high: number;
      readonly level: number;
      readonly visits: number;
    }
  | {
      readonly kind: 'question';
      readonly question: 'count-went-down' | 'many-look-alikes';
      readonly trapId: string;
      readonly on: IsoDay;
      readonly got: number;
      readonly before: number;
    };

export interface LarvaeDates {
  readonly early: IsoDay;
  readonly middle: IsoDay;
  readonly late: IsoDay;
  readonly lateOpen: boolean;
  /** `reached`: the heat has come. */
  readonly method: 'reached' | 'own-forecast' | 'past-years' | 'recent-days';
  readonly years: number;
}

export type Caution =
  /** The label is the law; a licensed adviser decides with the grower. */
  | { readonly kind: 'label-and-adviser' }
  | { readonly kind: 'bees' }
  | { readonly kind: 'reentry'; readonly until: IsoDay; readonly hours: number; readonly product: string }
  | { readonly kind: 'preharvest'; readonly earliestHarvest: IsoDay; readonly harvestOn: IsoDay | null; readonly product: string }
  | { readonly kind: 'reads-low'; readonly why: 'spent-lure' | 'doubtful-check' }
  | { readonly kind: 'threshold-is-estimate' }
  | { readonly kind: 'rule-from-elsewhere'; readonly region: string }
  | { readonly kind: 'rule-design-unstated' }
  | { readonly kind: 'designs-not-pooled'; readonly designs: readonly TrapDesign[] }
  | { readonly kind: 'few-nights'; readonly trapNights: number }
  | { readonly kind: 'stage-old'; readonly ageDays: number }
  | { readonly kind: 'overdue'; readonly since: IsoDay };

export interface RuleReference {
  readonly id: string;
  readonly kind: 'catch-threshold' | 'catch-table' | 'infestation' | 'heat-scout';
  readonly region: string;
  readonly standing: Standing;
}

export interface Advice {
  /** field_id */
  readonly field: string;
  readonly insect: string;
  readonly verb: Verb;
  /** The date the verb is good for: next check, scout by, decide by, covered until. */
  readonly by: IsoDay | null;
  /** Moths per trap per night behind the verb; null when there is none to show. */
  readonly rate: number | null;
  readonly interval: readonly [number, number] | null;
  /** Days between protective decisions that the rule gives; null when it gives none. */
  readonly intervalDays: number | null;
  readonly probabilityAbove: number | null;
  readonly because: readonly Evidence[];
  readonly cautions: readonly Caution[];
  readonly confidence: Confidence | null;
  readonly rule: RuleReference | null;
  readonly source: string | null;
}

export type { CatchInterval, NoInformation };
