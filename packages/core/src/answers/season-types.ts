/** What the season pages show. */
import type { CatchDispersion } from '../advice/dispersion.ts';
import type { Verb } from '../advice/types.ts';
import type { IsoDay } from '../base/day.ts';
import type { Assumption, Practice } from '../catalogue/types.ts';
import type {
  CostKind,
  HangBy,
  LureChange,
  LureLife,
  LureNeed,
  LureOrder,
  PastFlight,
  PlacingQuestion,
  PlannedDesign,
  PlannedNumber,
  PlannedRule,
  PlannedTakeDown,
  Price,
  StockUse,
  Total,
  TrapNumberRow,
  TrapStock,
} from '../planning/index.ts';
import type { EffectOnAdvice, PlanDeviation } from '../planning/mid-season.ts';
import type { KeptNow } from '../planning/stock-now.ts';
import type { PlanRecord, PricedItem, PriceRecord, SeasonRecord, StockRecord, TrapDesign, Weekday } from '../records/schema.ts';
import type { InsectName } from './types.ts';

export interface SeasonField {
  readonly fieldId: string;
  readonly name: string;
  readonly farm: string;
  readonly crop: string;
}

/** A past year's first flight; `carried`: the same wait in the season planned. */
export type CarriedFlight = PastFlight & { readonly carried: IsoDay | null };

/** One insect in one area, with what was decided for it. */
export interface SeasonLineView {
  readonly id: string;
  readonly insect: string;
  readonly farm: string;
  readonly fields: readonly SeasonField[];
  readonly design: PlannedDesign;
  readonly rule: PlannedRule | null;
  readonly traps: PlannedNumber;
  /** Key into `SeasonView.numbers`; null without a rule or a design. */
  readonly numbers: string | null;
  readonly hang: HangBy;
  readonly flights: readonly CarriedFlight[];
  readonly takeDown: PlannedTakeDown;
  readonly checks: number;
  readonly nightsBetweenChecks: number;
  readonly caution: 'ends-before-it-begins' | null;
  readonly lureLife: LureLife;
  readonly changes: readonly LureChange[];
  /** The row for this area alone, and the one for the insect everywhere; null: not written. */
  readonly decidedHere: PlanRecord | null;
  readonly decidedEverywhere: PlanRecord | null;
}

/** How good a number of traps is, for every number and rhythm worth looking at. */
export interface TrapNumbers {
  readonly key: string;
  readonly insect: string;
  readonly design: TrapDesign;
  readonly rule: PlannedRule;
  readonly dispersion: CatchDispersion;
  /** Accepted risks. */
  readonly riskMissed: number;
  readonly riskFalse: number;
  readonly aboveShare: number;
  readonly belowShare: number;
  readonly mostTraps: number;
  readonly planned: { readonly nightsBetweenChecks: number; readonly enough: number; readonly isEnough: boolean };
  readonly rows: readonly TrapNumberRow[];
}

export interface StockRow extends StockUse {
  readonly record: StockRecord;
  readonly takenSince: number;
  readonly expired: boolean;
}

/** A lure that hangs now. */
export interface LureDue {
  readonly trapId: string;
  readonly station: string;
  readonly insect: string;
  readonly placedOn: IsoDay | null;
  /** Null: nobody wrote how long it lasts, or none was placed. */
  readonly ends: IsoDay | null;
  /** The last check in the trap's rhythm up to the end of its life; a day of its own where there is none. */
  readonly changeOn: IsoDay | null;
  readonly overdueDays: number;
}

export interface SeasonLures {
  /** `inAll`: placed and in reserve. */
  readonly needs: readonly (LureNeed & { readonly inAll: number })[];
  /** Every month in which lures are placed, ascending. */
  readonly months: readonly string[];
  readonly orders: readonly (LureOrder & { readonly cost: { readonly low: number; readonly high: number } | null })[];
  readonly stock: readonly StockRow[];
  readonly due: readonly LureDue[];
  /** Lines that take lures, but no one knows how many: hanging or taking down is not known. */
  readonly unknownLines: readonly string[];
  readonly cautions: readonly Practice[];
}

export interface BudgetRow {
  readonly kind: CostKind;
  /** Design, insect or farm. */
  readonly of: string | null;
  readonly quantity: number | null;
  readonly price: Price | null;
  readonly low: number | null;
  readonly high: number | null;
}

export interface SeasonBudgetView {
  readonly currency: string;
  readonly rows: readonly BudgetRow[];
  readonly total: Total;
  readonly byFarm: readonly (Total & { readonly farm: string })[];
  readonly byField: readonly (Total & SeasonField)[];
  readonly byInsect: readonly (Total & { readonly insect: string })[];
  readonly traps: readonly (TrapStock & { readonly from: KeptNow['from'] | null })[];
  readonly missing: readonly { readonly kind: CostKind; readonly of: string | null; readonly why: 'price' | 'quantity' }[];
  readonly replaces: readonly PriceRecord[];
  /** The user's own sum for what is replaced; null: nothing is entered. */
  readonly replacedTotal: number | null;
  readonly otherCurrency: readonly PriceRecord[];
  /** Prices that may be entered: everything the plan takes. */
  readonly askable: readonly { readonly item: PricedItem; readonly of: string }[];
}

export type SeasonQuestion =
  | PlacingQuestion
  | { readonly kind: 'no-such-area'; readonly insect: string; readonly area: string }
  | { readonly kind: 'no-such-field'; readonly field: string; readonly insect: string };

export interface SeasonView {
  readonly program: { readonly name: string; readonly invented: boolean };
  readonly season: number;
  readonly from: IsoDay;
  /** First day of the next growing year. */
  readonly to: IsoDay;
  readonly today: IsoDay;
  readonly state: 'ahead' | 'running' | 'over';
  /** Seasons with something written, the running one and the next. */
  readonly seasons: readonly number[];
  /** What the plan asks for; null: nothing is written, and all of it is proposed. */
  readonly written: SeasonRecord | null;
  readonly checkWeekdays: readonly Weekday[];
  readonly insects: readonly InsectName[];
  readonly crops: readonly string[];
  readonly fields: readonly SeasonField[];
  readonly lines: readonly SeasonLineView[];
  /** Pairs without a line because the crop hosts the insect not, counted by insect. */
  readonly notHosts: readonly { readonly insect: string; readonly fields: number }[];
  readonly trapsInAll: number;
  readonly trapsProposed: number;
  readonly numbers: readonly TrapNumbers[];
  readonly lures: SeasonLures;
  /** Null: not for whoever asks. */
  readonly budget: SeasonBudgetView | null;
  readonly questions: readonly SeasonQuestion[];
  readonly assumptions: readonly (Assumption & { readonly written: number | null })[];
  readonly cautions: readonly Practice[];
}

export interface SeasonTruthLine {
  readonly id: string;
  readonly insect: string;
  readonly farm: string;
  readonly fields: readonly SeasonField[];
  readonly planned: { readonly traps: number; readonly hangOn: IsoDay | null; readonly takeDownOn: IsoDay | null };
  readonly deviations: readonly PlanDeviation[];
  readonly effects: readonly EffectOnAdvice[];
  readonly checksMade: number | null;
  readonly advice: readonly { readonly field: string; readonly name: string; readonly verb: Verb }[];
}

export interface SeasonTruthView {
  readonly season: number;
  readonly today: IsoDay;
  readonly state: SeasonView['state'];
  readonly lines: readonly SeasonTruthLine[];
}
