/** Instants of a service, in the days of a place. */
import { type Day, dayOf, formatDay, type IsoDay } from '@duskwatch/core';

const HOUR_MS = 3_600_000;

/** Gives each instant (ms since 1970) its calendar day in an IANA zone. */
export function localDays(zone: string): (ms: number) => IsoDay {
  const format = new Intl.DateTimeFormat('en', { timeZone: zone, year: 'numeric', month: 'numeric', day: 'numeric' });
  return (ms) => {
    const part = Object.fromEntries(format.formatToParts(ms).map(({ type, value }) => [type, Number(value)]));
    return formatDay(dayOf(part.year!, part.month!, part.day!) as Day);
  };
}

/** An ISO 8601 interval of an instant and a duration of days, hours and minutes, in ms since 1970; null for anything else. */
export function intervalOf(text: string): { readonly from: number; readonly to: number } | null {
  const [start = '', length = ''] = text.split('/');
  const from = Date.parse(start);
  const match = /^P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?)?$/.exec(length);
  if (Number.isNaN(from) || match === null) return null;
  const [days = 0, hours = 0, minutes = 0] = match.slice(1).map((part) => Number(part ?? 0));
  const ms = (days * 24 + hours) * HOUR_MS + minutes * 60_000;
  return ms > 0 ? { from, to: from + ms } : null;
}

/** How much of an interval lies in each local day: shares that add up to 1, hour by hour. */
export function sharesByDay({ from, to }: { readonly from: number; readonly to: number }, dayOfInstant: (ms: number) => IsoDay) {
  const shares = new Map<IsoDay, number>();
  for (let at = from; at < to; at += HOUR_MS) {
    const length = Math.min(HOUR_MS, to - at);
    const on = dayOfInstant(at + length / 2);
    shares.set(on, (shares.get(on) ?? 0) + length / (to - from));
  }
  return shares;
}
