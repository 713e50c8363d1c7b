/** Rounds are planned in whole days; clock times are minutes after midnight in the fields' own zone. */
import type { IsoDay } from '../base/day.ts';
import type { Stop } from './route.ts';
import type { TravelTable } from './travel.ts';

export interface TimeWindow {
  readonly fromMinute: number;
  /** Work must have begun by then. */
  readonly toMinute: number;
}

export interface DueStation extends Stop {
  readonly due: IsoDay;
  readonly traps: number;
  /** Time at the station; left out: for parking and for every trap by the assumptions. */
  readonly minutes?: number | undefined;
  readonly window?: TimeWindow | null | undefined;
  /** Last day on which a re-entry interval keeps people off; the day after is free. */
  readonly keepOutUntil?: IsoDay | null | undefined;
}

export interface RoundScout {
  readonly id: string;
  /** Where the day begins and ends; null: wherever the round does, and no drive to it is counted. */
  readonly home: { readonly latitude: number; readonly longitude: number } | null;
  readonly startMinute: number;
  readonly capacityHours: number;
  /** Days on which the scout works; left out: all. */
  readonly days?: readonly IsoDay[] | undefined;
}

export interface RoundsRequest {
  readonly stations: readonly DueStation[];
  readonly scouts: readonly RoundScout[];
  readonly days: readonly IsoDay[];
  readonly travel?: TravelTable | null | undefined;
  readonly kmPerHour?: number | undefined;
  readonly roadFactor?: number | undefined;
}

export interface TimedStop {
  readonly station: string;
  /** When the car stops; work begins once the window opens. */
  readonly arrives: number;
  readonly begins: number;
  readonly leaves: number;
  readonly daysLate: number;
  /** No way to it is known: the drive to it is not counted, and it comes last unless a window speaks against it. */
  readonly placeUnknown: boolean;
}

export interface PlannedRound {
  readonly scout: string;
  readonly day: IsoDay;
  readonly stops: readonly TimedStop[];
  readonly driveMinutes: number;
  /** Minutes of driving that no order of these stops can undercut. */
  readonly boundMinutes: number;
  /** Road kilometres; null when a stop has no coordinates. */
  readonly km: number | null;
  /** From the scout's start to the end of the round. */
  readonly minutes: number;
}

/** By how much the drive may be longer than the shortest there is, as a share; null where no drive is known. */
export const longerThanShortest = ({ driveMinutes, boundMinutes }: PlannedRound): number | null =>
  boundMinutes > 0 ? driveMinutes / boundMinutes - 1 : null;

export interface Rounds {
  /** By day, then by scout. */
  readonly rounds: readonly PlannedRound[];
  /**
   * `no-scout`: nobody works on these days. `keep-out`: a re-entry interval covers every working day. `no-time`: window or
   * hours leave no room.
   */
  readonly unserved: readonly { readonly station: string; readonly why: 'no-scout' | 'keep-out' | 'no-time' }[];
}
