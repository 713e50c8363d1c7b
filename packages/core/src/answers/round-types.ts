/** A drive past the stations, as the phone needs it: complete, so that it works without signal. */

import type { IsoDay } from '../base/index.ts';
import type { LocalName, LocalText } from '../catalogue/types.ts';
import type { Condition, TrapDesign } from '../records/schema.ts';

export interface RoundTrap {
  readonly trapId: string;
  readonly insect: string;
  readonly insectName: LocalName;
  readonly scientificName: string;
  readonly design: TrapDesign;
  readonly hungOn: IsoDay;
  /** Height of the opening to keep, in metres; null when the catalogue has none. */
  readonly heightM: number | null;
  readonly lastVisit: {
    readonly on: IsoDay;
    readonly visit: number;
    readonly count: number | null;
    readonly condition: Condition;
    readonly emptied: boolean;
  } | null;
  readonly checkDue: IsoDay;
  readonly due: boolean;
  readonly lure: {
    readonly placedOn: IsoDay;
    readonly lifeDays: number | null;
    readonly ageDays: number;
    readonly change: boolean;
  } | null;
  /** In words, from the catalogue. */
  readonly lookAlikes: readonly { readonly name: LocalName; readonly note: LocalText }[];
}

export interface RoundField {
  readonly fieldId: string;
  readonly name: string;
  readonly farm: string;
  readonly crop: string;
  readonly stage: { readonly stage: string; readonly observedOn: IsoDay } | null;
  /** Canonical stage words of the crop, in order; empty when the crop is not in the catalogue. */
  readonly stages: readonly { readonly id: string; readonly name: LocalName }[];
  /** Re-entry interval not over at this field. */
  readonly keepOut: readonly { readonly until: IsoDay; readonly hours: number; readonly product: string }[];
}

export interface RoundStop {
  readonly station: string;
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly due: boolean;
  readonly traps: readonly RoundTrap[];
  readonly fields: readonly RoundField[];
}

export interface RoundView {
  readonly program: { readonly name: string; readonly invented: boolean };
  readonly on: IsoDay;
  /** Every station with a trap hanging, in driving order. */
  readonly stops: readonly RoundStop[];
  /** Great-circle kilometres past the stations that are due. */
  readonly dueLengthKm: number;
}
