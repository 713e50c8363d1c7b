/** When the eggs of the moths caught hatch, when larvae are of each size, and the day it is worth going to look. */

import { addDays, type Day } from '../base/day.ts';
import { lazily } from '../base/lazily.ts';
import type { PhenologyModel } from '../catalogue/types.ts';
import type { CatchInterval } from '../catch/types.ts';
import type { HeatTrack } from '../heat/types.ts';
import { type EventForecast, forecastEvent } from './event-forecast.ts';
import { expectedHeat, type HeatOutlook } from './expected-heat.ts';
import { type LifeLine, lifeLine, type Night, nightsOf, type StageAmounts, stageAmounts } from './larvae.ts';

export interface LarvaeOptions {
  /** Share of small larvae, among offspring not yet grown up, from which it is worth going. */
  readonly worthGoingShare?: number;
  /** Days looked ahead. */
  readonly daysAhead?: number;
  /** Last measured day, where the track ends with somebody's own forecast; see `withForecast`. */
  readonly measuredThrough?: Day | null;
}

/** One tenth of the offspring. Own choice, no source. */
export const WORTH_GOING_SHARE = 0.1;
export const LARVAE_DAYS_AHEAD = 60;

export interface LarvaeDay {
  readonly on: Day;
  readonly amounts: StageAmounts;
  /** Share of the eggs of all moths caught that has hatched. */
  readonly hatched: number;
  /** False from the day after the last one measured. */
  readonly known: boolean;
}

export interface LarvaeOutlook {
  /** Moths caught that were moved through the stages: amounts are out of this many, and no count of eggs or larvae. */
  readonly moths: number;
  readonly unknownNights: number;
  /** How heat to come was expected; see `expectedHeat`. */
  readonly method: HeatOutlook['method'];
  /** From the first night with moths to the last day looked ahead. */
  readonly days: readonly LarvaeDay[];
  /** On the day asked about. */
  readonly now: LarvaeDay;
  /** First hatch and the days by which 10, 50 and 90 % of the eggs have hatched; null: later than looked ahead. */
  readonly hatch: {
    readonly first: Day | null;
    readonly ten: Day | null;
    readonly half: Day | null;
    readonly ninety: Day | null;
  };
  /** The night with the most moths, and when the middle of its eggs hatches, with its 10–50–90 % dates. */
  readonly peakNight: { readonly on: Day; readonly moths: number; readonly hatch: EventForecast };
  readonly smallLarvaePeak: Day | null;
  readonly largeLarvaePeak: Day | null;
  /** What the offspring are most, today; the moths themselves before any egg. */
  readonly lookFor: 'nothing-yet' | 'egg' | 'small-larva' | 'large-larva' | 'larva' | 'pupa' | 'nothing-left';
  /** First day from today on when small larvae are at least the stated share; null: not in the days looked ahead. */
  readonly worthGoing: Day | null;
  /** The same day as a distribution: by when the heat that it takes has come. Null with `worthGoing`. */
  readonly worthGoingDates: EventForecast | null;
}

/**
 * Moves each night's catch up to `on` through the model's stages, along the known heat and then the expected heat.
 *
 * `intervals` are those of traps of one design in one field, best of one flight. Later moths are not foreseen: hatch and
 * larvae are those of moths already caught. Null when the model has no egg stage, nothing was caught, or heat since the
 * first moths is not known through `on` or does not speak for the days to come.
 */
export function larvaeFromMoths(
  intervals: readonly CatchInterval[],
  model: PhenologyModel,
  track: HeatTrack,
  on: Day,
  { worthGoingShare = WORTH_GOING_SHARE, daysAhead = LARVAE_DAYS_AHEAD, measuredThrough = track.end }: LarvaeOptions = {},
): LarvaeOutlook | null {
  const line = lifeLine(model);
  const { nights, moths, unknownNights } = nightsOf(intervals, on);
  const caught = nights.filter(({ moths }) => moths > 0);
  if (line === null || caught.length === 0) return null;
  const heat = expectedHeat(track, caught[0]!.on, daysAhead);
  if (heat === null) return null;
  const dayAt = daysOf(line, caught, heat, measuredThrough);
  const [today, end] = [on - heat.start, heat.daily.length];
  if (today < 0 || today >= end) return null;
  const ahead = Array.from({ length: end - today }, (_, i) => dayAt(today + i));
  const now = ahead[0]!;
  // What has been, and dates with their odds, take longest, and not everybody asks for them.
  const days = lazily(() => [...Array.from({ length: today }, (_, i) => dayAt(i)), ...ahead]);

  const hatchedBy = (share: number) => days().find(({ hatched }) => hatched > 0 && hatched >= share - ROUNDING)?.on ?? null;
  const isDue = ({ amounts }: LarvaeDay) =>
    smallLarvae(amounts) > 0 && smallLarvae(amounts) >= worthGoingShare * (moths - now.amounts['next-adults']) - ROUNDING;
  const datesOf = (day: Day): EventForecast => {
    const known = days().findLast((day) => day.known && day.on <= on);
    return day === on && known && isDue(known)
      ? { status: 'came', on: known.on }
      : forecastEvent(track, heat.start, heatBy(heat, day), { measuredThrough });
  };
  const worthGoing = ahead.find(isDue)?.on ?? null;
  const peakNight = lazily(() => peakNightOf(line, caught, track, measuredThrough));
  const worthGoingDates = lazily(() => (worthGoing === null ? null : datesOf(worthGoing)));
  return {
    moths,
    unknownNights,
    method: heat.method,
    get days() {
      return days();
    },
    now,
    get hatch() {
      return { first: hatchedBy(0), ten: hatchedBy(0.1), half: hatchedBy(0.5), ninety: hatchedBy(0.9) };
    },
    get peakNight() {
      return peakNight();
    },
    get smallLarvaePeak() {
      return peakDay(days(), smallLarvae);
    },
    get largeLarvaePeak() {
      return peakDay(days(), ({ 'large-larva': large }) => large);
    },
    lookFor: lookFor(now.amounts),
    worthGoing,
    get worthGoingDates() {
      return worthGoingDates();
    },
  };
}

const ROUNDING = 1e-9;

const pastEgg = (amounts: StageAmounts): number =>
  amounts['small-larva'] + amounts['large-larva'] + amounts.larva + amounts.pupa + amounts['next-adults'];

/** Small larvae, or larvae where the model knows only one size. */
const smallLarvae = (amounts: StageAmounts): number => amounts['small-larva'] + amounts.larva;

/** Which stage each moth's offspring are in depends on heat alone, so the heat by a day stands for that day's mixture. */
const heatBy = ({ start, daily }: HeatOutlook, on: Day): number =>
  daily.subarray(0, on - start + 1).reduce((sum, heat) => sum + heat, 0);

/** The offspring on a day, counted from the first of the heat. */
function daysOf(
  line: LifeLine,
  nights: readonly Night[],
  { start, daily }: HeatOutlook,
  measuredThrough: Day | null,
): (index: number) => LarvaeDay {
  const through = new Float64Array(daily.length);
  daily.forEach((heat, i) => {
    through[i] = (through[i - 1] ?? 0) + heat;
  });
  const moths = nights.reduce((sum, night) => sum + night.moths, 0);
  return (i) => {
    const [on, heat] = [addDays(start, i), through[i]!];
    const heatSince = (night: Day) => (night > on ? -1 : heat - through[night - start]!);
    const amounts = stageAmounts(line, nights, heatSince);
    return {
      on,
      amounts,
      hatched: pastEgg(amounts) / moths,
      known: measuredThrough !== null && on <= measuredThrough,
    };
  };
}

function peakNightOf(
  line: LifeLine,
  nights: readonly Night[],
  track: HeatTrack,
  measuredThrough: Day | null,
): LarvaeOutlook['peakNight'] {
  const { on, moths } = nights.reduce((best, night) => (night.moths > best.moths ? night : best));
  const middle = line.beforeLaying / 2 + line.stages[0]!.to;
  return { on, moths, hatch: forecastEvent(track, addDays(on, 1), middle, { measuredThrough }) };
}

function peakDay(days: readonly LarvaeDay[], amountOf: (amounts: StageAmounts) => number): Day | null {
  const best = days.reduce((a, b) => (amountOf(b.amounts) > amountOf(a.amounts) ? b : a));
  const atEdge = best.on === days.at(-1)!.on;
  return atEdge || amountOf(best.amounts) === 0 ? null : best.on;
}

function lookFor(amounts: StageAmounts): LarvaeOutlook['lookFor'] {
  const inField = ['egg', 'small-larva', 'large-larva', 'larva', 'pupa'] as const;
  const most = inField.reduce((a, b) => (amounts[b] > amounts[a] ? b : a));
  if (amounts[most] > 0) return most;
  return amounts['pre-egg-laying-adult'] > 0 ? 'nothing-yet' : 'nothing-left';
}
