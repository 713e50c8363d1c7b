import { addDays } from '../base/day.ts';
import { HUNG } from './season.testing.ts';
import type { CatchInterval } from './types.ts';

/** A fit visit to an invented trap, by the nights since it was hung. */
export const visitOf = (trapId: string, from: number, to: number, count: number): CatchInterval => ({
  trapId,
  design: 'mesh-cone',
  from: addDays(HUNG, from),
  to: addDays(HUNG, to),
  visits: [1],
  nights: to - from,
  count,
  others: null,
  condition: 'fit',
  noInformation: null,
  lureAgeDays: null,
  lureLifeDays: null,
  lurePastLife: null,
});
