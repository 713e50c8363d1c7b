/** What more than one answer holds. */
import { z } from 'zod';
import { ratePointSchema } from '../advice/rate-points.ts';
import type { Shape } from '../base/shape.ts';
import { localTextSchema } from '../catalogue/schema.ts';
import { isoDay, SKIP_REASONS, trapDesignSchema } from '../records/schema.ts';

export const namedProgramSchema = z
  .object({ name: z.string(), invented: z.boolean().describe('True for demonstration data.') })
  .meta({ id: 'NamedProgram' });

export const insectNameSchema = z
  .object({ id: z.string(), scientificName: z.string(), commonName: localTextSchema })
  .meta({ id: 'InsectName' });
export type InsectName = Shape<typeof insectNameSchema>;

export const observedStageSchema = z.object({ stage: z.string(), observedOn: isoDay }).meta({ id: 'ObservedStage' });

export const namedFieldSchema = z.object({ fieldId: z.string(), name: z.string(), farm: z.string() }).meta({ id: 'NamedField' });

export const skippedSchema = z
  .object({ on: isoDay, reason: z.enum(SKIP_REASONS) })
  .nullable()
  .describe('Why it was last passed by, when nobody has visited it since.');

/** A sample as far as it is shown. */
export const sampleShownSchema = z
  .object({
    sampledOn: isoDay,
    kind: z.string(),
    examined: z.int(),
    infested: z.int().nullable(),
    total: z.int().nullable(),
  })
  .meta({ id: 'SampleShown' });
export type SampleShown = Shape<typeof sampleShownSchema>;

export const keepOutSchema = z
  .object({ until: isoDay, hours: z.number(), product: z.string() })
  .meta({ id: 'KeepOut', description: 'A re-entry interval, as entered from the label, that is not over.' });

export const rateLineSchema = z
  .object({
    design: trapDesignSchema,
    from: isoDay,
    to: isoDay,
    points: z.array(ratePointSchema),
    thresholdPerNight: z
      .number()
      .nullable()
      .describe("The rule's threshold in moths per trap per night; null when there is no catch rule."),
  })
  .meta({ id: 'RateLine' });
export type RateLine = Shape<typeof rateLineSchema>;
