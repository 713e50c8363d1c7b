import { LANGUAGES } from '@duskwatch/core';
import { z } from 'zod';
import { asOf } from './common.ts';

/** An address holds so many; more are printed by leaving all of them out, or in two goes. */
export const MOST_SHEETS = 100;

const risk = z.coerce.number().gt(0).lt(0.5).optional();
const level = z.coerce.number().gt(0).max(1_000).optional();

export const sheetsQuery = asOf.extend({
  sheet: z
    .union([z.string(), z.array(z.string()).max(MOST_SHEETS)])
    .optional()
    .describe('`field|insect` or `field|insect|rule`, once for each sheet. Default: all that is to be scouted on the day.'),
  paper: z.enum(['a4', 'letter']).default('a4'),
  language: z.enum(LANGUAGES).default('en'),
  alpha: risk.describe('Accepted risk of calling a field above that is surely below.'),
  beta: risk.describe('Accepted risk of calling a field below that is surely above.'),
  m0: level.describe('Surely below: share of units, or insects per unit.'),
  m1: level.describe('Surely above.'),
  correlation: z.coerce.number().min(0).lt(1).optional().describe('Of any two units at one place.'),
  k: level.describe('Dispersion per unit, where insects or egg masses are counted.'),
});
