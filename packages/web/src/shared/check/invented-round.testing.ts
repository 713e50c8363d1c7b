import type { RoundTrap } from '@duskwatch/core';

/** A trap of an invented round, hung and never visited, but for what is said of it. */
export const roundTrap = (trapId: string, rest: Partial<RoundTrap> = {}): RoundTrap => ({
  trapId,
  insect: 'helicoverpa-zea',
  insectName: { en: 'corn earworm', es: 'gusano elotero' },
  scientificName: 'Helicoverpa zea',
  design: 'bucket',
  hungOn: '2025-06-01',
  heightM: null,
  lastVisit: null,
  most: null,
  told: [],
  doubt: null,
  skipped: null,
  checkDue: '2025-07-12',
  due: true,
  lure: null,
  marks: null,
  lookAlikes: [],
  ...rest,
});

/** The newest visit of one: fit, and the moths taken out. */
export const visitOf = (on: string, count: number): NonNullable<RoundTrap['lastVisit']> => ({
  on,
  visit: 1,
  count,
  condition: 'fit',
  emptied: true,
  unfitReason: null,
});
