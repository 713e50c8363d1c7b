/** Years against one another, ready to draw. */
import { z } from 'zod';
import type { Shape } from '../base/shape.ts';
import { HEAT_CUTOFFS, HEAT_METHODS } from '../heat/types.ts';
import { isoDay, trapDesignSchema } from '../records/schema.ts';

const yearPointSchema = z
  .object({
    from: isoDay,
    to: isoDay,
    drawnFrom: isoDay.describe('The same date in the newest of the years drawn.'),
    drawnTo: isoDay,
    heatFrom: z
      .number()
      .nullable()
      .describe('Degree-days since the growing year began, at the first night; null where not known.'),
    heatTo: z.number().nullable().describe('The same after the last night.'),
    perNight: z
      .number()
      .nullable()
      .describe('Moths per trap per night with the interval; null where no visit carries information.'),
    low: z.number().nullable(),
    high: z.number().nullable(),
    shareSoFar: z
      .number()
      .nullable()
      .describe("Share of the season's catch of the mean trap up to the end of the stretch; null in a season without one."),
  })
  .meta({ id: 'YearPoint' });

const yearLineSchema = z
  .object({
    year: z.int(),
    open: z.boolean().describe('Not over on the day the years are read on: what follows is missing.'),
    design: trapDesignSchema,
    traps: z.int(),
    stations: z.array(z.string()),
    points: z.array(yearPointSchema),
  })
  .meta({ id: 'YearLine' });
export type YearLine = Shape<typeof yearLineSchema>;

export const yearsSchema = z
  .object({
    insect: z.string(),
    heat: z
      .object({
        rule: z.object({
          method: z.enum(HEAT_METHODS),
          cutoff: z.enum(HEAT_CUTOFFS),
          lower: z.number(),
          upper: z.number().nullable().describe('Null when the model has no upper threshold.'),
          unit: z.enum(['F', 'C']).describe('Unit of the thresholds and of the degree-days.'),
        }),
        modelId: z.string(),
        sourceId: z.string(),
      })
      .nullable()
      .describe('How heat was counted, from which source; null: no heat axis.'),
    noHeat: z.enum(['no-model', 'no-weather-source', 'several-weather-sources']).nullable(),
    lines: z.array(yearLineSchema).describe('Oldest season first.'),
  })
  .meta({ id: 'Years' });
export type YearsView = Shape<typeof yearsSchema>;
