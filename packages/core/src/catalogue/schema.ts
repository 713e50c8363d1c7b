/** What of the catalogue an answer carries. */
import { z } from 'zod';
import { trapDesignSchema } from '../records/schema.ts';

/**
 * `published`: source named. `practice`: common practice, no source. `memory`: recalled. `own`: this program's.
 * `chosen`: a figure that Duskwatch had to choose itself.
 */
export const standingSchema = z.enum(['published', 'practice', 'memory', 'own', 'chosen']).meta({
  id: 'Standing',
  description:
    'How far to trust a figure: its source is named, it is common practice, it is recalled, it is the program’s own, or it had to be chosen.',
});

/** What people read, in every language of the app: one that is missing does not compile. */
export const localTextSchema = z.object({ en: z.string(), es: z.string() }).meta({ id: 'LocalText' });

export const eventSchema = z
  .enum([
    'set-out-traps',
    'first-moth',
    'first-eggs',
    'egg-hatch',
    'peak-flight',
    'treatment-period',
    'adult-emergence',
    'small-larvae',
    'large-larvae',
    'first-cutting',
    'cutting',
    'cutting-slows',
    'cutting-stops',
    'pupation',
    'next-adults',
    'hatch-20-percent',
    'flight-25-percent',
    'peak-egg-laying',
  ])
  .meta({ id: 'Event', description: 'What a model dates.' });

export const workSchema = z
  .object({
    author: z.string().describe('The people, or the service that speaks.'),
    year: z.int().nullable(),
    title: z.string().nullable().describe('In its own language.'),
    where: z.string().describe('Journal with volume and pages, DOI, report number, or the service and series that carries it.'),
  })
  .meta({
    id: 'Work',
    description: 'Something that was published, as one finds it. What is not at hand is null, never guessed.',
  });

const sourced = {
  source: z.string().describe('A work as it is cited, in its own language, or a remark that there is none.'),
  standing: standingSchema,
  works: z.array(workSchema).exactOptional().describe('What is cited, in full; there for everything published.'),
  note: localTextSchema
    .nullable()
    .exactOptional()
    .describe('What a reader must know to weigh the figure: a derivation, a rounding, a choice between readings.'),
};

export const assumptionSchema = z
  .object({ id: z.string(), value: z.number(), unit: localTextSchema, why: localTextSchema, ...sourced })
  .meta({ id: 'Assumption', description: 'A figure that Duskwatch must assume somewhere: shown wherever it is used.' });

export const practiceSchema = z
  .object({
    id: z.string(),
    act: z
      .enum([
        'planning',
        'siting',
        'setting-posts',
        'handling-lures',
        'checking',
        'handling-moths',
        'reading-catch',
        'deciding',
        'treating',
        'walking-fields',
      ])
      .describe('The work at hand when it matters.'),
    weight: z.enum(['fact', 'caution']).describe('`caution`: leaving it out can hurt somebody or break the law.'),
    insects: z.array(z.string()).nullable().describe('Null: any insect.'),
    designs: z.array(trapDesignSchema).nullable().describe('Null: any design.'),
    text: localTextSchema,
    figure: z
      .object({ low: z.number(), high: z.number(), unit: z.enum(['m', 'days', 'h']) })
      .nullable()
      .describe('The figure in the text, in SI units or days; low and high are equal when the source gives one number.'),
    ...sourced,
  })
  .meta({ id: 'Practice', description: 'Something to know, or to beware of, while doing one thing.' });

/** How a biofix is found in catches, as data. */
export const biofixRuleSchema = z.discriminatedUnion('kind', [
  /** The first visit with a catch. */
  z.object({ kind: z.literal('first-catch') }),
  /** The first visit with a catch that is followed by a catch at each of the next `followedBy` informative visits. */
  z.object({ kind: z.literal('sustained-catch'), followedBy: z.int() }),
  /**
   * The first time that `moths` or more were caught within `nights` nights in one trap. A visit after several nights tells
   * only their sum: the rule counts as reached once that is more likely than not, somewhere within those nights.
   */
  z.object({ kind: z.literal('intense-capture'), moths: z.number(), nights: z.int() }),
]);
