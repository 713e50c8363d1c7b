import { LABEL_GRID_IDS, LANGUAGES } from '@duskwatch/core';
import { z } from 'zod';

const range = z.tuple([z.number(), z.number()]).nullable();

export const MOST_LABELS = 2_000;

export const labelRequest = z.object({
  grid: z.enum(LABEL_GRID_IDS),
  startAt: z.int().min(1).max(100).describe('First label to print on, counted from 1 along the rows.'),
  trapIds: z.array(z.string()).max(MOST_LABELS).nullable().describe('null: every trap that hangs or is to be hung.'),
  language: z.enum(LANGUAGES),
  length: z.enum(['m', 'ft']),
  contact: z.string().max(200).describe('How to reach the coordinator.'),
  outlines: z.boolean().describe('Draw the edges of the labels, for a trial print on plain paper.'),
});

export const labelSummary = z.object({
  labels: z.int(),
  sheets: z.int(),
  letterHeightMm: range.describe('Smallest and largest capitals of the trap codes.'),
  legibleFromM: range,
  withoutCode: z.array(z.string()).describe('Traps whose address is too long for a code that a phone reads at this size.'),
  replacedLetters: z.array(z.string()).describe('Traps with letters that cannot be printed.'),
  origin: z.string().describe('Where the codes lead.'),
  onlyThisMachine: z.boolean().describe('True when no phone can reach that address.'),
});
