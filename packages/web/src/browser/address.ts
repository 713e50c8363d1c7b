import { type IsoDay, parseDay } from '@duskwatch/core';

export interface DaySearch {
  readonly on?: IsoDay | undefined;
}

export type RawSearch = Readonly<Record<string, unknown>>;

export const textIn = (value: unknown): string | undefined => (typeof value === 'string' && value !== '' ? value : undefined);
export const oneOf = <T extends string>(value: unknown, allowed: readonly T[]): T | undefined =>
  allowed.find((each) => each === value);

/** A day that does not exist is dropped, so that a mistyped address shows the newest day. */
export const daySearch = (raw: RawSearch): DaySearch => {
  const on = textIn(raw.on);
  return { on: on && parseDay(on) !== null ? on : undefined };
};

/** Plain `?on=2025-07-12`, not JSON in the address: people send these to one another. */
export const parseSearch = (search: string): RawSearch => Object.fromEntries(new URLSearchParams(search));

export function stringifySearch(search: RawSearch): string {
  const parameters = new URLSearchParams();
  for (const [key, value] of Object.entries(search)) if (value !== undefined && value !== '') parameters.set(key, String(value));
  const query = parameters.toString();
  return query ? `?${query}` : '';
}
