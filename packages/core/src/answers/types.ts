/** What the screens show, ready to draw: shapes only, so that desk, phone and command line agree on numbers. */
import type { Advice, Evidence, Verb } from '../advice/types.ts';
import type { IsoDay, TemperatureUnit } from '../base/index.ts';
import type { EventId, LocalName, Standing } from '../catalogue/types.ts';
import type { Condition, TrapDesign } from '../records/schema.ts';

export interface SeasonPoint {
  readonly from: IsoDay;
  readonly to: IsoDay;
  /** Moths per trap per night over the traps of one design; null: no fit trap in those nights. */
  readonly perNight: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

export interface SeasonLine {
  readonly design: TrapDesign;
  readonly from: IsoDay;
  readonly to: IsoDay;
  readonly points: readonly SeasonPoint[];
  /** The rule's threshold in moths per trap per night; null when there is no catch rule. */
  readonly thresholdPerNight: number | null;
}

/** The catch of an earlier season by the traps of one design that informed a field, its days moved to this season's. */
export interface EarlierSeason {
  /** The year in which that season began. */
  readonly year: number;
  readonly design: TrapDesign;
  /** Where those traps stood. */
  readonly stations: readonly string[];
  readonly points: readonly SeasonPoint[];
}

type EvidenceOf<K extends Evidence['kind']> = Evidence & { readonly kind: K };

/** Why a cell has no date to give, in the words of the one piece of evidence that says it best. */
export type CellReason =
  | { readonly kind: 'out-of-season'; readonly why: EvidenceOf<'out-of-season'>['why'] }
  | { readonly kind: 'missing'; readonly what: EvidenceOf<'missing'>['what'] }
  | { readonly kind: 'trap-unusable'; readonly why: EvidenceOf<'trap-unusable'>['why'] }
  | { readonly kind: 'lure-spent' };

/** What a cell says of its advice, without what that rests on: of hundreds of fields nobody opens more than a few. */
export interface CellAdvice extends Pick<Advice, 'verb' | 'by' | 'rate' | 'interval' | 'confidence'> {
  readonly reason: CellReason | null;
}

export interface WeekCell {
  readonly advice: CellAdvice;
  /** As a small picture shows it: rates to three figures. */
  readonly line: SeasonLine | null;
}

export interface WeekField {
  readonly fieldId: string;
  readonly name: string;
  readonly farm: string;
  readonly crop: string;
  readonly growthHabit: string | null;
  readonly stage: { readonly stage: string; readonly observedOn: IsoDay } | null;
  /** In the order of `WeekView.insects`. */
  readonly cells: readonly WeekCell[];
}

export interface InsectName {
  readonly id: string;
  readonly scientificName: string;
  readonly commonName: LocalName;
}

export interface DueTrap {
  readonly trapId: string;
  readonly station: string;
  readonly insect: string;
  readonly why: 'check-due' | 'check-overdue' | 'unfit' | 'lure-due' | 'lure-overdue';
  readonly due: IsoDay;
  /** Days past due; 0 today. */
  readonly daysLate: number;
  /** A field whose advice rests on this trap; null when none of the week's does. */
  readonly fieldId: string | null;
}

export interface DueField {
  readonly fieldId: string;
  readonly name: string;
  readonly farm: string;
  readonly insect: string;
  readonly verb: Verb;
  readonly by: IsoDay | null;
}

export interface WeekView {
  readonly program: { readonly name: string; readonly invented: boolean };
  readonly on: IsoDay;
  /** Newest check and newest weather day known on that date; null when there are none. */
  readonly countsTo: IsoDay | null;
  readonly weatherTo: IsoDay | null;
  readonly insects: readonly InsectName[];
  readonly due: {
    readonly decisions: readonly DueField[];
    readonly scouting: readonly DueField[];
    readonly checks: readonly DueTrap[];
    readonly lures: readonly DueTrap[];
  };
  readonly fields: readonly WeekField[];
}

export interface CheckMark {
  readonly trapId: string;
  readonly on: IsoDay;
  /** The `visit` of each record of that day. */
  readonly visits: readonly number[];
  readonly nights: number;
  readonly count: number | null;
  readonly others: number | null;
  readonly condition: Condition;
  readonly lureAgeDays: number | null;
  readonly lurePastLife: boolean | null;
  readonly note: string | null;
}

export interface HeatStrip {
  readonly modelId: string;
  readonly modelName: LocalName;
  readonly source: string;
  readonly standing: Standing;
  readonly unit: TemperatureUnit;
  readonly startsOn: IsoDay;
  readonly startKind: 'calendar' | 'biofix';
  /** Cumulative degree-days by day; null from the first day that could not be summed. */
  readonly days: readonly { readonly date: IsoDay; readonly total: number | null; readonly bridged: boolean }[];
  readonly events: readonly {
    readonly event: EventId;
    readonly generation: number | null;
    readonly from: number;
    readonly to: number | null;
    readonly status: 'ahead' | 'now' | 'past';
    readonly expected: {
      readonly early: IsoDay;
      readonly middle: IsoDay;
      readonly late: IsoDay;
      readonly lateOpen: boolean;
      readonly method: 'reached' | 'own-forecast' | 'past-years' | 'recent-days';
      readonly years: number;
      readonly forecastThrough: IsoDay | null;
    } | null;
  }[];
  readonly gap: { readonly from: IsoDay; readonly to: IsoDay } | null;
}

export interface FieldInsectView {
  readonly insect: InsectName;
  readonly advice: Advice;
  readonly lines: readonly SeasonLine[];
  /** Newest first. */
  readonly earlierSeasons: readonly EarlierSeason[];
  readonly checks: readonly CheckMark[];
  readonly traps: readonly {
    readonly trapId: string;
    readonly station: string;
    readonly design: TrapDesign;
    readonly hungOn: IsoDay;
    readonly takenDownOn: IsoDay | null;
  }[];
  readonly lures: readonly { readonly trapId: string; readonly placedOn: IsoDay; readonly lifeDays: number | null }[];
  readonly heat: readonly HeatStrip[];
  readonly samples: readonly {
    readonly sampledOn: IsoDay;
    readonly kind: string;
    readonly examined: number;
    readonly infested: number | null;
    readonly total: number | null;
  }[];
  readonly treatments: readonly { readonly appliedOn: IsoDay; readonly product: string; readonly protectsUntil: IsoDay | null }[];
}

export interface FieldView {
  readonly program: { readonly name: string; readonly invented: boolean };
  readonly on: IsoDay;
  readonly field: {
    readonly fieldId: string;
    readonly name: string;
    readonly farm: string;
    readonly crop: string;
    readonly growthHabit: string | null;
    readonly plantedOn: IsoDay | null;
    readonly harvestOn: IsoDay | null;
  };
  /** The span of the time axis. */
  readonly from: IsoDay;
  readonly to: IsoDay;
  readonly stages: readonly { readonly stage: string; readonly observedOn: IsoDay }[];
  readonly insects: readonly FieldInsectView[];
}
