/** A season plan is a value: what to hang, where, how many, when, and what each choice rests on. */

import type { IsoDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import type { TrapDesign } from '../records/schema.ts';
import type { HangBy } from './hanging-date.ts';
import type { plannedDesignSchema, plannedNumberSchema, plannedRuleSchema, plannedTakeDownSchema } from './schema.ts';
import type { TrapWishes } from './trap-table.ts';

export interface PlanRequest {
  /** The year in which the growing year begins: 1 January, south of the equator 1 July. */
  readonly season: number;
  readonly insects: readonly string[];
  /** field_ids; left out: all. */
  readonly fields?: readonly string[] | undefined;
  /** Crops; left out: all. */
  readonly crops?: readonly string[] | undefined;
  /** Fields that one set of traps is to inform; left out: fields that one trap has informed before. */
  readonly areas?: readonly (readonly string[])[] | undefined;
  /** Days of the week on which traps are checked, Monday 1 to Sunday 7; twice a week by default. */
  readonly checkWeekdays?: readonly number[] | undefined;
  readonly wishes?: TrapWishes | undefined;
  readonly leadDays?: number | undefined;
  /** No more traps than this in all; left out: as many as the plan proposes. */
  readonly trapBudget?: number | undefined;
  /** What the user decides, by insect. */
  readonly stated?: Readonly<Record<string, StatedPlan>> | undefined;
  /** What the user decides for the area that holds a field, by `cellKey`; before what is decided for the insect. */
  readonly statedAt?: Readonly<Record<string, StatedPlan>> | undefined;
}

export interface StatedPlan {
  readonly design?: TrapDesign | undefined;
  /** Traps per area. */
  readonly traps?: number | undefined;
  /** Goes before the day that heat proposes. */
  readonly hangOn?: IsoDay | undefined;
  readonly takeDownOn?: IsoDay | undefined;
  /** Days the maker says the lure lasts. */
  readonly lureLifeDays?: number | undefined;
}

export type PlannedDesign = Shape<typeof plannedDesignSchema>;

export type PlannedNumber = Shape<typeof plannedNumberSchema>;

export type PlannedRule = Shape<typeof plannedRuleSchema>;

export type PlannedTakeDown = Shape<typeof plannedTakeDownSchema>;

/** One insect in one area. */
export interface PlanLine {
  /** What the line is about; the same from one version of a plan to the next. */
  readonly id: string;
  readonly insect: string;
  readonly fields: readonly string[];
  /** Farm of the first field. */
  readonly farm: string;
  readonly design: PlannedDesign;
  readonly rule: PlannedRule | null;
  readonly traps: PlannedNumber;
  readonly hang: HangBy;
  readonly takeDown: PlannedTakeDown;
  /** After the hanging, up to the taking down, which is a check too; empty while either is not known. */
  readonly checkDays: readonly IsoDay[];
  /** The shortest stretch between the days of the week chosen. */
  readonly nightsBetweenChecks: number;
  /** `ends-before-it-begins`: the crop is harvested before the flight. */
  readonly caution: 'ends-before-it-begins' | null;
  /** As the user states it; null: as `lureLife` finds it. */
  readonly lureLifeDays: number | null;
}

export interface SeasonPlan {
  readonly season: number;
  readonly madeOn: IsoDay;
  readonly lines: readonly PlanLine[];
  /** Chosen pairs without a line, and why. */
  readonly leftOut: readonly {
    readonly field: string;
    readonly insect: string;
    readonly why: 'not-a-host' | 'no-rule' | 'no-such-field';
  }[];
  readonly trapsInAll: number;
}
