/** The axis that all rows of the flights share: days, or the heat of one insect. */
import { day, type FarmFlights, type FlightMomentView, type IsoDay } from '@duskwatch/core';
import { scaleLinear } from 'd3-scale';
import { monthTicks } from '../../ui/chart/axis.ts';

export interface FlightAxis {
  readonly width: number;
  readonly kind: 'calendar' | 'heat';
  readonly x: (at: number) => number;
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
  /** Where a row stands today. */
  readonly today: (row: FarmFlights) => number | null;
  /** Where the nth day of a row's ridge stands. */
  readonly night: (row: FarmFlights, index: number) => number;
  /** How high it stands: moths a night, or moths a degree-day. */
  readonly height: (row: FarmFlights, index: number, perNight: number) => number;
  /** A moment with both ends of its interval; null where it has no place on this axis. */
  readonly moment: (moment: FlightMomentView) => readonly [low: number, middle: number, high: number] | null;
  /** A day of a row; null where the axis does not know it. */
  readonly dayIn: (row: FarmFlights, on: IsoDay) => number | null;
}

const AHEAD = 60;
const LEAST_BEFORE = 45;

export function calendarAxis(rows: readonly FarmFlights[], on: IsoDay, width: number): FlightAxis {
  const today = day(on);
  const starts = rows.flatMap(({ ridge }) => (ridge ? [day(ridge.from)] : []));
  const ends = rows.flatMap(({ ridge, larvae }) => [
    ...(ridge ? [day(ridge.from) + ridge.heat.length] : []),
    ...(larvae?.to ? [day(larvae.to)] : []),
  ]);
  const from = Math.min(today - LEAST_BEFORE, ...starts);
  const to = Math.min(today + AHEAD, Math.max(today + 14, ...ends));
  const x = scaleLinear().domain([from, to]).range([0, width]);
  return {
    width,
    kind: 'calendar',
    x,
    ticks: monthTicks(from, to, ((to - from) * 40) / Math.max(1, width)).map(({ at, label }) => ({ at, label })),
    today: () => today + 1,
    night: ({ ridge }, index) => day(ridge!.from) + index + 0.5,
    height: (_, __, perNight) => perNight,
    moment: ({ dates }) => dates && [day(dates.early), day(dates.middle) + 0.5, day(dates.late) + 1],
    dayIn: (_, date) => day(date),
  };
}

export function heatAxis(rows: readonly FarmFlights[], on: IsoDay, width: number): FlightAxis {
  const heats = rows.flatMap(({ ridge }) => ridge?.heat ?? []);
  const x = scaleLinear()
    .domain(heats.length === 0 ? [0, 1] : [Math.min(...heats), Math.max(...heats)])
    .range([0, width]);
  const at = ({ ridge }: FarmFlights, date: IsoDay): number | null => ridge?.heat[day(date) - day(ridge.from)] ?? null;
  return {
    width,
    kind: 'heat',
    x,
    ticks: x.ticks(Math.max(2, Math.floor(width / 90))).map((tick) => ({ at: tick, label: String(tick) })),
    today: (row) => at(row, on),
    night: ({ ridge }, index) => ridge!.heat[index]!,
    height: ({ ridge }, index, perNight) => {
      const { heat } = ridge!;
      const gained = index === 0 ? heat[1]! - heat[0]! : heat[index]! - heat[index - 1]!;
      // A night without heat has no flight on this axis.
      return gained < 0.5 ? 0 : perNight / gained;
    },
    moment: ({ heat, low, high }) => [low, heat, high],
    dayIn: at,
  };
}
