import { type IsoDay, parseDay, type Verb } from '@duskwatch/core';

export const VERBS = ['decide', 'scout', 'blind', 'covered', 'watch', 'none'] as const satisfies readonly Verb[];
export const SORTS = ['farm', 'urgency', 'name', 'crop'] as const;
export type Sort = (typeof SORTS)[number];

export interface DaySearch {
  readonly on?: IsoDay | undefined;
}

/** What the address of This week says: the day, the filters, and the one cell whose evidence is open. */
export interface WeekSearch extends DaySearch {
  readonly farm?: string | undefined;
  readonly crop?: string | undefined;
  readonly insect?: string | undefined;
  readonly verb?: Verb | undefined;
  readonly sort?: Sort | undefined;
  readonly open?: string | undefined;
}

type Raw = Readonly<Record<string, unknown>>;

const text = (value: unknown) => (typeof value === 'string' && value !== '' ? value : undefined);
const oneOf = <T extends string>(value: unknown, allowed: readonly T[]) => allowed.find((each) => each === value);

/** A day that does not exist is dropped, so that a mistyped address shows the newest day. */
export const daySearch = (raw: Raw): DaySearch => {
  const on = text(raw.on);
  return { on: on && parseDay(on) !== null ? on : undefined };
};

export const weekSearch = (raw: Raw): WeekSearch => ({
  ...daySearch(raw),
  farm: text(raw.farm),
  crop: text(raw.crop),
  insect: text(raw.insect),
  verb: oneOf(raw.verb, VERBS),
  sort: oneOf(raw.sort, SORTS),
  open: text(raw.open),
});

/** Plain `?on=2025-07-12`, not JSON in the address: people send these to one another. */
export const parseSearch = (search: string): Raw => Object.fromEntries(new URLSearchParams(search));

export function stringifySearch(search: Raw): string {
  const parameters = new URLSearchParams();
  for (const [key, value] of Object.entries(search)) if (value !== undefined && value !== '') parameters.set(key, String(value));
  const query = parameters.toString();
  return query ? `?${query}` : '';
}
