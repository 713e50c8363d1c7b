import { z } from 'zod';
import { assumptionSchema } from '../catalogue/schema.ts';

export const dispersionSchema = z
  .object({
    k: z.number(),
    reason: z
      .enum(['own-checks', 'too-few-checks', 'no-scatter-found', 'no-fit'])
      .describe(
        "`own-checks`: the program's own figure is used. `too-few-checks`: too few stretches of the same nights with two or more traps, or too few moths in them. `no-scatter-found`: the counts scatter no more than chance, and the assumed k stays, because it errs towards more traps.",
      ),
    assumption: assumptionSchema.nullable().describe("Null when the figure is the program's own."),
    low: z.number().nullable().describe('About 95 %; null unless estimated with a standard error.'),
    high: z.number().nullable(),
    blocks: z.int().describe('What the estimate rests on, or what there was of it.'),
    counts: z.int(),
    moths: z.int(),
  })
  .meta({
    id: 'CatchDispersion',
    description: "The dispersion k of one trap's count at one visit, and where it is from.",
  });
