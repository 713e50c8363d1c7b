/** Flights, dates to come and larvae of a field, and flights across a program: shapes to draw. */
import type { KBasis } from '../advice/types.ts';
import type { IsoDay, TemperatureUnit } from '../base/index.ts';
import type { EventId, LocalText, Standing } from '../catalogue/types.ts';
import type { FlightAgreement } from '../flight/agreement.ts';
import type { TrapDesign } from '../records/schema.ts';
import type { FieldFlights } from '../review/field-flights.ts';

/** When something comes: a day on which it came, or its 10, 50 and 90 % days. */
export interface DatesView {
  readonly early: IsoDay;
  readonly middle: IsoDay;
  readonly late: IsoDay;
  readonly lateOpen: boolean;
  readonly method: 'reached' | 'own-forecast' | 'past-years' | 'recent-days';
  readonly years: number;
}

export interface IntervalView {
  readonly low: number;
  readonly high: number;
}

export interface FlightMomentView extends IntervalView {
  /** Degree-days on the axis of the flights, with the 80 % interval. */
  readonly heat: number;
  /** Null: not dated. */
  readonly dates: DatesView | null;
}

export interface FlightView {
  readonly number: number;
  readonly moths: IntervalView & { readonly estimate: number };
  readonly start: FlightMomentView;
  readonly peak: FlightMomentView;
  readonly end: FlightMomentView;
  readonly flown: IntervalView & { readonly share: number };
  readonly status: 'to-come' | 'running' | 'over';
}

export interface SeasonFlights {
  readonly design: TrapDesign;
  readonly traps: number;
  readonly modelName: LocalText;
  readonly unit: TemperatureUnit;
  /** The day the heat axis begins, the heat so far, and the last day measured. */
  readonly axisFrom: IsoDay;
  readonly heatSoFar: number;
  readonly knownThrough: IsoDay;
  readonly list: readonly FlightView[];
  /** Numbers of flights tried, lowest BIC first: the first is the one shown. */
  readonly tried: readonly { readonly flights: number; readonly bic: number }[];
  readonly unsure: boolean;
  readonly level: number;
  readonly k: number | null;
  readonly kBasis: KBasis;
  readonly moths: number;
  readonly intervals: number;
  readonly leftOut: number;
  /** Moths per trap and night expected of each flight, night by night; heat after `knownThrough` is expected heat. */
  readonly curve: readonly { readonly on: IsoDay; readonly perNight: readonly number[] }[];
  readonly agreement: readonly Pick<
    FlightAgreement,
    'flight' | 'compared' | 'published' | 'tolerance' | 'difference' | 'verdict' | 'why'
  >[];
}

export interface ForecastEventView {
  readonly event: EventId;
  readonly generation: number | null;
  readonly begins: DatesView;
  /** What was expected with the weather known some days earlier, oldest first. */
  readonly before: readonly { readonly asOf: IsoDay; readonly dates: DatesView }[];
}

export interface ForecastView {
  readonly modelId: string;
  /** Last day of the user's own weather forecast that the dates rest on; null: none. */
  readonly forecastThrough: IsoDay | null;
  readonly events: readonly ForecastEventView[];
}

/** From the first moths of a catch to the last: the days on which one stage of their offspring is in the field. */
export interface StageDays {
  readonly from: IsoDay;
  /** Null: later than can be dated. */
  readonly to: IsoDay | null;
}

export interface LarvaeRow {
  readonly trapId: string;
  readonly from: IsoDay;
  readonly to: IsoDay;
  readonly moths: number;
  readonly eggs: StageDays;
  readonly smallLarvae: StageDays | null;
  readonly largeLarvae: StageDays | null;
}

export interface LarvaeView {
  readonly modelName: LocalText;
  readonly source: string;
  readonly standing: Standing;
  readonly design: TrapDesign;
  readonly measuredThrough: IsoDay;
  readonly hatch: { readonly ten: IsoDay | null; readonly half: IsoDay | null; readonly ninety: IsoDay | null };
  readonly worthGoing: DatesView | null;
  /** Shares of the moths caught whose offspring are in a stage, day by day. */
  readonly days: readonly { readonly on: IsoDay; readonly egg: number; readonly small: number; readonly large: number }[];
  /** True where the model tells large larvae from small ones. */
  readonly twoSizes: boolean;
  /** Newest catch first; nights without moths are left out. */
  readonly rows: readonly LarvaeRow[];
}

export interface InsectFlights {
  readonly insect: string;
  readonly flights: SeasonFlights | null;
  readonly noFlights: FieldFlights['noFlights'];
  readonly forecasts: readonly ForecastView[];
  readonly larvae: LarvaeView | null;
}

export interface FieldFlightsView {
  readonly on: IsoDay;
  readonly fieldId: string;
  /** Where a weather forecast for this field is written down; null: the field has no weather source. */
  readonly weatherSource: string | null;
  readonly insects: readonly InsectFlights[];
}

/** One field and insect in the list of a program's flights. */
export interface FlightRow {
  readonly fieldId: string;
  readonly field: string;
  readonly farm: string;
  readonly insect: string;
  readonly design: TrapDesign | null;
  readonly list: readonly FlightView[];
  readonly unsure: boolean;
  readonly moths: number;
  readonly noFlights: FieldFlights['noFlights'];
}

/** Some rows of the list; asked again from `next` on until that is null. */
export interface FlightRows {
  readonly on: IsoDay;
  readonly of: number;
  readonly next: number | null;
  readonly rows: readonly FlightRow[];
}
