/** Facts of the trade as data. Each carries where it comes from and how far to trust it. */
import type { Shape } from '../base/shape.ts';
import type { HeatRule } from '../heat/types.ts';
import type { TrapDesign } from '../records/schema.ts';
import type { Region } from './regions.ts';
import type {
  assumptionSchema,
  biofixRuleSchema,
  eventSchema,
  localTextSchema,
  practiceSchema,
  standingSchema,
  workSchema,
} from './schema.ts';

export type Standing = Shape<typeof standingSchema>;
export type BiofixRule = Shape<typeof biofixRuleSchema>;
export type LocalText = Shape<typeof localTextSchema>;
export type LocalName = LocalText;

export type Work = Shape<typeof workSchema>;

export interface Sourced {
  /** A work as it is cited, in its own language, or one of the remarks that `citation` knows. */
  readonly source: string;
  readonly standing: Standing;
  /** What is cited, in full; there for everything published. */
  readonly works?: readonly Work[];
  /** What a reader must know to weigh the figure: a derivation, a rounding, a choice between readings. */
  readonly note?: LocalText | null;
}

export interface Insect {
  /** Slug of the scientific name. */
  readonly id: string;
  readonly scientificName: string;
  readonly commonName: LocalName;
  /** Crop slugs on which it is trapped and scouted for. */
  readonly hosts: readonly string[];
  /** Other crops of the catalogue that it feeds on: no rule is known there, yet they are hosts too. */
  readonly feedsOn: readonly string[];
  readonly hostsSource: Sourced;
  /** The biofix its models and rules start from; null: none in the catalogue. */
  readonly biofix: (Sourced & { readonly rule: BiofixRule }) | null;
  /** What tells it from others in a trap. */
  readonly marks: Sourced & { readonly note: LocalText };
  readonly lookAlikes: readonly (Sourced & {
    /** Its slug, where the catalogue holds it too. */
    readonly insect?: string;
    readonly name: LocalName;
    readonly note: LocalText;
  })[];
}

export type EventId = Shape<typeof eventSchema>;

/** Something a model dates, in degree-days from the model's start. */
export interface ModelEvent {
  readonly event: EventId;
  /** 1 for the first generation (or overwintered flight), 2 for the next; null when not tied to one. */
  readonly generation: number | null;
  readonly from: number;
  /** End of a window; null for a moment. */
  readonly to: number | null;
  /** True when the source itself says "about". */
  readonly approximate?: boolean;
}

/** How long a life stage lasts, in degree-days. */
export interface StageDuration {
  readonly stage: 'egg' | 'small-larva' | 'large-larva' | 'larva' | 'pupa' | 'pre-egg-laying-adult';
  readonly lasts: number;
}

export interface PhenologyModel extends Sourced {
  readonly id: string;
  readonly insect: string;
  readonly name: LocalName;
  readonly heat: HeatRule;
  /** Where the sum begins: a calendar day, the biofix, or the start of a life stage. */
  readonly start:
    | { readonly kind: 'calendar'; readonly month: number; readonly date: number }
    | { readonly kind: 'biofix' }
    | { readonly kind: 'stage' };
  /** Where the start is from when not from the model's own source. */
  readonly startSource?: Sourced;
  readonly events: readonly ModelEvent[];
  readonly stages: readonly StageDuration[];
  readonly note: LocalText | null;
}

/**
 * What a rule may do once its figure is reached: ask for a decision by itself, or send somebody to look at the plants,
 * which then decide.
 */
export type RuleMay = 'decide' | 'send-scouting';

interface RuleBase extends Sourced {
  readonly id: string;
  readonly insect: string;
  readonly crops: readonly string[];
  /** Null: any. */
  readonly growthHabits: readonly string[] | null;
  /** Stages at which the rule holds (canonical words); null: any stage. */
  readonly stages: readonly string[] | null;
  /** Where the rule was made for; empty when it is not tied to a region or the source names none. */
  readonly region: Region | '';
  readonly may: RuleMay;
  /** Where that is from when not from the rule's own source. */
  readonly maySource?: Sourced;
  /** Days that the biology leaves for a decision after the figure was reached, where more or fewer than usual. */
  readonly decideWithin?: Sourced & { readonly days: number };
}

export interface CatchThresholdRule extends RuleBase {
  readonly kind: 'catch-threshold';
  /** Null: the source does not say which design. */
  readonly design: TrapDesign | null;
  readonly threshold: number;
  readonly per: 'night' | 'week';
  readonly intervalDays: number | null;
  /** A higher threshold while a neighbouring crop draws the moths away. */
  readonly unless: { readonly nearbyCrop: string; readonly stages: readonly string[]; readonly threshold: number } | null;
}

export interface CatchTier {
  /** Moths per trap per night from which the tier holds. */
  readonly from: number;
  /** True when the tier begins only above `from`, not at it. */
  readonly exclusive: boolean;
  readonly intervalDays: number;
}

/** A change to the interval between protective decisions in cool or hot weather. */
export interface WeatherAdjustment extends Sourced {
  readonly when: 'maxima-below' | 'maxima-above';
  readonly temperatureC: number;
  /** Consecutive last days that must qualify. */
  readonly days: number;
  readonly addDays: number;
}

export interface CatchTableRule extends RuleBase {
  readonly kind: 'catch-table';
  readonly design: TrapDesign | null;
  readonly tiers: readonly CatchTier[];
  readonly adjustments: readonly WeatherAdjustment[];
  /** No protective decision when fewer days than this are left to harvest. */
  readonly harvestStopDays: number | null;
}

export interface InfestationRule extends RuleBase {
  readonly kind: 'infestation';
  /** What is looked at, and the words accepted for it in `samples.kind`. */
  readonly unit: 'plants' | 'ears' | 'fruit';
  readonly sign: 'infested' | 'eggs' | 'damaged' | 'egg-masses';
  /** Share of units from which the rule is reached; a range when the source gives one. */
  readonly share: number;
  readonly shareHigh: number | null;
  readonly examine: {
    readonly places: number | null;
    readonly unitsPerPlace: number | null;
    readonly units: number;
    readonly unitsHigh?: number;
  };
  /** With this other insect's infestation added, `combinedShare` is the figure. */
  readonly combinedWith: { readonly insect: string; readonly share: number } | null;
  /** Where the size of the sample is from when not from the rule's own source. */
  readonly examineSource?: Sourced;
}

/** When heat says that there is something in the field to look for. */
export interface HeatScoutRule extends RuleBase {
  readonly kind: 'heat-scout';
  readonly modelId: string;
  /** Degree-days after the model's start, in the model's unit. */
  readonly from: number;
  readonly to: number;
  readonly lookFor: EventId;
  readonly examineUnits: number | null;
  /** Where the size of the sample is from when not from the rule's own source. */
  readonly examineSource?: Sourced;
}

export type ActionRule = CatchThresholdRule | CatchTableRule | InfestationRule | HeatScoutRule;

/** Where people find one stage of an insect on a crop, and the unit of a sample on which it is looked for. */
export interface Recognition extends Sourced {
  readonly id: string;
  readonly insect: string;
  readonly crops: readonly string[];
  readonly stage: 'egg' | 'small-larva' | 'large-larva' | 'larva';
  readonly unit: InfestationRule['unit'];
  /** Continues the name of the stage: “eggs” – “one by one on fresh silks”. */
  readonly where: LocalText;
}

/** All that the catalogue holds of one insect: what its folder gives. */
export interface InsectEntry {
  readonly insect: Insect;
  readonly models: readonly PhenologyModel[];
  readonly rules: readonly ActionRule[];
  readonly recognition: readonly Recognition[];
}

export interface DesignFacts extends Sourced {
  readonly design: TrapDesign;
  readonly name: LocalName;
  readonly heightM: number | null;
  readonly siting: LocalText;
  readonly costUsd: readonly [number, number] | null;
}

/** What one design catches as a share of another; used only with the range shown. */
export interface DesignRatio extends Sourced {
  readonly insect: string | null;
  readonly of: TrapDesign;
  readonly against: TrapDesign;
  readonly low: number;
  readonly high: number;
}

export type Practice = Shape<typeof practiceSchema>;
/** The work at hand when a practice matters. */
export type Act = Practice['act'];

export interface Crop {
  readonly id: string;
  readonly name: LocalName;
  /** In order of development. */
  readonly stages: readonly { readonly id: string; readonly name: LocalName; readonly bbch: readonly [number, number] }[];
  readonly stagesSource: Sourced;
}

export type Assumption = Shape<typeof assumptionSchema>;

export interface Catalogue {
  readonly insects: readonly Insect[];
  readonly crops: readonly Crop[];
  readonly models: readonly PhenologyModel[];
  readonly rules: readonly ActionRule[];
  readonly designs: readonly DesignFacts[];
  readonly designRatios: readonly DesignRatio[];
  readonly practices: readonly Practice[];
  readonly recognition: readonly Recognition[];
}
