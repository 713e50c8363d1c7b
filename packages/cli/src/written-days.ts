import { type Day, formatDay } from '@duskwatch/core';

/** JSON in which the numbers under these names are days, written as YYYY-MM-DD. */
export function jsonWithDays(value: unknown, dayNames: readonly string[]): string {
  const names = new Set(dayNames);
  return JSON.stringify(
    value,
    (name, each) => (names.has(name) && typeof each === 'number' && Number.isFinite(each) ? formatDay(each as Day) : each),
    2,
  );
}
