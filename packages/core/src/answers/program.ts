/** What the program is, whom it is about, and the day on which it is read. */
import { z } from 'zod';
import type { IsoDay } from '../base/day.ts';
import type { Shape } from '../base/shape.ts';
import type { Program } from '../records/program.ts';
import { isoDay } from '../records/schema.ts';

export const programHeadSchema = z
  .object({
    name: z.string(),
    invented: z.boolean().describe('True for demonstration data.'),
    pinnedOn: isoDay.nullable().describe('The day a program that stopped is read on; null: today.'),
    today: isoDay.describe('The day that pages are read on when none is named.'),
    farms: z.array(z.string()),
    crops: z.array(z.string()),
    insects: z.array(z.string()),
  })
  .meta({ id: 'ProgramHead' });
export type ProgramHead = Shape<typeof programHeadSchema>;

export function programHead({ settings, fields, traps }: Program, today: IsoDay): ProgramHead {
  const { name, invented, pinnedOn } = settings;
  return {
    name,
    invented,
    pinnedOn,
    today,
    farms: distinct(fields.map(({ farm }) => farm)),
    crops: distinct(fields.map(({ crop }) => crop)),
    insects: distinct(traps.map(({ insect }) => insect)),
  };
}

const distinct = (words: readonly string[]): string[] => [...new Set(words)].sort();
