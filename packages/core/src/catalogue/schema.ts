/** What of the catalogue an answer carries. */
import { z } from 'zod';

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
    'peak-egg-laying',
  ])
  .meta({ id: 'Event', description: 'What a model dates.' });
