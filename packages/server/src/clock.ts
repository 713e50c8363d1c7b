import type { IsoDay, Program } from '@duskwatch/core';

/** The calendar day at an instant in an IANA zone; in the machine's own zone when none, or an unknown one, is given. */
export function dayInZone(zone: string | null, at: Date = new Date()): IsoDay {
  const parts = new Intl.DateTimeFormat('en', {
    ...zoneOption(zone),
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  }).formatToParts(at);
  const part = (type: 'year' | 'month' | 'day') => parts.find((each) => each.type === type)!.value;
  return `${part('year')}-${part('month')}-${part('day')}`;
}

/** The day as of which a program is read when nobody names one: where it was pinned, else today where its fields are. */
export function readingDay(program: Program, at: Date = new Date()): IsoDay {
  return program.settings.pinnedOn ?? dayInZone(program.fields.find((field) => field.timeZone !== null)?.timeZone ?? null, at);
}

function zoneOption(zone: string | null): { timeZone?: string } {
  if (zone === null) return {};
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return { timeZone: zone };
  } catch {
    return {};
  }
}
