/** For which fields each rule speaks. */
import { z } from 'zod';
import { verbSchema } from '../advice/types.ts';
import type { Shape } from '../base/shape.ts';
import { isoDay } from '../records/schema.ts';
import { namedFieldSchema, namedProgramSchema } from './schema.ts';

const speakingSchema = z
  .object({
    ruleId: z.string(),
    fields: z
      .array(namedFieldSchema.extend({ insect: z.string(), verb: verbSchema }))
      .describe('Those whose advice rests on the rule that day, whatever the verb.'),
  })
  .meta({ id: 'RuleSpeaking' });

export const rulesSchema = z
  .object({
    program: namedProgramSchema,
    on: isoDay,
    off: z.array(z.object({ ruleId: z.string(), reason: z.string() })).describe('Rules that the program has switched off.'),
    speaking: z.array(speakingSchema).describe('Rules that speak for none are left out.'),
  })
  .meta({ id: 'Rules' });
export type RulesView = Shape<typeof rulesSchema>;
