import type { IsoDay } from '@duskwatch/core';
import { daySearch } from '../../app/search.ts';

export const STATES = ['hanging', 'due', 'planned', 'taken-down', 'all'] as const;
export const COLUMNS = ['station', 'trap', 'insect', 'design', 'informs', 'hung', 'check', 'rate', 'due', 'lure'] as const;
export type StateFilter = (typeof STATES)[number];
export type ColumnId = (typeof COLUMNS)[number];

/** What the address of Stations and traps says. */
export interface StationsSearch {
  readonly on?: IsoDay | undefined;
  readonly find?: string | undefined;
  readonly state?: StateFilter | undefined;
  readonly insect?: string | undefined;
  readonly farm?: string | undefined;
  readonly sort?: ColumnId | undefined;
  readonly down?: 'yes' | undefined;
}

const text = (value: unknown) => (typeof value === 'string' && value !== '' ? value : undefined);

export const stationsSearch = (raw: Readonly<Record<string, unknown>>): StationsSearch => ({
  ...daySearch(raw),
  find: text(raw.find),
  state: STATES.find((state) => state === raw.state),
  insect: text(raw.insect),
  farm: text(raw.farm),
  sort: COLUMNS.find((column) => column === raw.sort),
  down: raw.down === 'yes' ? 'yes' : undefined,
});
