/** What the days of a whole sheet settle together: which part comes first, the year, and whether they name weeks. */
import { type DateOrder, parseDay } from '@duskwatch/core';
import type { Sighting } from './sightings.ts';
import { dayMeant, lacksYear, ordersOf, type WrittenDay, weekIn } from './words/written-day.ts';

export interface DaysOfSheet {
  /** The order that alone reads every date; null where both do, or none has to. */
  readonly settledOrder: DateOrder | null;
  readonly needsOrder: boolean;
  /** The likelier order where both read all: that in which the days follow one another more closely. */
  readonly likelyOrder: DateOrder | null;
  /** A date that exists in both orders. */
  readonly open: Sighting | null;
  /** Without a year, and no heading that gives one. */
  readonly lackYear: readonly Sighting[];
  readonly week: 'starts' | 'ends' | null;
}

export function daysOfSheet(seen: readonly Sighting[], headings: readonly string[]): DaysOfSheet {
  const numeric = seen.flatMap((sighting) =>
    sighting.written?.is === 'numeric' ? [{ sighting, orders: ordersOf(sighting.written) }] : [],
  );
  const fitting = (['dmy', 'mdy'] as const).filter((order) => numeric.every(({ orders }) => orders.includes(order)));
  const same = numeric.every(({ sighting }) => isSameEitherWay(sighting.written!));
  const needsOrder = numeric.length > 0 && !same;
  const ambiguous = needsOrder && fitting.length === 2;
  // Where dates contradict one another, the order of most is proposed; the others are named when they are read.
  const settledOrder = needsOrder
    ? fitting.length === 1
      ? fitting[0]!
      : fitting.length === 0
        ? orderOfMost(numeric)
        : null
    : same && numeric.length > 0
      ? 'mdy'
      : null;
  const week = headings.map(weekIn).find((found) => found !== null) ?? null;
  return {
    settledOrder,
    needsOrder,
    likelyOrder: ambiguous ? closerOrder(seen) : settledOrder,
    open: numeric.find(({ sighting, orders }) => orders.length === 2 && !isSameEitherWay(sighting.written!))?.sighting ?? null,
    lackYear: seen.filter(({ written, yearTold }) => written !== null && lacksYear(written) && yearTold === null),
    week,
  };
}

const isSameEitherWay = (day: WrittenDay): boolean => day.is === 'numeric' && day.first === day.second;

function orderOfMost(numeric: readonly { readonly orders: readonly DateOrder[] }[]): DateOrder {
  const times = (order: DateOrder) => numeric.filter(({ orders }) => orders.includes(order)).length;
  return times('dmy') > times('mdy') ? 'dmy' : 'mdy';
}

/** Visits follow one another by days or weeks; read in the wrong order they jump by months, and back. */
function closerOrder(seen: readonly Sighting[]): DateOrder {
  const travelled = (order: DateOrder) => {
    const days = seen.flatMap(({ written, yearTold }) => {
      const meant = written === null ? null : dayMeant(written, { order, year: yearTold ?? ANY_YEAR, shift: 0 });
      return meant === null ? [] : [parseDay(meant)!];
    });
    return days.reduce((sum: number, day, index) => sum + (index === 0 ? 0 : Math.abs(day - days[index - 1]!)), 0);
  };
  return travelled('dmy') < travelled('mdy') ? 'dmy' : 'mdy';
}

const ANY_YEAR = 2024;
