/** Stations and traps: who stands where, stood where, and what is due there. */

import type { IsoDay } from '../base/index.ts';
import type { LocalName, LocalText, Standing } from '../catalogue/types.ts';
import type { Condition, TrapDesign, UnfitReason } from '../records/schema.ts';
import type { InsectName } from './types.ts';

/** How to set up a trap of a design, from the catalogue. */
export interface DesignAdvice {
  readonly design: TrapDesign;
  readonly name: LocalName;
  /** Height of the opening above ground to keep, in metres; null when the catalogue has none. */
  readonly heightM: number | null;
  readonly siting: LocalText;
  readonly source: string;
  readonly standing: Standing;
}

/** What holds for siting any trap, or for driving its post; cautions first. */
export interface SitingPractice {
  readonly id: string;
  readonly act: 'siting' | 'setting-posts';
  readonly weight: 'fact' | 'caution';
  readonly designs: readonly TrapDesign[] | null;
  readonly text: LocalName;
  readonly source: string;
  readonly standing: Standing;
}

export interface TrapVisit {
  readonly on: IsoDay;
  readonly visit: number;
  readonly count: number | null;
  readonly others: number | null;
  readonly condition: Condition;
  readonly emptied: boolean;
  /** Null at a visit that was not unfit, and where nobody said why. */
  readonly unfitReason: UnfitReason | null;
  readonly note: string | null;
  readonly photo: string | null;
}

/** One growing year of one trap. */
export interface TrapSeasonSummary {
  /** First day of the growing year: 1 January, south of the equator 1 July. */
  readonly from: IsoDay;
  readonly firstVisit: IsoDay;
  readonly lastVisit: IsoDay;
  readonly visits: number;
  readonly unfitVisits: number;
  /** Moths of the target in the nights that visits account for. */
  readonly count: number;
  /** Nights that visits account for; those before an unfit visit are not among them. */
  readonly nights: number;
  /** The visit with the highest nightly catch; null when no visit accounts for any night. */
  readonly peak: { readonly on: IsoDay; readonly perNight: number } | null;
}

export type TrapState = 'hanging' | 'planned' | 'taken-down';

export interface StationTrap {
  readonly trapId: string;
  readonly insect: InsectName;
  readonly design: TrapDesign;
  readonly state: TrapState;
  readonly hungOn: IsoDay;
  readonly takenDownOn: IsoDay | null;
  readonly latitude: number | null;
  readonly longitude: number | null;
  readonly informs: readonly { readonly fieldId: string; readonly name: string; readonly farm: string }[];
  /** Null unless it hangs. */
  readonly check: {
    readonly due: IsoDay;
    readonly state: 'not-due' | 'due' | 'overdue' | 'unfit';
    /** Days past due; 0 until then. */
    readonly daysLate: number;
  } | null;
  readonly lure: {
    readonly placedOn: IsoDay;
    readonly lifeDays: number | null;
    readonly ageDays: number;
    /** Last day of its stated life; null when none is stated. */
    readonly ends: IsoDay | null;
    readonly spent: boolean | null;
  } | null;
  readonly lastVisit: TrapVisit | null;
  /** Moths per night by the newest visit that accounts for any; null when none does. */
  readonly newest: { readonly from: IsoDay; readonly to: IsoDay; readonly nights: number; readonly perNight: number } | null;
  /** Newest first. */
  readonly seasons: readonly TrapSeasonSummary[];
}

/**
 * A place where traps stand or stood. A station whose traps stood elsewhere in another season has several places:
 * their catches are not one history.
 */
export interface StationPlace {
  readonly station: string;
  /** 1 for the first place that bore the name, and how many there are. */
  readonly place: number;
  readonly places: number;
  readonly latitude: number | null;
  readonly longitude: number | null;
  /** Metres from the place before; null for the first, or when one of the two has no coordinates. */
  readonly movedM: number | null;
  readonly firstHungOn: IsoDay;
  /** True while any trap hangs. */
  readonly inUse: boolean;
  readonly due: boolean;
  /** Hanging first, then planned, then the newest taken down. */
  readonly traps: readonly StationTrap[];
}

export interface StationsView {
  readonly program: { readonly name: string; readonly invented: boolean };
  readonly on: IsoDay;
  /** By name; a name's places newest first. */
  readonly places: readonly StationPlace[];
  readonly designs: readonly DesignAdvice[];
  readonly practices: readonly SitingPractice[];
}

/** One trap with every visit and lure, newest first. */
export interface TrapView extends StationTrap {
  readonly on: IsoDay;
  readonly station: string;
  readonly visits: readonly TrapVisit[];
  readonly lures: readonly { readonly placedOn: IsoDay; readonly lifeDays: number | null }[];
}
