/** A column of checks that is nowhere but in the schema and in the words of its table: tests mock both with these. */
import { z } from 'zod';
import type * as columnWords from './column-words.ts';
import type * as schema from './schema.ts';

export const schemaWithMoon = (actual: typeof schema) => ({
  ...actual,
  checkSchema: actual.checkSchema.extend({ moonPhase: z.enum(['new', 'full']).nullable().optional() }),
});

export const wordsWithMoon = ({ columnWords: { checks, ...others } }: typeof columnWords) => ({
  columnWords: { ...others, checks: { ...checks, moon_phase: ['The moon at the visit.', { extension: true }] } },
});
