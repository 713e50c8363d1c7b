import type { IsoDay } from '@duskwatch/core';
import { daySearch, type RawSearch, textIn } from '../../browser/address.ts';

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

export const stationsSearch = (raw: RawSearch): StationsSearch => ({
  ...daySearch(raw),
  find: textIn(raw.find),
  state: STATES.find((state) => state === raw.state),
  insect: textIn(raw.insect),
  farm: textIn(raw.farm),
  sort: COLUMNS.find((column) => column === raw.sort),
  down: raw.down === 'yes' ? 'yes' : undefined,
});
